// Formulas of no real house that the tests of this room share.
#pragma once

#include "book/book.h"

#include <string>
#include <utility>

namespace piewright::formula {

inline book::Line ofFlourLine(const char* stuff, std::int64_t pct, bool flour = false) {
    book::Line line;
    line.of = StuffId(stuff);
    line.percent = ofFlour(pct);
    line.flour = flour;
    return line;
}

inline book::Line weightLine(book::StuffOrFormula of, Mass weight, Share prepLoss = {}, std::string prepName = {}) {
    book::Line line;
    line.of = std::move(of);
    line.weight = weight;
    line.prepLoss = prepLoss;
    line.prepName = std::move(prepName);
    return line;
}

inline book::Loss shareLost(const char* at, Share share) { return {at, share, std::nullopt}; }
inline book::Loss fixedLost(const char* at, Mass mass) { return {at, Share{}, mass}; }

inline book::Formula named(const char* id, book::Basis basis) {
    book::Formula formula;
    formula.id = FormulaId(id);
    formula.name = id;
    formula.basis = basis;
    return formula;
}

/// Two flours of 70 and 30, fat 50, water 30: 180 in all.
inline book::Formula basePaste() {
    book::Formula paste = named("base-paste", book::Basis::Flour);
    paste.lines = {ofFlourLine("plain-flour", 70, true), ofFlourLine("strong-flour", 30, true), ofFlourLine("suet", 50),
                   ofFlourLine("water", 30)};
    return paste;
}

inline void add(book::Book& book, const book::Formula& formula) { book.formulas.emplace(formula.id, formula); }

} // namespace piewright::formula
