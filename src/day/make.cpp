#include "day/make.h"

#include "day/tell.h"
#include "schedule/check.h"
#include "schedule/solve.h"

#include <algorithm>
#include <cassert>

namespace piewright::day {

namespace {

Problems shut(const book::Book& book, Date date) {
    const auto next = nextOpen(book.house, date);
    const std::string note = noteOn(book.house, date);
    return Problems::one(Fault::Input,
                         book.house.name + " is shut on " + longDate(date) + " " + toText(date) +
                             (note.empty() ? "" : " (" + note + ")"),
                         next ? "an open day; the next is " + longDate(*next) + " " + toText(*next) : "an open day");
}

/// Cold goods that are made today for the days after, when their perishable comes in today.
std::vector<Chosen> amountsAhead(const book::Book& book, const demand::Forecaster& forecaster, Date date) {
    std::vector<Chosen> over;
    for (const auto& [id, good] : book.goods) {
        if (good.tin) continue;
        const book::Formula& formula = book.formulas.at(good.deposits.front().formula);
        if (formula.made != book::Made::Delivery || !comesInOn(book, formula, date)) continue;
        const auto dates = datesServed(book, formula, good, date);
        if (!dates.empty()) over.push_back(amountOver(book, forecaster, good, dates));
    }
    return over;
}

Problems clashed(const schedule::Answer& answer) {
    Problems problems;
    const bool proved = answer.status == schedule::Status::Infeasible;
    Finding head;
    head.saw = proved ? "no feasible day: these limits cannot all be kept"
                      : "no feasible day was found; these limits stand in the way most";
    head.want = "more time, more hands or gear, or fewer pieces";
    problems.findings.push_back(head);
    for (const std::string& limit : answer.clash.limits) {
        Finding finding;
        finding.saw = limit;
        problems.findings.push_back(finding);
    }
    return problems;
}

} // namespace

Result<Plan> makePlan(const book::Book& book, const demand::Forecaster& forecaster, const Request& request) {
    const auto open = hoursOn(book.house, request.date);
    if (open.empty()) return shut(book, request.date);
    const auto firstIn = firstHandIn(book, request.date);
    if (!firstIn)
        return Problems::one(Fault::Input, "nobody is at work on " + longDate(request.date),
                             "a shift on that weekday in hands.toml");

    const auto amounts = amountsOn(book, forecaster, request.date);
    const auto over = amountsAhead(book, forecaster, request.date);
    Work work;
    work.lots = lotsFor(book, amounts, open);
    auto today = batchesFor(book, work.lots, request.date);
    if (!today) return today.problems();
    work.today = std::move(*today);
    if (const auto next = nextOpen(book.house, request.date)) {
        const auto nextLots = lotsFor(book, amountsOn(book, forecaster, *next), hoursOn(book.house, *next));
        auto ahead = batchesAhead(book, nextLots, *next, over, request.date);
        if (!ahead) return ahead.problems();
        work.ahead = std::move(*ahead);
    }

    const Clock clock(book.house.zone, request.date, *firstIn);
    const auto problem = problemOf(book, work, clock, open);
    if (!problem) return problem.problems();
    if (const auto faults = schedule::faultsIn(problem->problem); !faults.empty()) {
        Problems problems{Fault::Ours, {}};
        for (const std::string& fault : faults) problems.findings.push_back({{}, fault, {}, {}, Severity::Error});
        return problems;
    }
    const auto answer = schedule::solve(problem->problem, {request.seed, request.work});
    if (!answer.schedule) return clashed(answer);
    if (const auto violations = schedule::check(problem->problem, *answer.schedule); !violations.empty()) {
        Problems problems{Fault::Ours, {}};
        for (const auto& violation : violations)
            problems.findings.push_back(
                {{}, "the schedule breaks a limit: " + violation.what, {}, {}, Severity::Error});
        return problems;
    }
    return tell({book, clock, amounts, over, work, *problem, *answer.schedule});
}

} // namespace piewright::day
