// Rule books: those that come with the program, the house's own, and what the house makes of them. The values are those
// of the sources that each rule names; a word on how far each was read stands in its confidence.
#include "book/fields.h"
#include "book/rules_file.h"
#include "house_texts.h"
#include "toml/read.h"

#include <gtest/gtest.h>

namespace piewright::book {
namespace {

using std::chrono::hours;

RuleBook shipped(std::string_view name) {
    for (const ShippedRules& each : shippedRules()) {
        if (each.name != name) continue;
        Report report;
        const auto root = toml::read(std::string(each.text), "rules");
        Reading reading{report, "rules", {}};
        RuleBook rules = readRuleBook(reading, *root);
        EXPECT_EQ(toText(report.take()), "") << name;
        return rules;
    }
    ADD_FAILURE() << "no " << name;
    return {};
}

RuleValue value(const RuleBook& rules, const std::string& id) {
    const Rule* rule = rules.find(RuleId(id));
    EXPECT_NE(rule, nullptr) << id;
    return rule == nullptr ? RuleValue{} : rule->value;
}

Texts ownRules(const std::string& text) {
    Texts texts = with(cornerShop(), "house.toml", "rules = \"england\"", "rules = \"own\"");
    texts["rules.toml"] = text;
    return texts;
}

constexpr const char* kOwn = R"(
[rules]
name = "Harrowmouth"
place = "The harbour"

[rule.hot-hold-temperature]
what = "Hot food"
value = "60 degC"
bound = "least"
source = "invented for this test"
confidence = "confirmed"

[rule.cool-within]
what = "Cooling"
value = "2 h"
bound = "most"
source = "invented for this test"
confidence = "memory"
)";

TEST(ShippedRules, AllReadWithoutAFaultAndSayWhereTheyComeFrom) {
    ASSERT_EQ(shippedRules().size(), 6U);
    for (const ShippedRules& each : shippedRules()) {
        const RuleBook rules = shipped(each.name);
        EXPECT_FALSE(rules.rules.empty()) << each.name;
        for (const Rule& rule : rules.rules) {
            EXPECT_GT(rule.source.size(), 20U) << each.name << ' ' << rule.id.name();
            EXPECT_NE(rule.confidence, Confidence::Confirmed) << "only a house confirms";
            EXPECT_FALSE(rule.tightened);
        }
    }
}

// Food Hygiene (Wales) Regulations 2006, Sch. 4; Working Time Regulations 1998 (SI 1998/1833).
TEST(ShippedRules, EnglandStatesItsLimits) {
    const RuleBook england = shipped("england");
    EXPECT_EQ(england.name, "England");
    EXPECT_EQ(value(england, "hot-hold-temperature"), RuleValue(celsius(63)));
    EXPECT_EQ(value(england, "hot-hold-tolerance"), RuleValue(Seconds(hours(2))));
    EXPECT_EQ(england.find(RuleId("hot-hold-tolerance"))->confidence, Confidence::Memory);
    EXPECT_EQ(value(england, "chill-temperature"), RuleValue(celsius(8)));
    EXPECT_EQ(value(england, "break-after"), RuleValue(Seconds(hours(6))));
    EXPECT_EQ(value(england, "break-length"), RuleValue(Seconds(20 * 60)));
    EXPECT_EQ(value(england, "break-after-under-18"), RuleValue(Seconds(270 * 60)));
    EXPECT_EQ(value(england, "break-length-under-18"), RuleValue(Seconds(30 * 60)));
    EXPECT_EQ(value(england, "daily-rest"), RuleValue(Seconds(hours(11))));
    EXPECT_EQ(value(england, "daily-rest-under-18"), RuleValue(Seconds(hours(12))));
}

// Food Hygiene (Scotland) Regulations 2006, Sch. 4 paras 2 and 3.
TEST(ShippedRules, ScotlandReheatsHotterAndNamesNoChill) {
    const RuleBook scotland = shipped("scotland");
    EXPECT_EQ(value(scotland, "hot-hold-temperature"), RuleValue(celsius(63)));
    EXPECT_EQ(scotland.find(RuleId("hot-hold-temperature"))->confidence, Confidence::Seen);
    EXPECT_EQ(value(scotland, "reheat-temperature"), RuleValue(celsius(82)));
    EXPECT_EQ(scotland.find(RuleId("chill-temperature")), nullptr);
}

// FSAI Guidance Note 15; FDA Food Code 3-501.14 and 3-501.16; FSANZ Standard 3.2.2 clause 7(3); Canadian guidance.
TEST(ShippedRules, CoolingStagesAreThoseOfEachPlace) {
    EXPECT_EQ(value(shipped("ireland"), "cool-within"), RuleValue(Seconds(150 * 60)));
    const RuleBook states = shipped("united-states");
    EXPECT_EQ(value(states, "cool-from"), RuleValue(celsius(57)));
    EXPECT_EQ(value(states, "cool-midway"), RuleValue(celsius(21)));
    EXPECT_EQ(value(states, "cool-first-within"), RuleValue(Seconds(hours(2))));
    EXPECT_EQ(value(states, "cool-within"), RuleValue(Seconds(hours(6))));
    const RuleBook australia = shipped("australia");
    EXPECT_EQ(value(australia, "hot-hold-temperature"), RuleValue(celsius(60)));
    EXPECT_EQ(value(australia, "cool-second-within"), RuleValue(Seconds(hours(4))));
    EXPECT_EQ(value(shipped("canada"), "cool-midway"), RuleValue(celsius(20)));
}

TEST(HouseRules, StricterIsTaken) {
    const Book book = bookOf(withMore(
        cornerShop(), "house.toml", "[tighten]\nhot-hold-temperature = \"65 degC\"\nchill-temperature = \"5 degC\"\n"));
    EXPECT_EQ(value(book.rules, "hot-hold-temperature"), RuleValue(celsius(65)));
    EXPECT_TRUE(book.rules.find(RuleId("chill-temperature"))->tightened);
    EXPECT_EQ(book.rules.find(RuleId("chill-temperature"))->before, RuleValue(celsius(8)));
}

TEST(HouseRules, TheSameIsNoTightening) {
    const Book book = bookOf(withMore(cornerShop(), "house.toml", "[tighten]\nchill-temperature = \"8 degC\"\n"));
    EXPECT_FALSE(book.rules.find(RuleId("chill-temperature"))->tightened);
}

TEST(HouseRules, LooserIsRefusedWithTheRuleAndItsSource) {
    EXPECT_EQ(
        errors(withMore(cornerShop(), "house.toml",
                        "[tighten]\nreheat-temperature = \"69.9 degC\"\nreheat-time = \"119 s\"\n"
                        "cool-within = \"91 min\"\n")),
        "house.toml:19:22: tighten.reheat-temperature: \"69.9 degC\" is looser than the rule book allows; want at "
        "least 70 degC: Food Standards Agency: 70 degC for two minutes or equivalent\n"
        "house.toml:20:15: tighten.reheat-time: \"119 s\" is looser than the rule book allows; want at least 2 min: "
        "Food Standards Agency: 70 degC for two minutes or equivalent\n"
        "house.toml:21:15: tighten.cool-within: \"91 min\" is looser than the rule book allows; want at most 1 h 30 "
        "min: UK trade practice, as for cool-from; some advice says 1 to 2 hours\n");
}

TEST(HouseRules, TheHouseMaySetALimitWhereTheRuleBookHasNone) {
    const Book book = bookOf(withMore(cornerShop(), "house.toml", "[tighten]\ncook-temperature = \"75 degC\"\n"));
    const Rule* cook = book.rules.find(RuleId("cook-temperature"));
    ASSERT_NE(cook, nullptr);
    EXPECT_TRUE(cook->tightened);
    EXPECT_EQ(cook->before, std::nullopt);
    EXPECT_EQ(cook->source, "the house's own limit");
}

TEST(HouseRules, UnknownRulesAndWrongKindsAreTold) {
    EXPECT_NE(errors(withMore(cornerShop(), "house.toml", "[tighten]\nhot-hold-temprature = \"65 degC\"\n"))
                  .find("(did you mean \"hot-hold-temperature\"?)"),
              std::string::npos);
    EXPECT_NE(errors(withMore(cornerShop(), "house.toml", "[tighten]\nhot-hold-temperature = \"2 h\"\n"))
                  .find("\"2 h\" is not a temperature"),
              std::string::npos);
    EXPECT_NE(errors(withMore(cornerShop(), "house.toml", "[confirm]\ncook-time = \"asked\"\n"))
                  .find("\"cook-time\" is no rule of the rule book in force"),
              std::string::npos);
}

TEST(HouseRules, WhatTheHouseConfirmsIsNoLongerWarnedOf) {
    const Texts texts = withMore(cornerShop(), "house.toml",
                                 "[confirm]\nhot-hold-tolerance = \"asked the district council, 3 March 2026\"\n");
    EXPECT_EQ(findings(texts).find("hot-hold-tolerance"), std::string::npos);
    const Book book = bookOf(texts);
    const Rule* rule = book.rules.find(RuleId("hot-hold-tolerance"));
    EXPECT_EQ(rule->confidence, Confidence::Confirmed);
    EXPECT_EQ(rule->confirmed, "asked the district council, 3 March 2026");
}

TEST(OwnRules, ReadLikeThoseThatComeWithTheProgram) {
    const Book book = bookOf(ownRules(kOwn));
    EXPECT_EQ(book.rules.name, "Harrowmouth");
    EXPECT_EQ(value(book.rules, "hot-hold-temperature"), RuleValue(celsius(60)));
    EXPECT_NE(findings(ownRules(kOwn)).find("the rule cool-within of Harrowmouth is not verified"), std::string::npos);
}

TEST(OwnRules, MustBeThereWhenNamed) {
    const Texts texts = with(cornerShop(), "house.toml", "rules = \"england\"", "rules = \"own\"");
    EXPECT_EQ(errors(texts),
              "house.toml:8:9: house.rules: \"own\", and there is no rules.toml; want the house's rule book "
              "in rules.toml, or the name of one that comes with the program\n");
}

TEST(OwnRules, AreNotInForceUnlessNamed) {
    Texts texts = cornerShop();
    texts["rules.toml"] = kOwn;
    EXPECT_NE(findings(texts).find("rules.toml: warning: not in force"), std::string::npos);
    EXPECT_EQ(bookOf(texts).rules.name, "England");
}

TEST(OwnRules, AreCheckedLikeEverythingElse) {
    EXPECT_EQ(errors(ownRules("[rules]\nname = \"X\"\n[rule.hot-hold]\nwhat = \"x\"\n"
                              "[rule.break-after]\nwhat = \"x\"\nvalue = \"63 degC\"\nbound = \"least\"\n"
                              "confidence = \"sure\"\n"))
                  .substr(0, 127),
              "rules.toml:1:1: rules.place: is missing; want text in quotation marks, at most 500 bytes long\n"
              "rules.toml:3:1: rule.hot-hold: \"h");
    const std::string told = errors(ownRules("[rules]\nname = \"X\"\nplace = \"Y\"\n[rule.break-after]\nwhat = \"x\"\n"
                                             "value = \"63 degC\"\nbound = \"least\"\nconfidence = \"sure\"\n"));
    EXPECT_NE(told.find("rules.toml:6:9: rule.break-after.value: \"63 degC\" is not a duration"), std::string::npos);
    EXPECT_NE(told.find("rules.toml:7:9: rule.break-after.bound: the value is a most for this rule"),
              std::string::npos);
    EXPECT_NE(told.find("rule.break-after.source: is missing"), std::string::npos);
    EXPECT_NE(told.find("rules.toml:8:14: rule.break-after.confidence: \"sure\" is not a confidence"),
              std::string::npos);
}

TEST(KnownRules, StricterIsHigherForALeastAndLowerForAMost) {
    EXPECT_TRUE(stricter(Bound::Least, celsius(65), celsius(63)));
    EXPECT_FALSE(stricter(Bound::Least, celsius(63), celsius(63)));
    EXPECT_TRUE(stricter(Bound::Most, celsius(5), celsius(8)));
    EXPECT_FALSE(stricter(Bound::Most, Seconds(7'201), Seconds(7'200)));
}

} // namespace
} // namespace piewright::book
