#include "formula/weigh.h"

#include <set>

namespace piewright::formula {

std::vector<FormulaId> usedBy(const book::Book& book, const FormulaId& formula) {
    // A stack of our own: a hostile book may nest deeper than the program's.
    struct Open {
        const book::Formula* formula;
        std::size_t next = 0;
    };
    std::vector<FormulaId> done;
    std::set<FormulaId> seen{formula};
    std::vector<Open> open{{&book.formulas.at(formula)}};
    while (!open.empty()) {
        Open& top = open.back();
        if (top.next == top.formula->lines.size()) {
            done.push_back(top.formula->id);
            open.pop_back();
            continue;
        }
        const auto* nested = std::get_if<FormulaId>(&top.formula->lines[top.next++].of);
        if (nested && seen.insert(*nested).second) open.push_back({&book.formulas.at(*nested)});
    }
    return done;
}

std::map<StuffId, Mass> boughtFor(const book::Book& book, const FormulaId& formula, Mass out, int batches) {
    std::map<FormulaId, Mass> wanted{{formula, out}};
    std::map<StuffId, Mass> bought;
    const std::vector<FormulaId> order = usedBy(book, formula);
    for (auto id = order.rbegin(); id != order.rend(); ++id) { // users before what they use
        const book::Formula& made = book.formulas.at(*id);
        const Mass in = inputFor(made, wanted[*id], *id == formula ? batches : 1);
        const std::vector<Mass> masses = lineMasses(made, in);
        for (std::size_t i = 0; i < masses.size(); ++i) {
            const Mass mass = beforePreparation(masses[i], made.lines[i].prepLoss);
            if (const auto* stuff = std::get_if<StuffId>(&made.lines[i].of))
                bought[*stuff] += mass;
            else
                wanted[std::get<FormulaId>(made.lines[i].of)] += mass;
        }
    }
    return bought;
}

} // namespace piewright::formula
