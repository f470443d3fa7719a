#include "print/words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <glib.h>
#include <map>
#include <memory>

namespace piewright::print {

namespace {

constexpr std::array<const char*, 12> kMonths{"January", "February", "March",     "April",   "May",      "June",
                                              "July",    "August",   "September", "October", "November", "December"};

std::string dayInWords(Date date) {
    const auto ymd = date.ymd();
    return longName(date.weekday()) + ' ' + std::to_string(static_cast<unsigned>(ymd.day())) + ' ' +
           kMonths.at(static_cast<unsigned>(ymd.month()) - 1) + ' ' + std::to_string(static_cast<int>(ymd.year()));
}

} // namespace

std::string clean(const std::string& text) {
    const std::unique_ptr<char, decltype(&g_free)> valid(
        g_utf8_make_valid(text.data(), static_cast<gssize>(text.size())), &g_free);
    std::string made;
    for (const char* at = valid.get(); *at != '\0'; at = g_utf8_next_char(at)) {
        const gunichar letter = g_utf8_get_char(at);
        // Line and paragraph separators and the overrides of writing direction would upset a line as controls do.
        const bool upsets = g_unichar_iscntrl(letter) || letter == 0x2028 || letter == 0x2029 ||
                            (letter >= 0x202A && letter <= 0x202E) || (letter >= 0x2066 && letter <= 0x2069);
        if (upsets)
            made += ' ';
        else
            made.append(at, static_cast<const char*>(g_utf8_next_char(at)));
    }
    return made;
}

Times::Times(const day::Plan& plan) : date_(plan.date), day_(dayInWords(plan.date)) {
    if (auto zone = Zone::named(plan.zone)) zone_ = *zone;
}

Date Times::dateOf(Instant instant) const {
    if (zone_) return zone_->dateOf(instant);
    return Date(std::chrono::local_days(std::chrono::floor<Days>(instant.time_since_epoch())));
}

ClockTime Times::clockOf(Instant instant) const {
    if (zone_) return zone_->clockOf(instant);
    return ClockTime(std::chrono::floor<Minutes>(instant - std::chrono::floor<Days>(instant)));
}

std::string Times::clock(Instant instant) const {
    const Date date = dateOf(instant);
    const ClockTime time = clockOf(instant);
    std::string text = toText(time);
    if (zone_) {
        const Instant first = zone_->at(date, time, Choose::Earliest);
        const Instant last = zone_->at(date, time, Choose::Latest);
        if (first != last) text += instant < last ? 'a' : 'b';
    }
    if (date == date_) return text;
    return longName(date.weekday()).substr(0, 3) + ' ' + text;
}

std::string Times::span(Instant from, Instant to) const { return clock(from) + "–" + clock(to); }

std::string Times::changeBetween(Instant from, Instant to) const {
    const auto offset = [this](Instant at) {
        return (dateOf(at).days().time_since_epoch() + clockOf(at).sinceMidnight()) -
               std::chrono::floor<Minutes>(at.time_since_epoch());
    };
    const auto change = offset(to) - offset(from);
    if (change == Minutes(0)) return {};
    const std::string size = handText(std::chrono::abs(Seconds(change)));
    if (change > Minutes(0)) return "The clocks go forward by " + size + " in this day.";
    return "The clocks go back by " + size + " in this day: a time marked a is the first of the two, b the second.";
}

Seconds Times::pastTheHour(Instant instant) const {
    const auto seconds = instant - std::chrono::floor<Minutes>(instant);
    return clockOf(instant).sinceMidnight() % Minutes(60) + seconds;
}

std::string openingOf(const day::Plan& plan, const Times& times) {
    if (plan.open.empty()) return "shut";
    std::string text = "open ";
    for (std::size_t i = 0; i < plan.open.size(); ++i) {
        if (i > 0) text += i + 1 == plan.open.size() ? " and " : ", ";
        text += times.span(plan.open[i].first, plan.open[i].second);
    }
    return text;
}

std::string countOf(std::int64_t count, const std::string& unit) {
    std::string word = unit;
    if (count == 1 && word.size() > 1 && word.back() == 's') word.pop_back();
    return std::to_string(count) + ' ' + word;
}

std::string joined(const std::vector<std::string>& texts, const char* between) {
    std::string all;
    for (const std::string& text : texts) {
        if (!all.empty()) all += between;
        all += text;
    }
    return all;
}

std::string deckName(const day::DeckLoad& load) { return load.oven + ", deck " + std::to_string(load.deck); }

std::string batchOf(const day::WeighCard& card) {
    return card.of > 1 ? "batch " + std::to_string(card.number) + " of " + std::to_string(card.of) : "";
}

std::string packsOf(const day::Needed& needed) {
    return needed.pack.empty() ? "" : std::to_string(needed.packs) + " × " + needed.pack;
}

std::string expectationOf(double count) {
    if (!std::isfinite(count)) return "?";
    std::array<char, 400> text{}; // the longest finite double has 309 digits
    std::snprintf(text.data(), text.size(), std::abs(count) < 10 ? "%.1f" : "%.0f", count);
    return text.data();
}

std::string blankOf(const day::PiecesLine& line) {
    if (line.blankLength == Length{}) return {};
    if (line.blankWidth == Length{} || line.blankWidth == line.blankLength) return handText(line.blankLength);
    std::string length = handText(line.blankLength);
    const std::size_t unit = length.rfind(" mm");
    if (unit != std::string::npos) length.erase(unit);
    return length + " × " + handText(line.blankWidth);
}

std::string sumsOf(const day::WeighCard& card) {
    std::string sums = "In " + handText(card.in);
    for (const auto& [at, mass] : card.lost) sums += ", less " + handText(mass) + " (" + at + ")";
    sums += ", out " + handText(card.out) + '.';
    if (card.scaleStep <= Mass{}) return sums;
    sums += " Weighed in steps of " + handText(card.scaleStep);
    if (card.roundingError > Mass{}) sums += ", which adds " + handText(card.roundingError);
    if (card.roundingError < Mass{}) sums += ", which takes off " + handText(-card.roundingError);
    return sums + '.';
}

std::string allergensOf(const day::WeighCard& card) {
    if (card.allergens.empty()) return "Allergens: the book names none; check the labels.";
    return "Contains: " + joined(card.allergens);
}

std::string contentOf(const day::LoadContent& content) { return std::to_string(content.pieces) + " × " + content.good; }

std::string contentsOf(const day::DeckLoad& load) {
    std::string contents;
    for (const day::LoadContent& content : load.contents)
        contents += (contents.empty() ? "" : ", ") + contentOf(content);
    return contents;
}

std::string clockChangeOf(const day::Plan& plan, const Times& times) {
    if (plan.tasks.empty()) return {};
    Instant first = plan.tasks.front().start;
    Instant last = plan.tasks.front().end;
    for (const day::Task& task : plan.tasks) {
        first = std::min(first, task.start);
        last = std::max(last, task.end);
    }
    return times.changeBetween(first, last);
}

std::vector<Deck> decksOf(const day::Plan& plan) {
    std::map<std::pair<std::string, int>, Deck> decks;
    for (const day::DeckLoad& load : plan.loads) {
        Deck& deck = decks[{load.oven, load.deck}];
        deck.name = deckName(load);
        deck.loads.push_back(&load);
    }
    std::vector<Deck> all;
    for (auto& [key, deck] : decks) {
        std::stable_sort(deck.loads.begin(), deck.loads.end(),
                         [](const day::DeckLoad* a, const day::DeckLoad* b) { return a->in < b->in; });
        all.push_back(std::move(deck));
    }
    return all;
}

std::vector<const day::Task*> tasksInOrder(const day::Plan& plan) {
    std::vector<const day::Task*> tasks;
    tasks.reserve(plan.tasks.size());
    for (const day::Task& task : plan.tasks) tasks.push_back(&task);
    std::stable_sort(tasks.begin(), tasks.end(), [](const day::Task* a, const day::Task* b) {
        return std::pair(a->start, a->number) < std::pair(b->start, b->number);
    });
    return tasks;
}

std::vector<std::string> handsOf(const day::Plan& plan) {
    std::vector<std::pair<Instant, std::string>> in;
    const auto see = [&in](Instant when, const std::string& hand) {
        const auto known = std::find_if(in.begin(), in.end(), [&](const auto& one) { return one.second == hand; });
        if (known == in.end())
            in.emplace_back(when, hand);
        else
            known->first = std::min(known->first, when);
    };
    for (const day::PlannedShift& shift : plan.shifts) see(shift.from, shift.hand);
    for (const day::Task& task : plan.tasks)
        for (const std::string& hand : task.hands) see(task.start, hand);
    std::stable_sort(in.begin(), in.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::string> hands;
    hands.reserve(in.size());
    for (auto& one : in) hands.push_back(std::move(one.second));
    return hands;
}

const day::PlannedShift* shiftOf(const day::Plan& plan, const std::string& hand) {
    for (const day::PlannedShift& shift : plan.shifts)
        if (shift.hand == hand) return &shift;
    return nullptr;
}

bool takesPart(const day::Task& task, const std::string& hand) {
    return std::find(task.hands.begin(), task.hands.end(), hand) != task.hands.end();
}

} // namespace piewright::print
