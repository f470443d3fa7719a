#include "cli/sales.h"

#include "wire/report_json.h"

#include <ostream>

namespace piewright::cli {

Result<sales::Imported> takeSales(const book::Book& book, const std::filesystem::path& house,
                                  const SalesOptions& options) {
    constexpr std::size_t kMostMapping = std::size_t{4} << 20;
    std::error_code ignored;
    sales::Mapping mapping;
    std::filesystem::path mappingFile = options.mapping;
    if (mappingFile.empty() && std::filesystem::exists(house / "till.toml", ignored)) mappingFile = house / "till.toml";
    std::map<GoodId, std::string> names;
    std::set<GoodId> known;
    for (const auto& [id, good] : book.goods) {
        names[id] = good.name;
        known.insert(id);
    }
    if (!mappingFile.empty()) {
        const auto text = readWhole(mappingFile, kMostMapping);
        if (!text) return text.problems();
        auto read = sales::readMapping(mappingFile.string(), *text, known);
        if (!read) return read.problems();
        mapping = std::move(*read);
    }
    const std::filesystem::path file = options.file.empty() ? house / "sales.csv" : options.file;
    return sales::importFile(file, options.columns, mapping, names);
}

int salesReport(const SalesReportOptions& options, const Streams& streams) {
    const auto read = book::readFolder(options.house);
    if (!read) return refuse(read.problems(), streams);
    const auto taken = takeSales(read->book, options.house, options.sales);
    if (!taken) return refuse(taken.problems(), streams);
    streams.out << (streams.json ? wire::toJson(taken->report) : sales::toText(taken->report));
    return 0;
}

} // namespace piewright::cli
