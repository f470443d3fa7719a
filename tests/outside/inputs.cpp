#include "outside/inputs.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace piewright::outside {

std::optional<double> numberIn(std::string_view text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || text.empty()) return std::nullopt;
    constexpr double kMost = 1e12;
    if (!std::isfinite(value) || std::abs(value) > kMost) return std::nullopt;
    return value;
}

std::optional<std::vector<double>> numbersIn(std::string_view text) {
    std::vector<double> numbers;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find('|', from), text.size());
        const auto number = numberIn(text.substr(from, to - from));
        if (!number) return std::nullopt;
        numbers.push_back(*number);
        from = to + 1;
    }
    return numbers;
}

std::optional<Inputs> Inputs::parse(std::string_view text) {
    Inputs inputs;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t to = std::min(text.find(';', from), text.size());
        const std::string_view part = text.substr(from, to - from);
        const std::size_t equals = part.find('=');
        if (equals == std::string_view::npos || equals == 0) return std::nullopt;
        if (!inputs.values_.emplace(part.substr(0, equals), part.substr(equals + 1)).second) return std::nullopt;
        from = to + 1;
    }
    return inputs;
}

std::string Inputs::text(std::string_view key) const {
    const auto found = values_.find(key);
    return found == values_.end() ? std::string{} : found->second;
}

std::optional<double> Inputs::number(std::string_view key) const {
    const auto found = values_.find(key);
    return found == values_.end() ? std::nullopt : numberIn(found->second);
}

bool Inputs::only(std::initializer_list<std::string_view> keys) const {
    return std::all_of(values_.begin(), values_.end(), [&](const auto& entry) {
        return std::find(keys.begin(), keys.end(), entry.first) != keys.end();
    });
}

} // namespace piewright::outside
