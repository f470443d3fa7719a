#include "outside/case.h"

#include "outside/foods.h"
#include "outside/written.h"

#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

namespace piewright::outside {
namespace {

using testing::AllOf;
using testing::HasSubstr;

std::string refusal(const std::string& text) {
    const Written file(text);
    const auto cases = readCases(file.path());
    if (cases) return "taken";
    EXPECT_EQ(cases.problems().fault, Fault::Input);
    return toText(cases.problems().findings);
}

std::string withColumns(const std::string& lines) { return kColumns + lines; }

TEST(Cases, AreReadInOrderWhateverTheColumnsOrder) {
    const Written file("tolerance,source,unit,expected,inputs,quantity,topic,extra,case_id\n"
                       "abs:0.1,\"a book, p. 3\",g,5,a=1,weight,pies,x,C-1\n"
                       "info,,,,,fact,pies,,C-2\n");
    const auto cases = readCases(file.path());
    ASSERT_TRUE(cases.ok());
    ASSERT_EQ(cases->size(), 2U);
    EXPECT_EQ(cases->at(0).id, "C-1");
    EXPECT_EQ(cases->at(0).source, "a book, p. 3");
    EXPECT_EQ(cases->at(0).inputs.number("a"), 1.0);
    EXPECT_EQ(cases->at(1).tolerance.kind, Tolerance::Kind::Info);
}

TEST(Cases, NameTheMissingColumnAndTheNearestOne) {
    EXPECT_THAT(refusal("case_id,topic,quantity,input,expected,unit,tolerance,source\n"),
                AllOf(HasSubstr(":1: no column \"inputs\""), HasSubstr("did you mean \"input\"?")));
}

TEST(Cases, NameEveryFaultWithItsLine) {
    const std::string said = refusal(withColumns("C-1,t,q,a=1,5,g,abs:x,,,,,\n"
                                                 "C-1,t,q,a,5,g,abs:1,,,,,\n"
                                                 ",t,q,a=1,five,g,rel:1,,,,,\n"));
    EXPECT_THAT(said,
                AllOf(HasSubstr(":2: tolerance: \"abs:x\" is no tolerance"), HasSubstr(":3: inputs: \"a\" is not read"),
                      HasSubstr(":3: case_id: \"C-1\" stands in line 2 too"), HasSubstr(":4: case_id: is empty"),
                      HasSubstr(":4: expected: \"five\" can't be judged by \"rel:1\"")));
}

TEST(Cases, NameALineOfTheWrongWidth) {
    EXPECT_THAT(refusal(withColumns("C-1,t,q,a=1,5,g,exact\n")), HasSubstr(":2: 7 fields; want 12"));
}

TEST(Cases, RefuseTruncatedAndBinaryFiles) {
    EXPECT_THAT(refusal(""), HasSubstr("is empty"));
    EXPECT_THAT(refusal(withColumns("C-1,t,\"never closed,a=1")), HasSubstr(":2"));
    EXPECT_NE(refusal(std::string("\x7f"
                                  "ELF\0\0\1\2\3",
                                  9)),
              "taken");
    EXPECT_NE(refusal(withColumns(std::string("C-1\0,t", 6))), "taken");
}

TEST(Cases, RefuseATwiceNamedColumn) {
    EXPECT_THAT(refusal("case_id,case_id,topic,quantity,inputs,expected,unit,tolerance,source\n"),
                HasSubstr("two columns \"case_id\""));
}

TEST(Cases, StopAfterFiftyFaults) {
    std::string lines;
    for (int i = 0; i < 100'000; ++i) lines += "short\n";
    const std::string said = refusal(withColumns(lines));
    EXPECT_EQ(std::count(said.begin(), said.end(), '\n'), 50);
}

TEST(Cases, RefuseAnEnormousFile) {
    EXPECT_THAT(refusal(withColumns(std::string(17U << 20U, 'x'))), HasSubstr("larger than 16 MiB"));
}

TEST(Cases, OfAFileThatIsNotThereAreTheWorldsFault) {
    const auto cases = readCases("/no/such/file.csv");
    ASSERT_FALSE(cases.ok());
    EXPECT_EQ(cases.problems().fault, Fault::World);
    EXPECT_THAT(toText(cases.problems().findings), HasSubstr("/no/such/file.csv"));
}

TEST(Cases, OfAFolderAreTheWorldsFault) {
    const auto cases = readCases(testing::TempDir());
    ASSERT_FALSE(cases.ok());
    EXPECT_EQ(cases.problems().fault, Fault::World);
}

RC_GTEST_PROP(DrawnFiles, AreTakenOrRefusedAndNeverMore, ()) {
    const auto bytes = *rc::gen::container<std::string>(
        rc::gen::oneOf(rc::gen::element(',', '"', '\n', '\r', ';', '=', '|', ':'), rc::gen::arbitrary<char>()));
    const Written file(*rc::gen::arbitrary<bool>() ? bytes : kColumns + bytes);
    const auto cases = readCases(file.path());
    const bool explained = cases.ok() || !cases.problems().findings.empty();
    RC_ASSERT(explained);
}

constexpr const char* kFoodColumns = "source,code,water_g,protein_g,fat_g,carbohydrate_g,fibre_g,ash_g,refuse_pct\n";

TEST(Foods, ReadAmountsTracesAndGaps) {
    const Written file(std::string(kFoodColumns) +
                       "SR28,11352,79.25,2.05,0.09,17.49,2.1,1.11,25\nCoFID2015,1,Tr,,-0.25,0,0,0,\n");
    const auto foods = readFoods(file.path());
    ASSERT_TRUE(foods.ok());
    const Food* potato = foods->find("SR28:11352");
    ASSERT_NE(potato, nullptr);
    EXPECT_EQ(potato->refuse, 25.0);
    EXPECT_EQ(foods->find("CoFID2015:1")->water, 0.0);
    EXPECT_FALSE(foods->find("CoFID2015:1")->protein.has_value());
    EXPECT_EQ(foods->find("SR28:1"), nullptr);
}

TEST(Foods, RefuseWhatIsNoAmount) {
    const Written file(std::string(kFoodColumns) + "A,1,101,0,0,0,0,0,0\nA,1,x,0,0,0,0,0,0\n");
    const auto foods = readFoods(file.path());
    ASSERT_FALSE(foods.ok());
    EXPECT_THAT(
        toText(foods.problems().findings),
        AllOf(HasSubstr(":2: water_g: \"101\""), HasSubstr(":3: water_g: \"x\""), HasSubstr("stands here twice")));
}

} // namespace
} // namespace piewright::outside
