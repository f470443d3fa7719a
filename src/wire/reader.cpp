#include "wire/reader.h"

#include "finding/suggest.h"
#include "wire/spelling.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace piewright::wire {

namespace {

using nlohmann::json;

// Bounds far beyond any bakehouse, so that sums of what was read cannot overflow (units/quantity.h relies on that).
constexpr std::int64_t kMostWeight = 1'000'000'000'000'000; // mg: a million tonnes
constexpr std::int64_t kMostLength = 1'000'000'000'000;     // um
constexpr std::int64_t kMostCount = 1'000'000'000;
constexpr std::int64_t kMostMoney = 1'000'000'000'000'000; // ten-thousandths
constexpr std::int64_t kColdest = -273'150;                // mdegC
constexpr std::int64_t kHottest = 10'000'000;
constexpr std::int64_t kMostMinutes = 1'000'000;
constexpr const char* kWantInstant = "an ISO 8601 instant in UTC, such as \"2026-11-27T04:30:00Z\"";

/// What a person needs to see of a wrong value: kind, and the beginning of what it says.
std::string shown(const json& value) {
    if (value.is_object()) return "an object";
    if (value.is_array()) return "a list";
    constexpr std::size_t kLong = 60;
    std::string text = value.dump(-1, ' ', true, json::error_handler_t::replace);
    return text.size() > kLong ? text.substr(0, kLong) + "..." : text;
}

} // namespace

void Complaints::add(std::string path, std::string saw, std::string want, std::string hint) {
    if (full()) {
        ++more_;
        return;
    }
    findings_.push_back({{file_, 0, 0, std::move(path)}, std::move(saw), std::move(want), std::move(hint)});
}

std::vector<Finding> Complaints::take() && {
    if (more_ > 0)
        findings_.push_back({{file_, 0, 0, {}}, "more is wrong than is listed", "the first hundred mended", {}});
    return std::move(findings_);
}

Reader::Reader(const json& value, std::string path, Complaints& complaints)
    : path_(std::move(path)), complaints_(&complaints) {
    if (value.is_object())
        object_ = &value;
    else
        complaints_->add(path_, shown(value), "an object");
}

std::string Reader::at(const std::string& key) const { return path_.empty() ? key : path_ + '.' + key; }

std::string Reader::at(const std::string& key, std::size_t index) const {
    return at(key) + '[' + std::to_string(index) + ']';
}

const json* Reader::find(const std::string& key, bool needed, const char* want) {
    known_.push_back(key);
    if (!object_) return nullptr;
    const auto found = object_->find(key);
    if (found != object_->end()) return &*found;
    if (needed) complaints_->add(at(key), "missing", want);
    return nullptr;
}

const json* Reader::array(const std::string& key) {
    const json* value = find(key, true, "a list");
    if (!value || value->is_array()) return value;
    complaints_->add(at(key), shown(*value), "a list");
    return nullptr;
}

std::optional<std::int64_t> Reader::whole(const std::string& key, std::int64_t least, std::int64_t most, bool needed,
                                          const char* want) {
    const json* value = find(key, needed, want);
    if (!value) return std::nullopt;
    const bool huge =
        value->is_number_unsigned() &&
        value->get<std::uint64_t>() > static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max());
    if (!value->is_number_integer() || huge || value->get<std::int64_t>() < least ||
        value->get<std::int64_t>() > most) {
        complaints_->add(at(key), shown(*value),
                         std::string(want) + " from " + std::to_string(least) + " to " + std::to_string(most));
        return std::nullopt;
    }
    return value->get<std::int64_t>();
}

void Reader::schema(int /*version*/) { known_.emplace_back("schema"); }

void Reader::text(const char* key, std::string& into) {
    const json* value = find(key, true, "a text");
    if (!value) return;
    if (value->is_string())
        into = value->get<std::string>();
    else
        complaints_->add(at(key), shown(*value), "a text");
}

void Reader::truth(const char* key, bool& into) {
    const json* value = find(key, true, "true or false");
    if (!value) return;
    if (value->is_boolean())
        into = value->get<bool>();
    else
        complaints_->add(at(key), shown(*value), "true or false");
}

void Reader::count(const char* key, int& into) {
    if (const auto value = whole(key, 0, kMostCount, true, "a whole number")) into = static_cast<int>(*value);
}

void Reader::count(const char* key, std::int64_t& into) {
    if (const auto value = whole(key, 0, kMostCount, true, "a whole number")) into = *value;
}

void Reader::real(const char* key, double& into) {
    const json* value = find(key, true, "a number");
    if (!value) return;
    if (value->is_number() && std::isfinite(value->get<double>()))
        into = value->get<double>();
    else
        complaints_->add(at(key), shown(*value), "a number");
}

void Reader::mass(const std::string& key, Mass& into) {
    if (const auto value = whole(key + "_mg", -kMostWeight, kMostWeight, true, "a weight in whole milligrams"))
        into = milligrams(*value);
}

void Reader::length(const std::string& key, Length& into) {
    if (const auto value = whole(key + "_um", 0, kMostLength, true, "a length in whole micrometres"))
        into = micrometres(*value);
}

