// Visits a plan's fields and builds the JSON object that tells them.
#pragma once

#include "wire/fields.h"
#include "wire/spelling.h"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace piewright::wire {

class Writer {
  public:
    static constexpr bool kFills = false;

    void schema(int version) { object_["schema"] = version; }
    void text(const char* key, const std::string& value) { object_[key] = value; }
    void truth(const char* key, bool value) { object_[key] = value; }
    void count(const char* key, std::int64_t value) { object_[key] = value; }
    void real(const char* key, double value) { object_[key] = value; }
    void mass(const std::string& key, Mass value) { object_[key + "_mg"] = value.raw(); }
    void length(const std::string& key, Length value) { object_[key + "_um"] = value.raw(); }
    void temperature(const std::string& key, Celsius value) { object_[key + "_mdegc"] = value.milli(); }
    void temperature(const std::string& key, const std::optional<Celsius>& value) {
        if (value) temperature(key, *value);
    }
    void minutes(const std::string& key, Minutes value) { object_[key + "_min"] = value.count(); }
    void money(const char* key, Money value) {
        object_[key] = {{"currency", value.currency().code()}, {"ten_thousandths", value.tenThousandths()}};
    }
    void date(const char* key, Date value) { object_[key] = piewright::toText(value); }
    void instant(const char* key, Instant value) { object_[key] = toText(value); }
    void instant(const char* key, const std::optional<Instant>& value) {
        if (value) instant(key, *value);
    }
    void zone(const char* key, const std::string& name) { object_[key] = name; }
    void texts(const char* key, const std::vector<std::string>& values) { object_[key] = values; }
    void cautions(const char* key, const std::vector<book::Caution>& values) {
        nlohmann::json list = nlohmann::json::array();
        for (const book::Caution caution : values) list.push_back(toText(caution));
        object_[key] = std::move(list);
    }
    template <class T> void list(const char* key, const std::vector<T>& values) {
        nlohmann::json list = nlohmann::json::array();
        for (const T& value : values) {
            Writer inner;
            fields(inner, value);
            list.push_back(std::move(inner.object_));
        }
        object_[key] = std::move(list);
    }
    void inOrder(const char* /*firstKey*/, Instant /*first*/, const char* /*thenKey*/, Instant /*then*/) {}

    [[nodiscard]] const nlohmann::json& object() const { return object_; }

  private:
    nlohmann::json object_ = nlohmann::json::object();
};

} // namespace piewright::wire
