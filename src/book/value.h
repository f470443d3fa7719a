// How one value of each type stands in the files: read from a node, written as TOML. Reader and printer share this, so
// that what is written reads back.
#pragma once

#include "book/words.h"
#include "finding/result.h"
#include "toml/node.h"
#include "units/text.h"

#include <span>
#include <string>
#include <string_view>
#include <type_traits>

namespace piewright::book {

using toml::Member;
using toml::Node;

/// A node as a person would name it, for findings: `the number 12`, `a list`, or the text in quotation marks.
[[nodiscard]] std::string seen(const Node& node);
/// How the want of a value that is written as text begins where there is none.
inline constexpr std::string_view kTextWant = "text in quotation marks: ";
/// The node is not of the kind that belongs there.
[[nodiscard]] Problems wrongKind(const Node& node, std::string want);
/// The text in TOML's quotation marks.
[[nodiscard]] std::string literal(std::string_view text);

/// A name by which files speak of a thing: letters a to z, digits and `-`, at most 40.
[[nodiscard]] bool isName(std::string_view text);
inline constexpr std::string_view kNameWant = "1 to 40 of the letters a to z, digits and -";
Result<std::string> readName(const Node& node);
/// Which of the words the node holds.
Result<std::size_t> readWord(const Node& node, std::string_view noun, std::span<const std::string_view> words);

template <class T> inline constexpr bool kIsId = false;
template <class Kind> inline constexpr bool kIsId<Id<Kind>> = true;

/// The value, or what is wrong with it; no place is named. Defined in value.cpp for every type but choices and ids.
template <class T> Result<T> readValue(const Node& node) {
    if constexpr (kIsId<T>) {
        const auto name = readName(node);
        if (!name) return name.problems();
        return T(*name);
    } else {
        static_assert(std::is_enum_v<T>);
        std::array<std::string_view, Words<T>::kAll.size()> words;
        for (std::size_t i = 0; i < words.size(); ++i) words[i] = Words<T>::kAll[i].second;
        const auto which = readWord(node, Words<T>::kNoun, words);
        if (!which) return which.problems();
        return Words<T>::kAll[*which].first;
    }
}

/// The value as TOML.
template <class T> [[nodiscard]] std::string writeValue(const T& value) {
    if constexpr (kIsId<T>) {
        return literal(value.name());
    } else {
        static_assert(std::is_enum_v<T>);
        return literal(wordFor(value));
    }
}

/// What a value of the type looks like: the words of its reader's refusal.
template <class T> [[nodiscard]] std::string wantOf() {
    Node nothing;
    nothing.kind = Node::Kind::Time; // no type reads a bare time
    std::string want = readValue<T>(nothing).problems().findings.front().want;
    if (want.starts_with(kTextWant)) want.erase(0, kTextWant.size());
    return want;
}

// clang-format off
template <> Result<std::string> readValue<std::string>(const Node& node);
template <> Result<bool> readValue<bool>(const Node& node);
template <> Result<int> readValue<int>(const Node& node);
template <> Result<Mass> readValue<Mass>(const Node& node);
template <> Result<Volume> readValue<Volume>(const Node& node);
template <> Result<Length> readValue<Length>(const Node& node);
template <> Result<Celsius> readValue<Celsius>(const Node& node);
template <> Result<Kelvin> readValue<Kelvin>(const Node& node);
template <> Result<Density> readValue<Density>(const Node& node);
template <> Result<Share> readValue<Share>(const Node& node);
template <> Result<BakersPercent> readValue<BakersPercent>(const Node& node);
template <> Result<Power> readValue<Power>(const Node& node);
template <> Result<Money> readValue<Money>(const Node& node);
template <> Result<Currency> readValue<Currency>(const Node& node);
template <> Result<Seconds> readValue<Seconds>(const Node& node);
template <> Result<Minutes> readValue<Minutes>(const Node& node);
template <> Result<Days> readValue<Days>(const Node& node);
template <> Result<Date> readValue<Date>(const Node& node);
template <> Result<ClockTime> readValue<ClockTime>(const Node& node);
template <> Result<ClockSpan> readValue<ClockSpan>(const Node& node);
template <> Result<Weekday> readValue<Weekday>(const Node& node);
template <> Result<Zone> readValue<Zone>(const Node& node);

template <> std::string writeValue<std::string>(const std::string& value);
template <> std::string writeValue<bool>(const bool& value);
template <> std::string writeValue<int>(const int& value);
template <> std::string writeValue<Mass>(const Mass& value);
template <> std::string writeValue<Volume>(const Volume& value);
template <> std::string writeValue<Length>(const Length& value);
template <> std::string writeValue<Celsius>(const Celsius& value);
template <> std::string writeValue<Kelvin>(const Kelvin& value);
template <> std::string writeValue<Density>(const Density& value);
template <> std::string writeValue<Share>(const Share& value);
template <> std::string writeValue<BakersPercent>(const BakersPercent& value);
template <> std::string writeValue<Power>(const Power& value);
template <> std::string writeValue<Money>(const Money& value);
template <> std::string writeValue<Currency>(const Currency& value);
template <> std::string writeValue<Seconds>(const Seconds& value);
template <> std::string writeValue<Minutes>(const Minutes& value);
template <> std::string writeValue<Days>(const Days& value);
template <> std::string writeValue<Date>(const Date& value);
template <> std::string writeValue<ClockTime>(const ClockTime& value);
template <> std::string writeValue<ClockSpan>(const ClockSpan& value);
template <> std::string writeValue<Weekday>(const Weekday& value);
template <> std::string writeValue<Zone>(const Zone& value);
// clang-format on

} // namespace piewright::book
