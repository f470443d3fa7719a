// Which good a till's word means.
#pragma once

#include "sales/import.h"

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace piewright::sales {

/// Looks items up: by the mapping, then as a good's id, then as a good's name; case and outer spaces aside.
class Items {
  public:
    static constexpr int kIgnored = -1; ///< the mapping sets it aside
    static constexpr int kUnknown = -2;

    Items(const Mapping& mapping, const std::map<GoodId, std::string>& goods);

    /// Place in `goods()`, or one of the above. What was asked before is found at once (bounded memory).
    [[nodiscard]] int find(std::string_view item);

    [[nodiscard]] const std::vector<GoodId>& goods() const { return goods_; }
    [[nodiscard]] std::vector<std::string> known() const; ///< every word known, folded

  private:
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
    };
    std::vector<GoodId> goods_;
    std::map<std::string, int, std::less<>> byFolded_;
    std::unordered_map<std::string, int, Hash, std::equal_to<>> asked_; // never iterated
    std::size_t askedBytes_ = 0;
};

} // namespace piewright::sales
