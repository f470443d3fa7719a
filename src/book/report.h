// Gathers the findings while the book is read and checked.
#pragma once

#include "finding/result.h"

#include <cstddef>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::book {

/// All that is wrong, up to a number that a person could still read; what goes past it is counted and said.
class Report {
  public:
    void error(Place place, std::string saw, std::string want = {}, std::string hint = {});
    void take(const Problems& problems); ///< all of them, as errors
    void warning(Place place, std::string saw, std::string want = {}, std::string hint = {});

    /// `did you mean …?` or nothing. Looks only as long as a person could still read the findings and the names
    /// compared so far stay few enough to answer at once.
    template <class Names> [[nodiscard]] std::string suggestFrom(std::string_view seen, Names names) {
        return suggesting() ? suggest(seen, names()) : std::string{};
    }
    [[nodiscard]] std::string suggest(std::string_view seen, std::span<const std::string> known);
    [[nodiscard]] std::size_t errors() const { return errors_; }

    /// Marks what stands under a dotted path as unfit for the checks that build on it.
    void flaw(std::string path) { flawed_.insert(std::move(path)); }
    [[nodiscard]] bool sound(const std::string& path) const { return !flawed_.contains(path); }

    /// In file, line and column order; ends with a line on what was left out.
    [[nodiscard]] std::vector<Finding> take();

  private:
    void add(Finding finding);
    [[nodiscard]] bool full() const;
    [[nodiscard]] bool suggesting() const;

    std::vector<Finding> findings_;
    std::size_t errors_ = 0;
    std::size_t leftOut_ = 0;
    std::size_t compared_ = 0;
    std::set<std::string> flawed_;
};

} // namespace piewright::book
