// The sheets on paper, one function each; every one begins a page of its own.
#pragma once

#include "day/plan.h"
#include "print/flow.h"
#include "print/words.h"

#include <vector>

namespace piewright::print {

void paperDay(Flow& flow, const day::Plan& plan, const Times& times);
/// The day as a strip for each hand and each deck; part of the day sheet.
void paperStrip(Flow& flow, const day::Plan& plan, const Times& times);
/// The tasks by time, and again for each hand; part of the day sheet.
void paperTasks(Flow& flow, const day::Plan& plan, const Times& times);
void paperCards(Flow& flow, const day::Plan& plan, const Times& times);
/// Cards of small batches that share a page, three or more of one formula; and such a page.
[[nodiscard]] std::vector<std::vector<const day::WeighCard*>> alikeCards(const day::Plan& plan);
void paperCardGroup(Flow& flow, const day::Plan& plan, const std::vector<const day::WeighCard*>& cards,
                    const Times& times);
void paperOvens(Flow& flow, const day::Plan& plan, const Times& times);

/// The sentence of each caution once, and whose word counts more than this paper's.
void paperCautions(Flow& flow, const std::vector<book::Caution>& cautions);

} // namespace piewright::print
