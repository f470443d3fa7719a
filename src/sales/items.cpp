#include "sales/items.h"

#include "sales/fold.h"

namespace piewright::sales {

namespace {

constexpr std::size_t kMostAskedBytes = std::size_t{4} << 20U;

} // namespace

Items::Items(const Mapping& mapping, const std::map<GoodId, std::string>& goods) {
    std::map<GoodId, int> place;
    for (const auto& [id, name] : goods) {
        place.emplace(id, static_cast<int>(goods_.size()));
        goods_.push_back(id);
    }
    // The first to claim a word keeps it: the house's own mapping, then ids, then names.
    for (const auto& [word, id] : mapping.goods) {
        const auto known = place.find(id);
        if (known != place.end()) byFolded_.emplace(fold(word), known->second);
    }
    for (const std::string& word : mapping.ignored) byFolded_.emplace(fold(word), kIgnored);
    for (const auto& [id, name] : goods) byFolded_.emplace(fold(id.name()), place.at(id));
    for (const auto& [id, name] : goods)
        if (!fold(name).empty()) byFolded_.emplace(fold(name), place.at(id));
}

int Items::find(std::string_view item) {
    const auto before = asked_.find(item);
    if (before != asked_.end()) return before->second;
    const auto found = byFolded_.find(fold(item));
    const int place = found == byFolded_.end() ? kUnknown : found->second;
    if (askedBytes_ < kMostAskedBytes) {
        asked_.emplace(std::string(item), place);
        askedBytes_ += item.size() + 64;
    }
    return place;
}

std::vector<std::string> Items::known() const {
    std::vector<std::string> words;
    words.reserve(byFolded_.size());
    for (const auto& [word, place] : byFolded_) words.push_back(word);
    return words;
}

} // namespace piewright::sales
