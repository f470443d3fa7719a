// The mapping file: the till's words for our goods.
#include "finding/suggest.h"
#include "sales/fold.h"
#include "sales/import.h"
#include "sales/toml_text.h"

// Nothing here nests; the library tears a document down by recursion.
#define TOML_MAX_NESTED_VALUES 16
// Version 3.3 asserts some things that only a bad file breaks (`[1,}`): then it is to say so, not to end the program.
#define TOML_ASSERT(expr) ((expr) ? void() : throw std::logic_error("not TOML"))
#include <stdexcept>

// In the library's few noexcept functions that assertion would end the program; no text reaches it there.
#if defined(__GNUC__) && !defined(__clang__)
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wterminate"
#endif
#include <toml++/toml.h>
#if defined(__GNUC__) && !defined(__clang__)
#pragma GCC diagnostic pop
#endif

#include <algorithm>
#include <exception>
#include <string_view>
#include <utility>

namespace piewright::sales {

namespace {

constexpr std::size_t kMostBytes = std::size_t{4} << 20U;
constexpr std::size_t kMostFindings = 200;

class MappingReader {
  public:
    MappingReader(const std::string& file, const std::set<GoodId>& known) : file_(file) {
        for (const GoodId& good : known) known_.push_back(good.name());
    }

    Result<Mapping> read(const std::string& text);

  private:
    void refuse(const toml::node& at, std::string key, std::string saw, std::string want, std::string hint = {}) {
        if (findings_.size() >= kMostFindings) return;
        const auto& begin = at.source().begin;
        findings_.push_back({{file_, static_cast<int>(begin.line), static_cast<int>(begin.column), std::move(key)},
                             std::move(saw),
                             std::move(want),
                             std::move(hint),
                             Severity::Error});
    }
    void take(const std::string& word, const toml::node& value);

    std::string file_;
    std::vector<std::string> known_;
    std::map<std::string, std::string> meant_; // folded word to the good, or to nothing
    Mapping mapping_;
    std::vector<Finding> findings_;
};

void MappingReader::take(const std::string& word, const toml::node& value) {
    const std::string key = "items.\"" + word.substr(0, 60) + '"';
    const auto* const text = value.as_string();
    if (text == nullptr) {
        refuse(value, key, "not a text", "a good's name in quotes, or \"\" for what is no good of ours");
        return;
    }
    const std::string good = text->get();
    if (!good.empty() && std::find(known_.begin(), known_.end(), good) == known_.end()) {
        refuse(value, key, "no good is called \"" + good.substr(0, 60) + '"',
               "the name of a good in goods.toml, or \"\"", didYouMean(good, known_));
        return;
    }
    const auto [before, fresh] = meant_.emplace(fold(word), good);
    if (!fresh && before->second != good) {
        refuse(value, key, "the same word stands here twice with different goods (case and spaces aside)",
               "one of them");
        return;
    }
    if (good.empty())
        mapping_.ignored.insert(word);
    else
        mapping_.goods.emplace(word, GoodId(good));
}

Result<Mapping> MappingReader::read(const std::string& text) {
    const auto refused = [&](int line, int column, std::string saw, std::string want) {
        return Problems::one(Fault::Input, std::move(saw), std::move(want), {file_, line, column, {}});
    };
    if (text.size() > kMostBytes) return refused(0, 0, "larger than 4 MiB", "a mapping of a few hundred lines");
    if (auto unfit = unfitForToml(text)) {
        unfit->place.file = file_;
        unfit->saw = "not TOML: " + unfit->saw;
        return Problems{Fault::Input, {*unfit}};
    }
    try {
        const toml::table document = toml::parse(std::string_view(text), std::string_view(file_));
        for (const auto& [key, value] : document) {
            const std::string name(static_cast<std::string_view>(key));
            if (name != "items" || !value.is_table())
                refuse(value, name.substr(0, 60), "not known here", "one table [items] of \"till's word\" = \"good\"");
        }
        if (const auto* const items = document.get_as<toml::table>("items")) {
            for (const auto& [key, value] : *items) take(std::string(static_cast<std::string_view>(key)), value);
        } else if (findings_.empty()) {
            return refused(0, 0, "no table [items]", "one table [items] of \"till's word\" = \"good\"");
        }
    } catch (const toml::parse_error& error) {
        const auto& at = error.source().begin;
        return refused(static_cast<int>(at.line), static_cast<int>(at.column),
                       "not TOML: " + std::string(error.description()),
                       "lines such as \"Beef & Onion Pie\" = \"beef-pie\"");
    } catch (const std::exception& error) {
        return refused(0, 0, std::string("cannot be read: ") + error.what(), "a TOML file");
    }
    if (!findings_.empty()) return Problems{Fault::Input, findings_};
    return mapping_;
}

} // namespace

Result<Mapping> readMapping(const std::string& file, const std::string& text, const std::set<GoodId>& known) {
    return MappingReader(file, known).read(text);
}

} // namespace piewright::sales
