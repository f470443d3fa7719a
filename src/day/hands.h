// Who is at work on a date, and which of them can do a step together, at which pace.
#pragma once

#include "book/book.h"
#include "schedule/problem.h"

#include <vector>

namespace piewright::day {

struct Present {
    const book::Hand* hand = nullptr;
    const book::Shift* shift = nullptr;
};

/// The hands of one date; a hand's place here is its worker's index. Skills are indexed in the book's order; after them
/// comes the skill that everyone has.
class Crew {
  public:
    Crew(const book::Book& book, Date date);

    [[nodiscard]] const std::vector<Present>& present() const { return present_; }
    [[nodiscard]] std::vector<schedule::SkillIndex> skillsOf(const book::Hand& hand) const;

    /// One way to man a step. Either people named outright or a need that anyone with the skill meets.
    struct Team {
        double pace = 1; ///< of all of them together: 2 for two hands at 100 %
        std::vector<schedule::WorkerIndex> workers;
        std::vector<schedule::SkillNeed> needs;
    };

    /// Every team of `hands` who have the skill, fastest first; one need when all are equally fast (or when naming the
    /// teams would take more than kMostTeams; then at the slowest pace). Empty when too few are present.
    [[nodiscard]] std::vector<Team> teamsFor(const SkillId& skill, int hands) const;

    static constexpr std::size_t kMostTeams = 40;

  private:
    const book::Book& book_;
    std::vector<Present> present_;
};

} // namespace piewright::day
