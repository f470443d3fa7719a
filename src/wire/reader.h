// Visits a plan's fields and fills them from a JSON object, saying of each wrong one where it is and what is wanted.
#pragma once

#include "finding/finding.h"
#include "wire/fields.h"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace piewright::wire {

/// The findings of one file, the first hundred in full and the rest counted.
class Complaints {
  public:
    explicit Complaints(std::string file) : file_(std::move(file)) {}
    void add(std::string path, std::string saw, std::string want, std::string hint = {});
    [[nodiscard]] bool any() const { return !findings_.empty(); }
    [[nodiscard]] bool full() const { return findings_.size() >= kMost; }
    [[nodiscard]] std::vector<Finding> take() &&;

  private:
    static constexpr std::size_t kMost = 100;
    std::string file_;
    std::vector<Finding> findings_;
    std::size_t more_ = 0;
};

class Reader {
  public:
    static constexpr bool kFills = true;

    /// `path` is where `value` stands, empty for the whole file. A value that is no object is complained of at once.
    Reader(const nlohmann::json& value, std::string path, Complaints& complaints);

    void schema(int version);
    void text(const char* key, std::string& into);
    void truth(const char* key, bool& into);
    void count(const char* key, int& into);
    void count(const char* key, std::int64_t& into);
    void real(const char* key, double& into);
    void mass(const std::string& key, Mass& into);
    void length(const std::string& key, Length& into);
    void temperature(const std::string& key, Celsius& into);
    void temperature(const std::string& key, std::optional<Celsius>& into);
    void minutes(const std::string& key, Minutes& into);
    void money(const char* key, Money& into);
    void date(const char* key, Date& into);
    void instant(const char* key, Instant& into);
    void instant(const char* key, std::optional<Instant>& into);
    void zone(const char* key, std::string& into);
    void texts(const char* key, std::vector<std::string>& into);
    void cautions(const char* key, std::vector<book::Caution>& into);
    template <class T> void list(const char* key, std::vector<T>& into) {
        const nlohmann::json* values = array(key);
        if (!values) return;
        for (std::size_t i = 0; i < values->size() && !complaints_->full(); ++i) {
            Reader inner((*values)[i], at(key, i), *complaints_);
            fields(inner, into.emplace_back());
            inner.finish();
        }
    }
    /// `then` may not be before `first`.
    void inOrder(const char* firstKey, Instant first, const char* thenKey, Instant then);

    /// Complains of the keys that nobody asked for.
    void finish();

  private:
    [[nodiscard]] std::string at(const std::string& key) const;
    [[nodiscard]] std::string at(const std::string& key, std::size_t index) const;
    /// The value of a key, marked as known; complains when it is missing and `needed`.
    const nlohmann::json* find(const std::string& key, bool needed, const char* want);
    const nlohmann::json* array(const std::string& key);
    std::optional<std::int64_t> whole(const std::string& key, std::int64_t least, std::int64_t most, bool needed,
                                      const char* want);

    const nlohmann::json* object_ = nullptr; // none: not an object, and complained of already
    std::string path_;
    Complaints* complaints_;
    std::vector<std::string> known_;
    bool trouble_ = false; // an instant of this object could not be read: its order says nothing
};

} // namespace piewright::wire
