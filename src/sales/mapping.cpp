// The mapping file: the till's words for our goods.
#include "finding/suggest.h"
#include "sales/fold.h"
#include "sales/import.h"
#include "toml/read.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace piewright::sales {

namespace {

constexpr std::size_t kMostFindings = 200;
constexpr const char* kWant = "one table [items] of \"till's word\" = \"good\"";

class MappingReader {
  public:
    MappingReader(const std::string& file, const std::set<GoodId>& known) : file_(file) {
        for (const GoodId& good : known) known_.push_back(good.name());
    }

    Result<Mapping> read(const std::string& text);

  private:
    void refuse(const toml::Node& at, std::string key, std::string saw, std::string want, std::string hint = {}) {
        if (findings_.size() >= kMostFindings) return;
        findings_.push_back({{file_, at.line, at.column, std::move(key)},
                             std::move(saw),
                             std::move(want),
                             std::move(hint),
                             Severity::Error});
    }
    void take(const std::string& word, const toml::Node& value);

    std::string file_;
    std::vector<std::string> known_;
    std::map<std::string, std::string> meant_; // folded word to the good, or to nothing
    Mapping mapping_;
    std::vector<Finding> findings_;
};

void MappingReader::take(const std::string& word, const toml::Node& value) {
    const std::string key = "items.\"" + word.substr(0, 60) + '"';
    if (value.kind != toml::Node::Kind::Text) {
        refuse(value, key, "not a text", "a good's name in quotes, or \"\" for what is no good of ours");
        return;
    }
    const std::string& good = value.text;
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
    const auto document = toml::read(text, file_);
    if (!document) {
        Problems problems = document.problems();
        for (Finding& finding : problems.findings)
            if (finding.want.empty())
                finding.want = "lines such as \"Beef & Onion Pie\" = \"beef-pie\", both in quotes";
        return problems;
    }
    for (const toml::Member& member : document->members) {
        if (member.key != "items" || member.value.kind != toml::Node::Kind::Table)
            refuse(member.value, member.key.substr(0, 60), "not known here", kWant);
    }
    if (const toml::Node* const items = document->find("items");
        items != nullptr && items->kind == toml::Node::Kind::Table) {
        for (const toml::Member& member : items->members) take(member.key, member.value);
    } else if (findings_.empty()) {
        return Problems::one(Fault::Input, "no table [items]", kWant, {file_, 0, 0, {}});
    }
    if (!findings_.empty()) return Problems{Fault::Input, findings_};
    return mapping_;
}

} // namespace

Result<Mapping> readMapping(const std::string& file, const std::string& text, const std::set<GoodId>& known) {
    return MappingReader(file, known).read(text);
}

} // namespace piewright::sales
