// What was written reads back equal, whatever the plan; and the text is stable.
#include "wire/plan_json.h"
#include "wire/random_plan.h"

#include <gtest/gtest.h>

#include <string>

namespace piewright {
namespace {

TEST(PlanRoundTrip, AnyPlanReadsBackEqualInEveryField) {
    for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
        const day::Plan plan = testing::randomPlan(seed);
        const auto back = wire::planFromJson(wire::toJson(plan), "plan.json");
        ASSERT_TRUE(back.ok()) << "seed " << seed << '\n' << toText(back.problems().findings);
        ASSERT_EQ(*back, plan) << "seed " << seed;
    }
}

TEST(PlanRoundTrip, WritingWhatWasReadGivesTheSameBytes) {
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        const std::string text = wire::toJson(testing::randomPlan(seed));
        EXPECT_EQ(wire::toJson(*wire::planFromJson(text, "plan.json")), text) << "seed " << seed;
    }
}

TEST(PlanRoundTrip, TwoPlansThatDifferAreWrittenDifferently) {
    EXPECT_NE(wire::toJson(testing::randomPlan(1)), wire::toJson(testing::randomPlan(2)));
}

TEST(PlanText, KeysAreSortedUnitsAreInTheNameAndInstantsAreInUtc) {
    day::Plan plan;
    plan.house = "Ropewalk Pie House";
    plan.zone = "Europe/London";
    plan.date = *parseDate("2026-07-01");
    day::PlannedShift shift;
    shift.hand = "Nell";
    // British summer time: the wall clock in Harrowmouth shows 05:30, UTC is 04:30.
    shift.from = Zone::named("Europe/London")->at(plan.date, *parseClockTime("05:30"));
    shift.to = shift.from + std::chrono::hours(8);
    shift.busy = Minutes(410);
    plan.shifts.push_back(shift);
    plan.needed.push_back({"Plain flour", grams(30'500), 2, "sack of 25 kg"});
    EXPECT_EQ(wire::toJson(plan), R"({
  "amounts": [],
  "assumptions": [],
  "before": [],
  "cards": [],
  "date": "2026-07-01",
  "house": "Ropewalk Pie House",
  "letter_paper": false,
  "loads": [],
  "needed": [
    {
      "pack": "sack of 25 kg",
      "packs": 2,
      "stuff": "Plain flour",
      "weight_mg": 30500000
    }
  ],
  "note": "",
  "open": [],
  "pieces": [],
  "place": "",
  "rule_book": "",
  "schema": 1,
  "shifts": [
    {
      "breaks": [],
      "busy_min": 410,
      "from": "2026-07-01T04:30:00Z",
      "hand": "Nell",
      "to": "2026-07-01T12:30:00Z"
    }
  ],
  "surplus": [],
  "tasks": [],
  "warnings": [],
  "zone": "Europe/London"
}
)");
}

TEST(PlanText, BytesThatAreNoUtf8ComeOutAsReplacementCharacters) {
    day::Plan plan;
    plan.zone = "UTC";
    plan.house = "pie\xFF";
    const auto back = wire::planFromJson(wire::toJson(plan), "plan.json");
    ASSERT_TRUE(back.ok());
    EXPECT_EQ(back->house, "pie\xEF\xBF\xBD");
}

} // namespace
} // namespace piewright
