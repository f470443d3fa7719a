#include "wire/document.h"

#include <algorithm>
#include <optional>
#include <set>
#include <vector>

namespace piewright::wire {

namespace {

using nlohmann::json;

/// Where the parser stands: one level for each open object or array.
struct Level {
    bool array = false;
    std::size_t index = 0;
    std::string key;
    std::set<std::string> keys;
};

struct Refused {
    Finding finding;
};

/// Watches the parser and stops it at the first limit passed.
class Watch {
  public:
    explicit Watch(std::string file) : file_(std::move(file)) {}

    void see(json::parse_event_t event, const json& parsed) {
        switch (event) {
        case json::parse_event_t::object_start:
            open(false);
            break;
        case json::parse_event_t::array_start:
            open(true);
            break;
        case json::parse_event_t::object_end:
        case json::parse_event_t::array_end:
            levels_.pop_back();
            passed();
            break;
        case json::parse_event_t::key:
            key(parsed.get_ref<const std::string&>());
            break;
        case json::parse_event_t::value:
            counted();
            passed();
            break;
        }
    }

  private:
    void open(bool array) {
        counted();
        if (levels_.size() == kMostLevels)
            refuse("nested deeper than " + std::to_string(kMostLevels) + " levels", "a plan as it was written");
        levels_.push_back({array, 0, {}, {}});
    }
    void key(const std::string& name) {
        Level& level = levels_.back();
        level.key = name;
        if (!level.keys.insert(name).second) refuse("this key stands twice", "each key once");
    }
    void passed() {
        if (!levels_.empty() && levels_.back().array) ++levels_.back().index;
    }
    void counted() {
        if (++values_ > kMostValues)
            refuse("more than " + std::to_string(kMostValues) + " values", "a plan as it was written");
    }
    [[noreturn]] void refuse(std::string saw, std::string want) const {
        std::string path;
        for (const Level& level : levels_) {
            if (level.array)
                path += '[' + std::to_string(level.index) + ']';
            else
                path += (path.empty() ? "" : ".") + level.key.substr(0, 60);
        }
        throw Refused{{{file_, 0, 0, path}, std::move(saw), std::move(want), {}}};
    }

    std::string file_;
    std::vector<Level> levels_;
    std::size_t values_ = 0;
};

Place placeOf(std::string_view text, std::size_t byte, const std::string& file) {
    const std::string_view before = text.substr(0, std::min(byte > 0 ? byte - 1 : 0, text.size()));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const auto lineStart = before.rfind('\n');
    const std::size_t column = before.size() - (lineStart == std::string_view::npos ? 0 : lineStart + 1) + 1;
    constexpr std::size_t kMost = 1'000'000'000;
    return {file, static_cast<int>(line), static_cast<int>(std::min(column, kMost)), {}};
}

/// The parser's own words without its prefix, in printable ASCII and short: it quotes the input, which may be anything.
std::string reason(std::string_view what) {
    const auto start = what.find("syntax error");
    std::string text;
    for (const char c : start == std::string_view::npos ? what : what.substr(start)) {
        if (text.size() > 160) return text + "...";
        text += c >= ' ' && c <= '~' ? c : '?';
    }
    return text;
}

} // namespace

Result<json> parseDocument(std::string_view text, const std::string& file) {
    const Place whole{file, 0, 0, {}};
    if (text.size() > kMostBytes)
        return Problems::one(Fault::Input, std::to_string(text.size()) + " bytes",
                             "at most " + std::to_string(kMostBytes) + " bytes", whole);
    Watch watch(file);
    try {
        return json::parse(text.begin(), text.end(), [&](int /*depth*/, json::parse_event_t event, json& parsed) {
            watch.see(event, parsed);
            return true;
        });
    } catch (const Refused& refused) {
        return Problems{Fault::Input, {refused.finding}};
    } catch (const json::parse_error& error) {
        return Problems::one(Fault::Input, "not JSON: " + reason(error.what()), "a plan in JSON",
                             placeOf(text, error.byte, file));
    } catch (const json::exception& error) {
        return Problems::one(Fault::Input, "not JSON: " + reason(error.what()), "a plan in JSON", whole);
    }
}

} // namespace piewright::wire
