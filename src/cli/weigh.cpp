#include "book/read.h"
#include "cli/verbs.h"
#include "day/weigh_out.h"
#include "finding/suggest.h"
#include "print/weighed.h"
#include "units/text.h"
#include "wire/report_json.h"

#include <ostream>

namespace piewright::cli {

namespace {

Result<day::WeighedOut> weighedOut(const book::Book& book, const WeighOptions& options) {
    if (const auto good = book.goods.find(GoodId(options.what)); good != book.goods.end()) {
        if (!options.pieces || !options.make.empty())
            return Problems::one(Fault::Input, "\"" + options.what + "\" is a good", "--pieces N, and no --make");
        return day::weighOut(book, good->second, *options.pieces);
    }
    if (const auto formula = book.formulas.find(FormulaId(options.what)); formula != book.formulas.end()) {
        if (options.pieces || options.make.empty())
            return Problems::one(Fault::Input, "\"" + options.what + "\" is a formula",
                                 "--make and a weight, as in --make \"24 kg\", and no --pieces");
        const auto mass = parseMass(options.make);
        if (!mass) return mass.problems();
        if (*mass <= Mass{}) return Problems::one(Fault::Input, "--make: nothing to make", "a weight above zero");
        return day::weighOut(book, formula->second, *mass);
    }
    std::vector<std::string> names;
    names.reserve(book.goods.size() + book.formulas.size());
    for (const auto& [id, good] : book.goods) names.push_back(id.name());
    for (const auto& [id, formula] : book.formulas) names.push_back(id.name());
    Problems problems = Problems::one(Fault::Input, "no good or formula is called \"" + options.what + "\"",
                                      "a short name from goods.toml or formulas.toml");
    problems.findings.front().hint = didYouMean(options.what, names);
    return problems;
}

} // namespace

int weigh(const WeighOptions& options, const Streams& streams) {
    const auto read = book::readFolder(options.house);
    if (!read) return refuse(read.problems(), streams);
    const auto weighed = weighedOut(read->book, options);
    if (!weighed) return refuse(weighed.problems(), streams);
    streams.out << (streams.json ? wire::toJson(*weighed) : print::asText(*weighed));
    return 0;
}

} // namespace piewright::cli
