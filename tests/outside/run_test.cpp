#include "outside/run.h"

#include "outside/topics.h"
#include "outside/written.h"

#include <gmock/gmock.h>
#include <sstream>

namespace piewright::outside {
namespace {

using testing::EndsWith;
using testing::HasSubstr;

struct Ran {
    int code = 0;
    std::string out;
    std::string err;
};

Ran ran(const std::vector<std::string>& arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const int code = run(arguments, out, err);
    return {code, out.str(), err.str()};
}

Ran ranOn(const std::string& lines) {
    const Written file(kColumns + lines);
    return ran({file.path().string()});
}

TEST(Run, CountsWhatPassesFailsAndIsNotCovered) {
    const Ran result =
        ranOn("A,relaxation,springback left after a rest,s0=0.2;tau_min=20;rest_min=15,0.0945,fraction,rel:0.001,,,,,\n"
              "B,relaxation,springback left after a rest,s0=0.2;tau_min=20;rest_min=15,0.2,fraction,rel:0.001,,,,,\n"
              "C,chess,openings,,e4,,exact,,,,,\n"
              "D,gelatine,a fact,,,,info,,,,,\n");
    EXPECT_EQ(result.code, 1);
    EXPECT_THAT(result.out, HasSubstr("A           expected 0.0945          computed 0.094473        pass\n"));
    EXPECT_THAT(result.out, HasSubstr("B           expected 0.2             computed 0.094473        fail\n"));
    EXPECT_THAT(result.out, HasSubstr("not covered: no handler for topic \"chess\"\n"));
    EXPECT_THAT(result.out, HasSubstr("1 for information, not judged\n"));
    EXPECT_THAT(result.out, EndsWith("passed 1, failed 1, not covered 1\n"));
}

TEST(Run, IsFineWhenNoneFailed) {
    const Ran result = ranOn("C,chess,openings,,e4,,exact,,,,,\n");
    EXPECT_EQ(result.code, 0);
    EXPECT_THAT(result.out, EndsWith("passed 0, failed 0, not covered 1\n"));
}

TEST(Run, JudgesNothingWhenAFileIsRefused) {
    const Written good(std::string(kColumns) + "C,chess,openings,,e4,,exact,,,,,\n");
    const Written bad(std::string(kColumns) + "C,chess,openings,,e4,,close,,,,,\n");
    const Ran result = ran({good.path().string(), bad.path().string()});
    EXPECT_EQ(result.code, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_THAT(result.err, HasSubstr("\"close\" is no tolerance"));
}

TEST(Run, AFileThatIsNotThereIsTheWorldsFault) { EXPECT_EQ(ran({"/no/such/file.csv"}).code, 3); }

TEST(Run, WantsFiles) {
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{}, {"--foods"}, {"--fast", "a.csv"}, {"--foods", "a.csv"}}) {
        const Ran result = ran(arguments);
        EXPECT_EQ(result.code, 2);
        EXPECT_THAT(result.err, HasSubstr("usage"));
    }
}

TEST(Run, TakesAnotherTableOfFoods) {
    const Written foods("source,code,water_g,protein_g,fat_g,carbohydrate_g,fibre_g,ash_g,refuse_pct\nX,1,,,,,,,40\n");
    const Written cases(std::string(kColumns) +
                        "A,preparation-loss,refuse,food=X:1,40,% of bought weight,abs:0.01,,,,,\n");
    const Ran result = ran({"--foods", foods.path().string(), cases.path().string()});
    EXPECT_EQ(result.code, 0) << result.out << result.err;
    EXPECT_THAT(result.out, EndsWith("passed 1, failed 0, not covered 0\n"));
}

// Cases that a handler must not answer, each a small step beside one that it does.
TEST(Handlers, LeaveWhatTheyDoNotKnow) {
    const Ran result = ranOn(
        "A1,relaxation,springback left after a rest,s0=0.2;tau_min=20,1,fraction,exact,,,,,\n"
        "A2,relaxation,springback left after a rest,s0=0.2;tau_min=20;rest_min=15;flour=1,1,fraction,exact,,,,,\n"
        "A3,relaxation,springback left after a rest,s0=0.2;tau_min=20;rest_min=15,1,%,exact,,,,,\n"
        "A4,relaxation,rest needed,s0=0.2;tau_min=20;rest_min=15,1,fraction,exact,,,,,\n"
        "A5,relaxation,springback left after a rest,s0=-1;tau_min=20;rest_min=15,1,fraction,exact,,,,,\n"
        "B1,lining,lid weight,mouth_d_m=-1;overhang_m=0.006;thickness_mm=3;density_g_ml=1.2,1,g,exact,,,,,\n"
        "B2,lining,lid weight,mouth_d_m=0.1;overhang_m=0.006;thickness_mm=3;density_g_ml=1.2,1,kg,exact,,,,,\n"
        "B3,lining,lid weight,mouth_d_m=0.1;overhang_m=0.006;thickness_mm=3,1,g,exact,,,,,\n"
        "C1,paste-temperature,water temperature for target paste "
        "temperature,n=5;target_C=20;others_C=18|22|8;friction_C=6,"
        "1,C,exact,,,,,\n"
        "C2,paste-temperature,water temperature for target paste "
        "temperature,n=4;target_C=20;others_C=18|x|8;friction_C=6,"
        "1,C,exact,,,,,\n"
        "C3,paste-temperature,ice in place of part of the water,water_kg=4.5;tap_C=12;needed_C=-100,1,kg,exact,,,,,\n"
        "D1,meat-yield,cooked weight by water balance: cod,raw=SR28:15015;cooked=SR28:15016,1,% of raw,exact,,,,,\n"
        "D2,meat-yield,cooked weight by protein balance: dodo,raw=SR28:0;cooked=SR28:1,1,% of raw,exact,,,,,\n"
        "E1,preparation-loss,\"refuse, dodo\",food=SR28:0,1,% of bought weight,exact,,,,,\n"
        "F1,mash,published mash recipe,boiled_potato_g=100;stirs=7,1,g,exact,,,,,\n"
        "F2,mash,published mash recipe,,1,g,exact,,,,,\n"
        "G1,formula,layers after n three-folds,folds=60;start_layers=3,1,layers,exact,,,,,\n"
        "G2,formula,layers after n three-folds,folds=2.5;start_layers=3,1,layers,exact,,,,,\n"
        "G3,formula,layers after n rolls,folds=2;start_layers=3,1,layers,exact,,,,,\n"
        "H1,density,void-free density at 15 C of a "
        "paste,fat_pct=50;water_pct=30;salt_pct=2;flour=X:1,1,kg/m3,exact,,,,,\n"
        "H2,density,void-free density at -15 C of a "
        "paste,fat_pct=50;water_pct=30;salt_pct=2;flour=FDC-FF:1104913,1,kg/m3,"
        "exact,,,,,\n"
        "I1,gelatine,Bloom test concentration,T_C=10;gelatine_g=9,1,% w/w,exact,,,,,\n");
    EXPECT_THAT(result.out, EndsWith("passed 0, failed 0, not covered 22\n")) << result.out << result.err;
    EXPECT_EQ(result.code, 0);
}

// The same shapes as the carried rows with other numbers, worked by hand: nothing is answered by its name.
TEST(Handlers, AnswerOtherNumbersOfTheSameShape) {
    const Ran result = ranOn(
        // 0.1 / e
        "A,relaxation,springback left after a rest,s0=0.1;tau_min=30;rest_min=30,0.03678794,fraction,rel:0.001,,,,,\n"
        // pi (40 + 5)^2 mm2 x 4 mm x 1.1 g/ml = 27.992 g
        "B,lining,lid weight,mouth_d_m=0.08;overhang_m=0.005;thickness_mm=4;density_g_ml=1.1,27.992,g,rel:0.001,,,,,\n"
        // pi (40^2 + 80 x 30 + 45^2 - 40^2) = pi x 4425 mm2 x 4 mm x 1.1 = 61.167 g
        "C,lining,paste weight to line a round straight "
        "tin,mouth_d_m=0.08;base_d_m=0.08;height_m=0.03;overhang_m=0.005;"
        "thickness_mm=4;density_g_ml=1.1,61.167,g,rel:0.001,,,,,\n"
        // 3 x 20 - 30 - 4
        "D,paste-temperature,water temperature for target paste "
        "temperature,n=3;target_C=20;others_C=14|16;friction_C=4,26,C,"
        "exact,,,,,\n"
        // 10 (20 - 4) / 100
        "E,paste-temperature,ice in place of part of the water,water_kg=10;tap_C=20;needed_C=4,1.6,kg,rel:0.001,,"
        "latent heat 80 kcal/kg,,,\n"
        // 2 x 4^3
        "F,formula,layers after n four-folds,folds=3;start_layers=2,128,layers,exact,,,,,\n"
        // 20 / 25
        "G,meat-yield,yield by fat balance: any,fat_raw=20;fat_cooked=25,80,% of raw,abs:0.001,,,,,\n"
        "H,mash,published mash recipe,potato_g=500;milk_g=60.5,560.5,g,exact,,,,,\n");
    EXPECT_THAT(result.out, EndsWith("passed 8, failed 0, not covered 0\n")) << result.out << result.err;
}

TEST(Handlers, HaveTopicsOfTheirOwn) {
    std::vector<std::string_view> names;
    for (const Topic& topic : topics()) names.push_back(topic.name);
    std::sort(names.begin(), names.end());
    EXPECT_EQ(std::adjacent_find(names.begin(), names.end()), names.end());
}

} // namespace
} // namespace piewright::outside
