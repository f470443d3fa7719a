// Every field of a plan, told once: writing and reading both walk this list, so the two forms cannot drift apart.
// A visitor's method says the kind of value and puts the unit into the key: mass("in", …) is the key `in_mg`.
// Keys are stored in people's files: never rename one without raising kPlanSchema.
#pragma once

#include "day/plan.h"

#include <string>
#include <type_traits>
#include <utility>

namespace piewright::wire {

constexpr int kPlanSchema = 1; ///< the `schema` of the files written now

/// What a visitor is given: a writer looks, a reader fills.
template <class Visitor, class T> using Of = std::conditional_t<Visitor::kFills, T, const T>;

template <class Visitor> void fields(Visitor& v, Of<Visitor, std::pair<Instant, Instant>>& span) {
    v.instant("from", span.first);
    v.instant("to", span.second);
    v.inOrder("from", span.first, "to", span.second);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, std::pair<std::string, Mass>>& lost) {
    v.text("at", lost.first);
    v.mass("weight", lost.second);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::PlannedWave>& wave) {
    v.instant("ready", wave.ready);
    v.instant("until", wave.until);
    v.inOrder("ready", wave.ready, "until", wave.until);
    v.count("pieces", wave.pieces);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::PlannedAmount>& amount) {
    v.text("good", amount.good);
    v.text("name", amount.name);
    v.text("unit", amount.unit);
    v.count("likely_low", amount.low);
    v.count("likely_middle", amount.middle);
    v.count("likely_high", amount.high);
    v.count("pieces", amount.pieces);
    v.count("set_aside", amount.setAside);
    v.real("fractile", amount.fractile);
    v.money("price", amount.price);
    v.money("cost", amount.cost);
    v.money("leftover", amount.leftover);
    v.real("expected_missed", amount.expectedMissed);
    v.real("expected_left", amount.expectedLeft);
    v.list("waves", amount.waves);
    v.texts("because", amount.because);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::PiecesLine>& line) {
    v.text("good", line.good);
    v.text("part", line.part);
    v.count("pieces", line.pieces);
    v.mass("each", line.each);
    v.mass("on_pie", line.onPie);
    v.count("heads", line.heads);
    v.count("pieces_per_head", line.perHead);
    v.mass("head", line.head);
    v.length("gauge", line.gauge);
    v.length("finished", line.finished);
    v.length("blank_length", line.blankLength);
    v.length("blank_width", line.blankWidth);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::CardLine>& line) {
    v.text("what", line.what);
    v.mass("weight", line.weight);
    v.temperature("at", line.at);
    v.text("note", line.note);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::WeighCard>& card) {
    v.text("id", card.id);
    v.text("formula", card.formula);
    v.count("number", card.number);
    v.count("of", card.of);
    v.truth("for_tomorrow", card.forTomorrow);
    v.text("for_when", card.forWhen);
    v.text("vessel", card.vessel);
    v.list("lines", card.lines);
    v.mass("in", card.in);
    v.mass("out", card.out);
    v.list("lost", card.lost);
    v.mass("scale_step", card.scaleStep);
    v.mass("rounding_error", card.roundingError);
    v.temperature("target", card.target);
    v.texts("yields", card.yields);
    v.texts("method", card.method);
    v.texts("allergens", card.allergens);
    v.cautions("cautions", card.cautions);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::Task>& task) {
    v.count("number", task.number);
    v.text("what", task.what);
    v.text("of", task.of);
    v.text("amount", task.amount);
    v.instant("start", task.start);
    v.instant("end", task.end);
    v.inOrder("start", task.start, "end", task.end);
    v.texts("hands", task.hands);
    v.texts("gear", task.gear);
    v.text("card", task.card);
    v.truth("is_break", task.isBreak);
    v.cautions("cautions", task.cautions);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::LoadContent>& content) {
    v.text("good", content.good);
    v.count("pieces", content.pieces);
    v.count("trays", content.trays);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::DeckLoad>& load) {
    v.text("oven", load.oven);
    v.count("deck", load.deck);
    v.instant("in", load.in);
    v.instant("out", load.out);
    v.inOrder("in", load.in, "out", load.out);
    v.temperature("at", load.at);
    v.list("contents", load.contents);
    v.count("trays", load.trays);
    v.count("room_trays", load.room);
    v.instant("light_by", load.lightBy);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::PlannedShift>& shift) {
    v.text("hand", shift.hand);
    v.instant("from", shift.from);
    v.instant("to", shift.to);
    v.inOrder("from", shift.from, "to", shift.to);
    v.list("breaks", shift.breaks);
    v.minutes("busy", shift.busy);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::FromBefore>& before) {
    v.text("what", before.what);
    v.mass("weight", before.mass);
    v.text("made", before.made);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::Needed>& needed) {
    v.text("stuff", needed.stuff);
    v.mass("weight", needed.mass);
    v.count("packs", needed.packs);
    v.text("pack", needed.pack);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::PlannedSurplus>& surplus) {
    v.text("what", surplus.what);
    v.count("pieces", surplus.pieces);
    v.mass("weight", surplus.mass);
    v.text("where", surplus.where);
}

template <class Visitor> void fields(Visitor& v, Of<Visitor, day::Plan>& plan) {
    v.schema(kPlanSchema);
    v.text("house", plan.house);
    v.text("place", plan.place);
    v.zone("zone", plan.zone);
    v.date("date", plan.date);
    v.text("note", plan.note);
    v.list("open", plan.open);
    v.text("rule_book", plan.ruleBook);
    v.truth("letter_paper", plan.letterPaper);
    v.list("amounts", plan.amounts);
    v.list("pieces", plan.pieces);
    v.list("cards", plan.cards);
    v.list("tasks", plan.tasks);
    v.list("loads", plan.loads);
    v.list("shifts", plan.shifts);
    v.list("before", plan.before);
    v.list("needed", plan.needed);
    v.list("surplus", plan.surplus);
    v.texts("assumptions", plan.assumptions);
    v.texts("warnings", plan.warnings);
}

} // namespace piewright::wire
