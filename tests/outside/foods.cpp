#include "outside/foods.h"

#include "outside/inputs.h"
#include "outside/table.h"

#include <array>

namespace piewright::outside {

namespace {

struct Column {
    const char* name;
    std::optional<double> Food::* amount;
};

// Carbohydrate by difference takes up the errors of all else and may fall below nothing in meat.
constexpr double kLeast = -5;

constexpr std::array<Column, 7> kColumns{{{"water_g", &Food::water},
                                          {"protein_g", &Food::protein},
                                          {"fat_g", &Food::fat},
                                          {"carbohydrate_g", &Food::carbohydrate},
                                          {"fibre_g", &Food::fibre},
                                          {"ash_g", &Food::ash},
                                          {"refuse_pct", &Food::refuse}}};

} // namespace

Result<Foods> readFoods(const std::filesystem::path& path) {
    const auto read = readTable(
        path, {"source", "code", "water_g", "protein_g", "fat_g", "carbohydrate_g", "fibre_g", "ash_g", "refuse_pct"});
    if (!read) return read.problems();
    const Table& table = *read;
    Foods foods;
    std::vector<Finding> findings;
    for (const TableLine& line : table.lines()) {
        Food food;
        for (const Column& column : kColumns) {
            const std::string& text = table.at(line, column.name);
            if (text.empty()) continue;
            const auto number = text == "Tr" ? std::optional<double>(0) : numberIn(text);
            if (number && *number >= kLeast && *number <= 100)
                food.*column.amount = number;
            else
                findings.push_back({{table.file(), line.line, 0, column.name},
                                    "\"" + text.substr(0, 80) + "\" is no amount",
                                    "a number from -5 to 100, Tr or nothing",
                                    {}});
        }
        const std::string key = table.at(line, "source") + ":" + table.at(line, "code");
        if (!foods.foods_.emplace(key, food).second)
            findings.push_back({{table.file(), line.line, 0, "code"}, "\"" + key + "\" stands here twice", {}, {}});
    }
    if (!findings.empty()) return Problems{Fault::Input, std::move(findings)};
    return foods;
}

} // namespace piewright::outside
