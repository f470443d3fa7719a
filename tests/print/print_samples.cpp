#include "print/sample_plan.h"
#include "print/sheet.h"
#include <iostream>
#include <string>
int main(int argc, char** argv) {
    using namespace piewright;
    const std::string which = argc > 1 ? argv[1] : "friday";
    const day::Plan plan = which == "crowded" ? testing::crowdedPlan()
                           : which == "one"   ? testing::oneHandPlan()
                           : which == "empty" ? testing::emptyPlan()
                                              : testing::fridayPlan();
    if (argc > 2 && std::string(argv[2]) == "text") {
        std::cout << print::asText(plan, {}, argc > 3 ? std::stoi(argv[3]) : 100);
        return 0;
    }
    auto pdf = print::asPdf(plan);
    if (!pdf) {
        std::cerr << toText(pdf.problems().findings);
        return 1;
    }
    auto w = print::writeWhole(argv[2], *pdf);
    if (!w) {
        std::cerr << toText(w.problems().findings);
        return 1;
    }
}
