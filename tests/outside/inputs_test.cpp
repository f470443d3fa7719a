#include "outside/inputs.h"

#include <gmock/gmock.h>

namespace piewright::outside {
namespace {

using testing::ElementsAre;
using testing::Optional;

TEST(NumberIn, TakesPlainNumbersOnly) {
    EXPECT_EQ(numberIn("26"), 26.0);
    EXPECT_EQ(numberIn("-0.5"), -0.5);
    EXPECT_EQ(numberIn("1e-3"), 0.001);
    for (const char* wrong :
         {"", " 1", "1 ", "1,5", "+1", "0x10", "nan", "inf", "-inf", "1e400", "1e13", "12 kg", "1..2"})
        EXPECT_FALSE(numberIn(wrong).has_value()) << wrong;
}

TEST(NumbersIn, AreParted) {
    EXPECT_THAT(numbersIn("18|22|8"), Optional(ElementsAre(18, 22, 8)));
    EXPECT_THAT(numbersIn("18"), Optional(ElementsAre(18)));
    for (const char* wrong : {"", "|", "18|", "|18", "18||22", "18;22"})
        EXPECT_FALSE(numbersIn(wrong).has_value()) << wrong;
}

TEST(Inputs, ReadKeysAndValues) {
    const auto inputs = Inputs::parse("n=4;others_C=18|22;raw=SR28:1;text=a=b");
    ASSERT_TRUE(inputs.has_value());
    EXPECT_EQ(inputs->number("n"), 4.0);
    EXPECT_EQ(inputs->text("raw"), "SR28:1");
    EXPECT_EQ(inputs->text("text"), "a=b");
    EXPECT_FALSE(inputs->number("raw").has_value());
    EXPECT_FALSE(inputs->number("none").has_value());
    EXPECT_TRUE(inputs->only({"n", "others_C", "raw", "text", "spare"}));
    EXPECT_FALSE(inputs->only({"n", "others_C", "raw"}));
}

TEST(Inputs, MayBeNone) { EXPECT_TRUE(Inputs::parse("").has_value()); }

TEST(Inputs, RefuseWhatIsNoKeyAndValue) {
    for (const char* wrong : {"n", "=4", "n=4;;m=5", "n=4;n=5", "n=4; ", ";"})
        EXPECT_FALSE(Inputs::parse(wrong).has_value()) << wrong;
}

TEST(Inputs, GiveTheNumbersOfExactlyTheKeysAsked) {
    const auto inputs = Inputs::parse("b=2;a=1");
    EXPECT_THAT(inputs->exactly({"a", "b"}), Optional(ElementsAre(1, 2)));
    EXPECT_FALSE(inputs->exactly({"a"}).has_value());
    EXPECT_FALSE(inputs->exactly({"a", "b", "c"}).has_value());
    EXPECT_FALSE(inputs->exactly({"a", "c"}).has_value());
    EXPECT_FALSE(Inputs::parse("a=1;b=x")->exactly({"a", "b"}).has_value());
}

} // namespace
} // namespace piewright::outside