void Reader::temperature(const std::string& key, Celsius& into) {
    if (const auto value =
            whole(key + "_mdegc", kColdest, kHottest, true, "a temperature in whole thousandths of a degree Celsius"))
        into = Celsius::ofMilli(*value);
}

void Reader::temperature(const std::string& key, std::optional<Celsius>& into) {
    if (const auto value =
            whole(key + "_mdegc", kColdest, kHottest, false, "a temperature in whole thousandths of a degree Celsius"))
        into = Celsius::ofMilli(*value);
}

void Reader::minutes(const std::string& key, Minutes& into) {
    if (const auto value = whole(key + "_min", 0, kMostMinutes, true, "whole minutes")) into = Minutes(*value);
}

void Reader::money(const char* key, Money& into) {
    const json* value = find(key, true, "an object with currency and ten_thousandths");
    if (!value) return;
    Reader inner(*value, at(key), *complaints_);
    std::string code;
    inner.text("currency", code);
    const auto count = inner.whole("ten_thousandths", -kMostMoney, kMostMoney, true,
                                   "whole ten-thousandths of the currency's main unit");
    inner.finish();
    if (!value->is_object() || !value->contains("currency") || !(*value)["currency"].is_string()) return;
    const auto currency = Currency::of(code);
    if (!currency)
        complaints_->add(inner.at("currency"), shown(json(code)), "three capital letters of ISO 4217, such as \"GBP\"");
    if (currency && count) into = Money(*count, *currency);
}

void Reader::date(const char* key, Date& into) {
    constexpr const char* kWant = "a date, such as \"2026-11-27\"";
    const json* value = find(key, true, kWant);
    if (!value) return;
    const auto date = value->is_string() ? parseDate(value->get_ref<const std::string&>()) : std::nullopt;
    if (date)
        into = *date;
    else
        complaints_->add(at(key), shown(*value), kWant);
}

void Reader::instant(const char* key, Instant& into) {
    const json* value = find(key, true, kWantInstant);
    const auto instant =
        value && value->is_string() ? parseInstant(value->get_ref<const std::string&>()) : std::nullopt;
    if (instant)
        into = *instant;
    else
        trouble_ = true;
    if (value && !instant) complaints_->add(at(key), shown(*value), kWantInstant);
}

void Reader::instant(const char* key, std::optional<Instant>& into) {
    const json* value = find(key, false, kWantInstant);
    if (!value) return;
    into = value->is_string() ? parseInstant(value->get_ref<const std::string&>()) : std::nullopt;
    if (!into) complaints_->add(at(key), shown(*value), kWantInstant);
}

void Reader::zone(const char* key, std::string& into) {
    const json* value = find(key, true, "an IANA time zone");
    if (!value) return;
    // A name longer than any zone's is not handed on to a library that looks for files.
    constexpr std::size_t kLongest = 64;
    if (value->is_string() && value->get_ref<const std::string&>().size() <= kLongest &&
        Zone::named(value->get_ref<const std::string&>()))
        into = value->get<std::string>();
    else
        complaints_->add(at(key), shown(*value), "an IANA time zone that this system knows, such as \"Europe/London\"");
}

void Reader::texts(const char* key, std::vector<std::string>& into) {
    const json* values = array(key);
    if (!values) return;
    for (std::size_t i = 0; i < values->size(); ++i) {
        const json& value = (*values)[i];
        if (value.is_string())
            into.push_back(value.get<std::string>());
        else
            complaints_->add(at(key, i), shown(value), "a text");
    }
}

void Reader::cautions(const char* key, std::vector<book::Caution>& into) {
    const json* values = array(key);
    if (!values) return;
    std::vector<std::string> words;
    for (const auto& [caution, word] : kCautionWords) words.emplace_back(word);
    std::string want = "one of";
    for (const std::string& word : words) want += ' ' + word;
    for (std::size_t i = 0; i < values->size(); ++i) {
        const json& value = (*values)[i];
        const auto caution = value.is_string() ? parseCaution(value.get_ref<const std::string&>()) : std::nullopt;
        if (caution)
            into.push_back(*caution);
        else
            complaints_->add(at(key, i), shown(value), want,
                             value.is_string() ? didYouMean(value.get_ref<const std::string&>(), words) : "");
    }
}

void Reader::inOrder(const char* firstKey, Instant first, const char* thenKey, Instant then) {
    if (object_ && !trouble_ && then < first)
        complaints_->add(at(thenKey), toText(then) + " is before " + firstKey + " (" + toText(first) + ")",
                         "not before " + std::string(firstKey));
}

void Reader::finish() {
    if (!object_) return;
    for (const auto& [key, value] : object_->items()) {
        if (complaints_->full()) return;
        if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
        constexpr std::size_t kLong = 60;
        std::string name = json(key).dump(-1, ' ', true, json::error_handler_t::replace);
        if (name.size() > kLong) name = name.substr(0, kLong) + "...";
        complaints_->add(path_, "the key " + name + " is not known here", "only keys of docs/formats/plan.md",
                         didYouMean(key, known_));
    }
}

} // namespace piewright::wire
