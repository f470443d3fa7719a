// The words that stand in the files for a choice of a few.
#pragma once

#include "book/book.h"

#include <array>
#include <string_view>
#include <utility>

namespace piewright::book {

/// `kNoun` says what is chosen; `kAll` has every choice with its word. Stored in the house's files: never reword.
template <class Choice> struct Words;

template <> struct Words<Paper> {
    static constexpr std::string_view kNoun = "a paper";
    static constexpr std::array<std::pair<Paper, std::string_view>, 2> kAll{
        {{Paper::A4, "A4"}, {Paper::Letter, "letter"}}};
};

template <> struct Words<Shown> {
    static constexpr std::string_view kNoun = "a way to show amounts";
    static constexpr std::array<std::pair<Shown, std::string_view>, 2> kAll{
        {{Shown::Metric, "metric"}, {Shown::Imperial, "imperial"}}};
};

template <> struct Words<Measure> {
    static constexpr std::string_view kNoun = "a measure";
    static constexpr std::array<std::pair<Measure, std::string_view>, 3> kAll{
        {{Measure::Mass, "weight"}, {Measure::Volume, "volume"}, {Measure::Count, "count"}}};
};

template <> struct Words<Storage> {
    static constexpr std::string_view kNoun = "a way to store";
    static constexpr std::array<std::pair<Storage, std::string_view>, 3> kAll{
        {{Storage::Ambient, "ambient"}, {Storage::Chilled, "chilled"}, {Storage::Frozen, "frozen"}}};
};

template <> struct Words<Basis> {
    static constexpr std::string_view kNoun = "a basis";
    static constexpr std::array<std::pair<Basis, std::string_view>, 2> kAll{
        {{Basis::Weight, "weight"}, {Basis::Flour, "flour"}}};
};

template <> struct Words<Makes> {
    static constexpr std::string_view kNoun = "what a formula makes";
    static constexpr std::array<std::pair<Makes, std::string_view>, 8> kAll{{{Makes::Paste, "paste"},
                                                                             {Makes::Filling, "filling"},
                                                                             {Makes::Mash, "mash"},
                                                                             {Makes::Sauce, "sauce"},
                                                                             {Makes::Stew, "stew"},
                                                                             {Makes::Jelly, "jelly"},
                                                                             {Makes::Glaze, "glaze"},
                                                                             {Makes::Other, "other"}}};
};

template <> struct Words<Made> {
    static constexpr std::string_view kNoun = "when a formula is made";
    static constexpr std::array<std::pair<Made, std::string_view>, 3> kAll{
        {{Made::SameDay, "same day"}, {Made::DayBefore, "day before"}, {Made::Delivery, "delivery"}}};
};

template <> struct Words<TinShape> {
    static constexpr std::string_view kNoun = "a tin's shape";
    static constexpr std::array<std::pair<TinShape, std::string_view>, 4> kAll{{{TinShape::Frustum, "frustum"},
                                                                                {TinShape::Cylinder, "cylinder"},
                                                                                {TinShape::Oval, "oval"},
                                                                                {TinShape::Rectangle, "rectangle"}}};
};

template <> struct Words<Served> {
    static constexpr std::string_view kNoun = "a way to serve";
    static constexpr std::array<std::pair<Served, std::string_view>, 2> kAll{
        {{Served::Hot, "hot"}, {Served::Cold, "cold"}}};
};

template <> struct Words<GearKind> {
    static constexpr std::string_view kNoun = "a kind of gear";
    static constexpr std::array<std::pair<GearKind, std::string_view>, 13> kAll{{{GearKind::Mixer, "mixer"},
                                                                                 {GearKind::Divider, "divider"},
                                                                                 {GearKind::Sheeter, "sheeter"},
                                                                                 {GearKind::Bench, "bench"},
                                                                                 {GearKind::Oven, "oven"},
                                                                                 {GearKind::Kettle, "kettle"},
                                                                                 {GearKind::Pan, "pan"},
                                                                                 {GearKind::Peeler, "peeler"},
                                                                                 {GearKind::Masher, "masher"},
                                                                                 {GearKind::Chiller, "chiller"},
                                                                                 {GearKind::HotHold, "hot-hold"},
                                                                                 {GearKind::Rack, "rack"},
                                                                                 {GearKind::Scale, "scale"}}};
};

template <> struct Words<Attended> {
    static constexpr std::string_view kNoun = "how much of a step a hand stays for";
    static constexpr std::array<std::pair<Attended, std::string_view>, 3> kAll{
        {{Attended::All, "all"}, {Attended::Ends, "ends"}, {Attended::None, "none"}}};
};

template <> struct Words<PerUnit> {
    static constexpr std::string_view kNoun = "what a step's time is counted in";
    static constexpr std::array<std::pair<PerUnit, std::string_view>, 5> kAll{{{PerUnit::Batch, "batch"},
                                                                               {PerUnit::Head, "head"},
                                                                               {PerUnit::Piece, "piece"},
                                                                               {PerUnit::Tray, "tray"},
                                                                               {PerUnit::Kilogram, "kilogram"}}};
};

template <> struct Words<Caution> {
    static constexpr std::string_view kNoun = "a caution";
    static constexpr std::array<std::pair<Caution, std::string_view>, 10> kAll{{{Caution::Burns, "burns"},
                                                                                {Caution::Steam, "steam"},
                                                                                {Caution::HotFat, "hot-fat"},
                                                                                {Caution::Machine, "machine"},
                                                                                {Caution::Knife, "knife"},
                                                                                {Caution::Lifting, "lifting"},
                                                                                {Caution::Allergen, "allergen"},
                                                                                {Caution::RawMeat, "raw-meat"},
                                                                                {Caution::Cooling, "cooling"},
                                                                                {Caution::Holding, "holding"}}};
};

template <> struct Words<Takes> {
    static constexpr std::string_view kNoun = "what a step takes";
    static constexpr std::array<std::pair<Takes, std::string_view>, 5> kAll{{{Takes::Base, "base"},
                                                                             {Takes::Lid, "lid"},
                                                                             {Takes::Filling, "filling"},
                                                                             {Takes::Glaze, "glaze"},
                                                                             {Takes::Portion, "portion"}}};
};

template <> struct Words<Bound> {
    static constexpr std::string_view kNoun = "a bound";
    static constexpr std::array<std::pair<Bound, std::string_view>, 2> kAll{
        {{Bound::Least, "least"}, {Bound::Most, "most"}}};
};

template <> struct Words<Confidence> {
    static constexpr std::string_view kNoun = "a confidence";
    static constexpr std::array<std::pair<Confidence, std::string_view>, 4> kAll{
        {{Confidence::Seen, "seen"},
         {Confidence::Secondary, "secondary"},
         {Confidence::Memory, "memory"},
         {Confidence::Confirmed, "confirmed"}}};
};

/// The word for a choice.
template <class Choice> [[nodiscard]] std::string_view wordFor(Choice choice) {
    for (const auto& [each, word] : Words<Choice>::kAll)
        if (each == choice) return word;
    return {};
}

} // namespace piewright::book
