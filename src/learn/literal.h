// Whole-number variables seen through their bounds, and the one kind of literal there is: a bound.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>

namespace piewright::learn {

using Value = std::int32_t;

enum class Variable : std::int32_t {};

/// A variable read from one side: 2·x stands for x, 2·x+1 for -x. Each half has a lower bound only, so that every rule
/// about bounds is written once.
using Half = std::int32_t;
constexpr Half plus(Variable x) { return 2 * static_cast<Half>(x); }
constexpr Half minus(Variable x) { return plus(x) + 1; }
constexpr Variable variableOf(Half half) { return static_cast<Variable>(half / 2); }

/// "half >= bound".
struct Literal {
    Half half = 0;
    Value bound = 0;
    auto operator<=>(const Literal&) const = default;
};

constexpr Literal operator~(Literal literal) { return {literal.half ^ 1, 1 - literal.bound}; }
constexpr Literal atLeast(Variable x, Value value) { return {plus(x), value}; }
constexpr Literal atMost(Variable x, Value value) { return {minus(x), -value}; }

/// Always true: variable 0 of every Solver is the constant 0.
constexpr Literal kTrue{0, 0};

constexpr std::size_t at(Half half) { return static_cast<std::size_t>(half); }
constexpr std::size_t at(Variable x) { return static_cast<std::size_t>(x); }

} // namespace piewright::learn
