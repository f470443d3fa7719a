#include "toml/read.h"

#include "toml/letters.h"

#include <algorithm>
#include <exception>
#include <optional>
#include <stdexcept>
#include <string_view>
#include <utility>

namespace {

constexpr void heldBy(bool text) {
    if (!text) throw std::logic_error("not well formed");
}

} // namespace

// Nothing we read nests deeper; the library tears a document down by recursion.
#define TOML_MAX_NESTED_VALUES 16
// The library asserts some things that only a bad text breaks (`[.a]`, `[[1,}`): then it is to say so, in every build,
// and neither end the program nor go on regardless.
#undef NDEBUG
#define TOML_ASSERT(expr) heldBy(static_cast<bool>(expr))
#include <toml++/toml.h>

namespace piewright::toml {

namespace {

constexpr std::size_t kMostLines = 50'000;
constexpr std::size_t kMostPointsOnALine = 200;
constexpr std::size_t kMostTogether = 4'096; // in one list or table
constexpr std::size_t kMostNodes = 200'000;
constexpr int kDeepest = 8;

// Too big or too deep for the library to handle in good time and stack: dotted keys nest without a limit there.
std::optional<Problems> tooMuch(const std::string& text, const std::string& file) {
    int line = 1;
    std::size_t points = 0;
    for (const char c : text) {
        if (c == '\n') {
            ++line;
            points = 0;
        }
        if (c == '.') ++points;
        if (static_cast<std::size_t>(line) > kMostLines)
            return Problems::one(Fault::Input, "more than 50,000 lines", "at most 50,000 lines in a file",
                                 {file, 0, 0, {}});
        if (points > kMostPointsOnALine)
            return Problems::one(Fault::Input, "more than 200 points on one line", "shorter lines, and keys less deep",
                                 {file, line, 0, {}});
    }
    return std::nullopt;
}

class Converter {
  public:
    explicit Converter(std::string_view text) : text_(text) {}

    // What was too much, and where.
    [[nodiscard]] const Finding& finding() const { return finding_; }

    bool convert(const ::toml::node& from, Node& to, int depth) {
        to.line = static_cast<int>(from.source().begin.line);
        to.column = static_cast<int>(from.source().begin.column);
        if (++nodes_ > kMostNodes) return refused(to, "more than 200,000 values", "fewer in one file");
        if (depth > kDeepest) return refused(to, "tables or lists nested too deep", "at most eight deep");
        if (const auto* table = from.as_table()) return convertTable(*table, to, depth);
        if (const auto* list = from.as_array()) return convertList(*list, to, depth);
        convertValue(from, to);
        return true;
    }

  private:
    bool refused(const Node& at, std::string saw, std::string want) {
        finding_ = {{{}, at.line, at.column, {}}, std::move(saw), std::move(want), {}};
        return false;
    }

    bool convertTable(const ::toml::table& table, Node& to, int depth) {
        to.kind = Node::Kind::Table;
        if (table.size() > kMostTogether) return refused(to, "more than 4,096 keys in one table", "fewer");
        for (auto&& [key, value] : table) {
            Member member;
            if (!convert(value, member.value, depth + 1)) return false;
            place(key, member);
            to.members.push_back(std::move(member));
        }
        std::stable_sort(to.members.begin(), to.members.end(), [](const Member& a, const Member& b) {
            return std::pair(a.line, a.column) < std::pair(b.line, b.column);
        });
        return true;
    }

    bool convertList(const ::toml::array& list, Node& to, int depth) {
        to.kind = Node::Kind::List;
        if (list.size() > kMostTogether) return refused(to, "more than 4,096 values in one list", "fewer");
        to.items.resize(list.size());
        for (std::size_t i = 0; i < list.size(); ++i)
            if (!convert(*list.get(i), to.items[i], depth + 1)) return false;
        return true;
    }

    static void convertValue(const ::toml::node& from, Node& to) {
        if (const auto* text = from.as_string()) {
            to.kind = Node::Kind::Text;
            to.text = plain(text->get());
        } else if (const auto* number = from.as_integer()) {
            to.kind = Node::Kind::Integer;
            to.number = number->get();
        } else if (const auto* truth = from.as_boolean()) {
            to.kind = Node::Kind::Truth;
            to.truth = truth->get();
        } else if (const auto* day = from.as_date()) {
            to.kind = Node::Kind::Day;
            const ::toml::date date = day->get();
            to.date = Date(std::chrono::year_month_day(std::chrono::year(date.year), std::chrono::month(date.month),
                                                       std::chrono::day(date.day)));
        } else {
            to.kind = from.is_floating_point() ? Node::Kind::Real : Node::Kind::Time;
        }
    }

#if TOML_LIB_MAJOR >= 3
    void place(const ::toml::key& key, Member& member) {
        member.key = plain(key.str());
        member.line = static_cast<int>(key.source().begin.line);
        member.column = static_cast<int>(key.source().begin.column);
    }
#else
    // Keys are plain strings there: theirs is the last place before the value on the value's line that reads like them.
    void place(const std::string& key, Member& member) {
        member.key = plain(key);
        member.line = member.value.line;
        member.column = member.value.column;
        std::string_view rest = text_;
        for (int line = 1; line < member.line && !rest.empty(); ++line)
            rest.remove_prefix(std::min(rest.find('\n') + 1, rest.size()));
        const std::string_view row = rest.substr(0, rest.find('\n'));
        const std::size_t at = member.value.kind == Node::Kind::Table && row.starts_with('[')
                                   ? row.find(key)
                                   : row.rfind(key, static_cast<std::size_t>(std::max(member.column - 1, 0)));
        if (at != std::string_view::npos) member.column = static_cast<int>(at) + 1;
    }
#endif

    [[maybe_unused]] std::string_view text_;
    Finding finding_;
    std::size_t nodes_ = 0;
};

Problems notToml(const std::string& file, int line, int column, const std::string& saw) {
    return Problems::one(Fault::Input, "not TOML: " + saw, {}, {file, line, column, {}});
}

} // namespace

Result<Node> read(const std::string& text, const std::string& file) {
    if (auto problems = tooMuch(text, file)) return *std::move(problems);
    const Veiled veiled = veil(text);
    if (veiled.badLine > 0) return notToml(file, veiled.badLine, veiled.badColumn, "a byte that is not UTF-8");
    try {
        const ::toml::table document = ::toml::parse(std::string_view(veiled.text), std::string_view(file));
        Node root;
        Converter converter(veiled.text);
        if (converter.convert(document, root, 0)) return root;
        Problems problems{Fault::Input, {converter.finding()}};
        problems.findings.front().place.file = file;
        return problems;
    } catch (const ::toml::parse_error& error) {
        const auto& at = error.source().begin;
        return notToml(file, static_cast<int>(at.line), static_cast<int>(at.column),
                       plain(std::string(error.description())));
    } catch (const std::exception& error) {
        return notToml(file, 0, 0, error.what());
    }
}

} // namespace piewright::toml
