#include "outside/case.h"

#include "outside/table.h"

#include <map>

namespace piewright::outside {

Result<std::vector<Case>> readCases(const std::filesystem::path& path) {
    const auto read =
        readTable(path, {"case_id", "topic", "quantity", "inputs", "expected", "unit", "tolerance", "source"});
    if (!read) return read.problems();
    const Table& table = *read;
    std::vector<Case> cases;
    std::vector<Finding> findings;
    std::map<std::string, int> lineOf;
    for (const TableLine& line : table.lines()) {
        const auto wrong = [&](const char* column, std::string saw, std::string want) {
            findings.push_back({{table.file(), line.line, 0, column}, std::move(saw), std::move(want), {}});
        };
        Case made;
        made.id = table.at(line, "case_id");
        made.topic = table.at(line, "topic");
        made.quantity = table.at(line, "quantity");
        made.expected = table.at(line, "expected");
        made.unit = table.at(line, "unit");
        made.source = table.at(line, "source");
        if (made.id.empty()) wrong("case_id", "is empty", "a name for the case");
        if (made.topic.empty()) wrong("topic", "is empty", "the case's topic");
        if (const auto [before, fresh] = lineOf.emplace(made.id, line.line); !fresh && !made.id.empty())
            wrong("case_id", "\"" + made.id + "\" stands in line " + std::to_string(before->second) + " too",
                  "a name for one case only");
        const std::string& inputs = table.at(line, "inputs");
        if (auto parsed = Inputs::parse(inputs))
            made.inputs = std::move(*parsed);
        else
            wrong("inputs", "\"" + inputs.substr(0, 80) + "\" is not read", "key=value;key=value, no key twice");
        const std::string& tolerance = table.at(line, "tolerance");
        if (const auto parsed = toleranceIn(tolerance)) {
            made.tolerance = *parsed;
            if (!judgeable(made.tolerance, made.expected))
                wrong("expected", "\"" + made.expected.substr(0, 80) + "\" can't be judged by \"" + tolerance + "\"",
                      "a number");
        } else {
            wrong("tolerance", "\"" + tolerance.substr(0, 80) + "\" is no tolerance",
                  "abs:x, rel:x, range:a..b, exact or info");
        }
        cases.push_back(std::move(made));
    }
    if (!findings.empty()) return Problems{Fault::Input, std::move(findings)};
    return cases;
}

} // namespace piewright::outside
