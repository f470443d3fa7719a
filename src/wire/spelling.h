// How single values are spelled in JSON where JSON itself has no form for them.
#pragma once

#include "book/route.h"
#include "units/civil.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace piewright::wire {

/// `2026-11-27T04:30:00Z`: ISO 8601, UTC, whole seconds, years 0000 to 9999.
[[nodiscard]] std::string toText(Instant instant);

/// Strict: exactly that form, and a moment that exists.
[[nodiscard]] std::optional<Instant> parseInstant(std::string_view text);

/// Stored in people's files: never respell.
constexpr std::array<std::pair<book::Caution, const char*>, 10> kCautionWords{{
    {book::Caution::Burns, "burns"},
    {book::Caution::Steam, "steam"},
    {book::Caution::HotFat, "hot-fat"},
    {book::Caution::Machine, "machine"},
    {book::Caution::Knife, "knife"},
    {book::Caution::Lifting, "lifting"},
    {book::Caution::Allergen, "allergen"},
    {book::Caution::RawMeat, "raw-meat"},
    {book::Caution::Cooling, "cooling"},
    {book::Caution::Holding, "holding"},
}};

[[nodiscard]] std::string toText(book::Caution caution);
[[nodiscard]] std::optional<book::Caution> parseCaution(std::string_view text);

} // namespace piewright::wire
