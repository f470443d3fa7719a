#include "wire/spelling.h"

#include <charconv>

namespace piewright::wire {

namespace {

void twoDigits(std::string& into, std::int64_t value) {
    if (value < 10) into += '0';
    into += std::to_string(value);
}

std::optional<int> twoDigitsAt(std::string_view text, std::size_t at) {
    int value = 0;
    const char* first = text.data() + at;
    const auto [end, error] = std::from_chars(first, first + 2, value);
    if (error != std::errc{} || end != first + 2 || value < 0) return std::nullopt;
    return value;
}

} // namespace

std::string toText(Instant instant) {
    const auto day = std::chrono::floor<Days>(instant);
    const std::int64_t seconds = (instant - day).count();
    std::string text = piewright::toText(Date(std::chrono::local_days(day.time_since_epoch()))) + 'T';
    twoDigits(text, seconds / 3600);
    text += ':';
    twoDigits(text, seconds / 60 % 60);
    text += ':';
    twoDigits(text, seconds % 60);
    return text + 'Z';
}

std::optional<Instant> parseInstant(std::string_view text) {
    if (text.size() != 20 || text[10] != 'T' || text[13] != ':' || text[16] != ':' || text[19] != 'Z')
        return std::nullopt;
    const auto date = parseDate(text.substr(0, 10));
    const auto hour = twoDigitsAt(text, 11);
    const auto minute = twoDigitsAt(text, 14);
    const auto second = twoDigitsAt(text, 17);
    if (!date || !hour || !minute || !second || *hour > 23 || *minute > 59 || *second > 59) return std::nullopt;
    return Instant(date->days().time_since_epoch()) + std::chrono::hours(*hour) + Minutes(*minute) + Seconds(*second);
}

std::string toText(book::Caution caution) {
    for (const auto& [known, word] : kCautionWords)
        if (known == caution) return word;
    return {};
}

std::optional<book::Caution> parseCaution(std::string_view text) {
    for (const auto& [known, word] : kCautionWords)
        if (text == word) return known;
    return std::nullopt;
}

} // namespace piewright::wire
