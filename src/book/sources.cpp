#include "book/sources.h"

#include "book/kinds.h"
#include "finding/suggest.h"
#include "toml/read.h"

#include <algorithm>
#include <charconv>

namespace piewright::book {

namespace {

std::vector<std::string> fileNames() {
    std::vector<std::string> names;
    for (const BookFile& file : bookFiles()) names.emplace_back(file.name);
    return names;
}

// One step down: `deposits`, or `[1]` of a list.
const Node* child(const Node& node, std::string_view step) {
    if (!step.starts_with('[')) return node.kind == Node::Kind::Table ? node.find(step) : nullptr;
    std::size_t index = 0;
    std::from_chars(step.data() + 1, step.data() + step.size(), index);
    return index < node.items.size() ? &node.items[index] : nullptr;
}

// Cuts the first step off a dotted path.
std::string_view nextStep(std::string_view& path) {
    const std::size_t end = std::min(path.find_first_of(".[", 1), path.size());
    const std::string_view step = path.substr(0, end);
    path.remove_prefix(end);
    if (path.starts_with('.')) path.remove_prefix(1);
    return step;
}

// The till's words for the goods lie in the house's folder too; they are the sales import's to read.
constexpr std::string_view kTillFile = "till.toml";

} // namespace

Sources::Sources(const Texts& texts, Report& report) {
    const std::vector<std::string> names = fileNames();
    if (texts.size() > kMostFiles) {
        report.error({}, std::to_string(texts.size()) + " files", "at most 64");
        return;
    }
    for (const auto& [name, text] : texts) {
        if (name == kTillFile) continue;
        if (std::find(names.begin(), names.end(), name) == names.end()) {
            std::string known;
            for (const std::string& each : names) known += (known.empty() ? "" : ", ") + each;
            report.error({name, 0, 0, {}}, "no file of a book", known, didYouMean(name, names));
        } else if (text.size() > kMostFileBytes) {
            report.error({name, 0, 0, {}}, std::to_string(text.size()) + " bytes", "at most 4 MiB");
        } else if (auto root = toml::read(text, name)) {
            roots_.emplace(name, std::move(*root));
        } else {
            report.take(root.problems());
        }
    }
    for (const BookFile& file : bookFiles()) {
        if (roots_.contains(file.name)) continue;
        const bool given = texts.contains(std::string(file.name));
        if (given || file.needed) unknown_.emplace(file.name);
        if (!given && file.needed)
            report.error({std::string(file.name), 0, 0, {}}, "the file is missing", "every book to have one");
    }
}

const Node* Sources::root(std::string_view file) const {
    const auto found = roots_.find(file);
    return found == roots_.end() ? nullptr : &found->second;
}

Place Sources::place(std::string_view file, const std::string& path) const {
    Place place{std::string(file), 0, 0, path};
    const Node* node = root(file);
    std::string_view rest = path;
    while (node != nullptr && !rest.empty()) {
        node = child(*node, nextStep(rest));
        if (node == nullptr) break;
        place.line = node->line;
        place.column = node->column;
    }
    return place;
}

} // namespace piewright::book
