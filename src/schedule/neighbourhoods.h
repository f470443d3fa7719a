// Adaptive large-neighbourhood search: lets a part of the best schedule go, keeps the rest as a partial order, and asks
// the learning kernel for something better within a few hundred dead ends (Shaw 1998, CP; Laborie, Godard 2007, MISTA;
// Godard, Laborie, Nuijten 2005, ICAPS).
#pragma once

#include "schedule/member.h"

#include <cstdint>
#include <memory>

namespace piewright::schedule {

class Neighbourhoods final : public Member {
  public:
    /// `problem` must have no faultsIn and must outlive it.
    Neighbourhoods(const Problem& problem, std::uint64_t seed);
    ~Neighbourhoods() override;
    Neighbourhoods(const Neighbourhoods&) = delete;
    Neighbourhoods& operator=(const Neighbourhoods&) = delete;
    Neighbourhoods(Neighbourhoods&&) = delete;
    Neighbourhoods& operator=(Neighbourhoods&&) = delete;

    std::uint64_t run(const Turn& turn, Standing& standing) override;

  private:
    struct State;
    std::unique_ptr<State> state_;
};

} // namespace piewright::schedule
