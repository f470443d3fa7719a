// What is no plan is refused with every reason, by path, in no time and without a crash.
#include "wire/plan_json.h"
#include "wire/random_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include <random>
#include <string>

namespace piewright {
namespace {

using ::testing::AllOf;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::SizeIs;

/// A plan with one of everything.
nlohmann::json whole() {
    day::Plan plan;
    plan.zone = "Europe/London";
    plan.date = *parseDate("2026-11-27");
    const Instant six = Instant(Seconds(1'795'759'200)); // 2026-11-27T06:00:00Z
    day::PlannedAmount amount;
    amount.price = Money(49'000, *Currency::of("GBP"));
    amount.waves.push_back({six, six + Minutes(90), 96});
    plan.amounts.push_back(amount);
    day::WeighCard card;
    card.lines.push_back({"Water", grams(9'900), celsius(21), ""});
    plan.cards.push_back(card);
    day::Task task;
    task.start = six, task.end = six + Minutes(20);
    task.cautions = {book::Caution::Knife};
    plan.tasks.assign(4, task);
    return nlohmann::json::parse(wire::toJson(plan));
}

/// The findings as lines, or `taken`.
std::vector<std::string> refusals(const std::string& text) {
    const auto plan = wire::planFromJson(text, "p.json");
    if (plan) return {"taken"};
    EXPECT_EQ(plan.problems().fault, Fault::Input);
    std::vector<std::string> lines;
    for (const Finding& finding : plan.problems().findings) lines.push_back(toText(finding));
    return lines;
}

std::string after(const std::string& pointer, const nlohmann::json& value) {
    nlohmann::json document = whole();
    document[nlohmann::json::json_pointer(pointer)] = value;
    return document.dump();
}

TEST(PlanRefused, ThePlanOfTheseTestsIsTakenAsItIs) { EXPECT_THAT(refusals(whole().dump()), ElementsAre("taken")); }

TEST(PlanRefused, AWrongValueIsNamedByItsPathWithWhatWasSeenAndWhatIsWanted) {
    EXPECT_THAT(refusals(after("/tasks/3/start", "half past four")),
                ElementsAre("p.json: tasks[3].start: \"half past four\"; want an ISO 8601 instant in UTC, such as "
                            "\"2026-11-27T04:30:00Z\""));
    EXPECT_THAT(refusals(after("/cards/0/lines/0/weight_mg", 12.5)),
                ElementsAre(HasSubstr("cards[0].lines[0].weight_mg: 12.5; want a weight in whole milligrams")));
    EXPECT_THAT(refusals(after("/amounts/0/price/currency", "pounds")),
                ElementsAre(HasSubstr("amounts[0].price.currency: \"pounds\"; want three capital letters")));
    EXPECT_THAT(refusals(after("/amounts/0/waves", 7)), ElementsAre("p.json: amounts[0].waves: 7; want a list"));
    EXPECT_THAT(refusals(after("/amounts/0/waves/0", "x")),
                ElementsAre("p.json: amounts[0].waves[0]: \"x\"; want an object"));
    EXPECT_THAT(refusals(after("/house", 1)), ElementsAre("p.json: house: 1; want a text"));
    EXPECT_THAT(refusals(after("/letter_paper", 1)), ElementsAre("p.json: letter_paper: 1; want true or false"));
    EXPECT_THAT(refusals(after("/amounts/0/fractile", nullptr)),
                ElementsAre("p.json: amounts[0].fractile: null; want a number"));
    EXPECT_THAT(refusals(after("/date", "2026-02-30")), ElementsAre(HasSubstr("date: \"2026-02-30\"; want a date")));
    EXPECT_THAT(refusals(after("/zone", "Europe/Harrowmouth")), ElementsAre(HasSubstr("want an IANA time zone")));
}

TEST(PlanRefused, NumbersOutsideTheirBoundsAreRefused) {
    EXPECT_THAT(refusals(after("/amounts/0/pieces", -1)),
                ElementsAre("p.json: amounts[0].pieces: -1; want a whole number from 0 to 1000000000"));
    EXPECT_THAT(refusals(after("/amounts/0/pieces", 18'446'744'073'709'551'615ULL)), SizeIs(1));
    EXPECT_THAT(refusals(after("/cards/0/in_mg", 1'000'000'000'000'001)), SizeIs(1));
    EXPECT_THAT(refusals(after("/cards/0/lines/0/at_mdegc", -273'151)), SizeIs(1)); // below absolute zero
}

TEST(PlanRefused, TheDaysOfTheCalendarAndTheHoursOfTheClockAreChecked) {
    for (const char* wrong :
         {"2026-11-31T06:00:00Z", "2026-11-27T24:00:00Z", "2026-11-27T06:60:00Z", "2026-11-27T06:00:60Z",
          "2026-11-27T06:00:00", "2026-11-27 06:00:00Z", "2026-11-27T06:00:00+01:00", "2026-11-27T+6:00:00Z", ""})
        EXPECT_THAT(refusals(after("/tasks/0/end", wrong)), ElementsAre(HasSubstr("tasks[0].end"))) << wrong;
}

TEST(PlanRefused, WhatEndsBeforeItStartsIsRefusedWithBothTimes) {
    EXPECT_THAT(refusals(after("/tasks/1/end", "2026-11-27T05:59:00Z")),
                ElementsAre("p.json: tasks[1].end: 2026-11-27T05:59:00Z is before start (2026-11-27T06:00:00Z); "
                            "want not before start"));
}

TEST(PlanRefused, AKeyMisspelledIsMissedAndFoundAgain) {
    nlohmann::json document = whole();
    document["tasks"][0]["amuont"] = document["tasks"][0]["amount"];
    document["tasks"][0].erase("amount");
    EXPECT_THAT(refusals(document.dump()),
                ElementsAre("p.json: tasks[0].amount: missing; want a text",
                            AllOf(HasSubstr("tasks[0]: the key \"amuont\" is not known here"),
                                  HasSubstr("did you mean \"amount\"?"))));
}

TEST(PlanRefused, AnUnknownCautionIsAnsweredWithTheKnownOnes) {
    EXPECT_THAT(refusals(after("/tasks/2/cautions/0", "knifes")),
                ElementsAre(AllOf(HasSubstr("tasks[2].cautions[0]: \"knifes\"; want one of burns steam"),
                                  HasSubstr("did you mean \"knife\"?"))));
}

TEST(PlanRefused, EveryMissingKeyIsToldAtOnce) {
    // The file has 19 keys besides `schema`, all needed.
    EXPECT_THAT(refusals(R"({"schema": 1})"), SizeIs(19));
}

TEST(PlanRefused, AnotherSchemaIsToldAlone) {
    EXPECT_THAT(refusals(R"({"schema": 2, "nonsense": true})"),
                ElementsAre("p.json: schema: 2; want 1 (it was written by a later piewright)"));
    EXPECT_THAT(refusals(R"({"schema": "1"})"), ElementsAre("p.json: schema: \"1\"; want 1"));
    EXPECT_THAT(refusals(R"({"schema": [1]})"), ElementsAre("p.json: schema: not a number; want 1"));
    EXPECT_THAT(refusals(R"({"schema": 1.0})"), SizeIs(1));
    EXPECT_THAT(refusals("{}"), ElementsAre(HasSubstr("schema: missing")));
    EXPECT_THAT(refusals("[]"), ElementsAre(HasSubstr("not an object")));
}

TEST(PlanRefused, WhatIsNoJsonIsToldByLineAndColumn) {
    EXPECT_THAT(refusals("{\n  \"schema\": 1,\n  oops\n}"),
                ElementsAre(HasSubstr("p.json:3:3: not JSON: syntax error")));
    EXPECT_THAT(refusals(""), ElementsAre(HasSubstr("p.json:1:1: not JSON")));
    EXPECT_THAT(refusals("{\"schema\": 1e999}"), ElementsAre(HasSubstr("not JSON")));
    EXPECT_THAT(refusals(std::string("\x00\xFF\x1B[2J", 6)),
                ElementsAre(AllOf(HasSubstr("not JSON"), ::testing::Not(HasSubstr("\xFF")),
                                  ::testing::Not(HasSubstr("\x1B")))));
}

TEST(PlanRefused, AKeyThatStandsTwiceIsRefused) {
    EXPECT_THAT(refusals(R"({"schema": 1, "tasks": [{}, {"what": "a", "what": "b"}]})"),
                ElementsAre("p.json: tasks[1].what: this key stands twice; want each key once"));
}

TEST(PlanRefused, DepthIsLimitedBeforeItCanHurt) {
    const std::string deep(200'000, '[');
    EXPECT_THAT(refusals(deep), ElementsAre(HasSubstr("nested deeper than 32 levels")));
    EXPECT_THAT(refusals(R"({"schema": 1, "tasks": )" + deep), ElementsAre(HasSubstr("nested deeper than 32 levels")));
}

TEST(PlanRefused, SizeAndNumberOfValuesAreLimited) {
    EXPECT_THAT(refusals(std::string((16U << 20U) + 1, ' ')),
                ElementsAre("p.json: 16777217 bytes; want at most 16777216 bytes"));
    std::string many = "[0";
    for (int i = 0; i < 1'000'000; ++i) many += ",0";
    EXPECT_THAT(refusals(many + "]"), ElementsAre(HasSubstr("more than 1000000 values")));
}

TEST(PlanRefused, AFloodOfFaultsIsCutAtAHundred) {
    nlohmann::json document = whole();
    for (int i = 0; i < 5000; ++i) document["tasks"].push_back(nlohmann::json::object());
    EXPECT_THAT(refusals(document.dump()), SizeIs(101)); // a hundred, and that there are more
}

TEST(PlanRefused, ALongValueIsShownByItsBeginning) {
    const auto lines = refusals(after("/date", std::string(1'000'000, 'x')));
    ASSERT_THAT(lines, SizeIs(1));
    EXPECT_LT(lines[0].size(), 200U);
}

TEST(PlanRefused, CutOffAnywhereItIsRefused) {
    const std::string text = whole().dump(); // compact: its last byte closes the object
    for (std::size_t length = 0; length < text.size(); ++length)
        EXPECT_NE(refusals(text.substr(0, length)), std::vector<std::string>{"taken"}) << length;
}

TEST(PlanRefused, BytesChangedAtRandomAreRefusedOrReadNeverWorse) {
    std::mt19937_64 engine(7);
    for (int round = 0; round < 3000; ++round) {
        std::string text = wire::toJson(testing::randomPlan(engine() % 50));
        for (int i = 0; i < 3; ++i) text[engine() % text.size()] = static_cast<char>(engine() & 0xFFU);
        const auto plan = wire::planFromJson(text, "p.json");
        if (plan)
            EXPECT_TRUE(wire::planFromJson(wire::toJson(*plan), "p.json").ok());
        else
            EXPECT_FALSE(plan.problems().findings.empty());
    }
}

} // namespace
} // namespace piewright
