// Takes the keys of one table, reporting whatever is missing, unknown, of a wrong kind or out of bounds.
#pragma once

#include "book/report.h"
#include "book/value.h"

#include <algorithm>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace piewright::book {

/// What the readers of one file share.
struct Reading {
    Report& report;
    std::string file;
    std::optional<Currency> currency; ///< of the house; nothing while it is not known
};

/// The keys a table may have.
using Keys = std::span<const std::string_view>;

/// Both ends are allowed.
template <class T> struct Bounds {
    T least;
    T most;
};

/// Bounds of an amount of money, in whole units of the currency.
struct MoneyBounds {
    std::int64_t least;
    std::int64_t most;
};

inline constexpr MoneyBounds kPrices{0, 1'000'000};
/// No table of a kind has more entries, no list more values, unless said.
inline constexpr std::size_t kMostOfAKind = 1'000;

class Fields {
  public:
    /// Reports what is not a table, and every key that is not among `known`. `path` is the table's dotted path in the
    /// file, empty for the file itself.
    Fields(Reading& reading, const Node& table, std::string path, Keys known);

    [[nodiscard]] bool has(std::string_view key) const { return find(key) != nullptr; }
    [[nodiscard]] const Node* find(std::string_view key) const;
    [[nodiscard]] std::string path(std::string_view key) const;
    [[nodiscard]] Reading& reading() const { return reading_; }

    /// Reads what must be there. All readers: whether `into` was set.
    template <class T>
    bool need(std::string_view key, T& into, const std::type_identity_t<std::optional<Bounds<T>>>& bounds = {}) {
        if (has(key)) return take(key, into, bounds);
        missing(key, wantOf<T>());
        return false;
    }

    /// Reads what may be there.
    template <class T>
    bool take(std::string_view key, T& into, const std::type_identity_t<std::optional<Bounds<T>>>& bounds = {}) {
        const Node* node = find(key);
        return node != nullptr && value(*node, path(key), into, bounds);
    }
    template <class T>
    bool take(std::string_view key, std::optional<T>& into,
              const std::type_identity_t<std::optional<Bounds<T>>>& bounds = {}) {
        T value{};
        if (!take(key, value, bounds)) return false;
        into = std::move(value);
        return true;
    }

    /// Money is held to the house's currency.
    bool needMoney(std::string_view key, Money& into, MoneyBounds bounds = kPrices);
    bool takeMoney(std::string_view key, Money& into, MoneyBounds bounds = kPrices);

    /// A list of values, each at most once where `once` is asked for. One that can't be read stands there as its type's
    /// default, so that the others keep their places.
    template <class T>
    bool takeList(std::string_view key, std::vector<T>& into, std::size_t most = kMostOfAKind, bool once = false) {
        std::vector<T> values;
        const bool fine = eachItem(key, most, [&](const Node& node, const std::string& itemPath) {
            T item{};
            const bool fit = value(node, itemPath, item);
            if (fit && once && std::find(values.begin(), values.end(), item) != values.end())
                error(node, itemPath, seen(node) + " stands there twice", "each once");
            values.push_back(std::move(item));
        });
        if (fine) into = std::move(values);
        return fine;
    }

    /// Gives each item of a list with its path; whether there is a list of at most `most`.
    template <class Take> bool eachItem(std::string_view key, std::size_t most, Take take) {
        const Node* list = find(key);
        if (list == nullptr || !isList(*list, key, most)) return false;
        for (std::size_t i = 0; i < list->items.size(); ++i)
            take(list->items[i], path(key) + '[' + std::to_string(i) + ']');
        return true;
    }

    /// Gives each entry of a table of named things: name, node, path. Names are checked; a bad one is passed over.
    template <class Take> void eachNamed(std::string_view key, Take take) {
        const Node* table = find(key);
        if (table == nullptr || !isTable(*table, key)) return;
        for (const Member& member : table->members)
            if (isNamed(member, key)) take(member.key, member.value, path(key) + '.' + member.key);
    }

    /// One value that is not a table's key, such as a list's item.
    template <class T>
    bool value(const Node& node, const std::string& at, T& into,
               const std::type_identity_t<std::optional<Bounds<T>>>& bounds = {}) {
        auto read = readValue<T>(node);
        if (!read) {
            refuse(node, at, read.problems());
            return false;
        }
        if constexpr (requires(const T& a) { a < a; }) {
            if (bounds && (*read < bounds->least || bounds->most < *read)) {
                error(node, at, seen(node) + (*read < bounds->least ? " is too little" : " is too much"),
                      writeValue(bounds->least) + " to " + writeValue(bounds->most));
                return false;
            }
        }
        into = std::move(*read);
        return true;
    }

    void missing(std::string_view key, std::string want);
    /// At the key's value, or at the table when the key is not there.
    void error(std::string_view key, std::string saw, std::string want, std::string hint = {});
    void error(const Node& node, const std::string& at, std::string saw, std::string want, std::string hint = {});

  private:
    bool isList(const Node& node, std::string_view key, std::size_t most);
    bool isTable(const Node& node, std::string_view key);
    bool isNamed(const Member& member, std::string_view key);
    void refuse(const Node& node, const std::string& at, const Problems& problems);

    Reading& reading_;
    const Node& table_;
    std::string path_;
    Keys known_;
};

} // namespace piewright::book
