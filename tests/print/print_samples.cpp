// Writes sample sheets to look at: print_samples friday|one|empty|crowded FILE.pdf
//                                  print_samples friday|one|empty|crowded text [WIDTH]
#include "print/sample_plan.h"
#include "print/sheet.h"

#include <cstdlib>
#include <iostream>
#include <string>

using namespace piewright;

namespace {

day::Plan named(const std::string& name) {
    if (name == "one") return testing::oneHandPlan();
    if (name == "empty") return testing::emptyPlan();
    if (name == "crowded") return testing::crowdedPlan();
    return testing::fridayPlan();
}

int failed(const Problems& problems) {
    std::cerr << toText(problems.findings);
    return static_cast<int>(problems.fault);
}

} // namespace

int main(int count, char** arguments) {
    if (count < 3) return static_cast<int>(Fault::Input);
    const day::Plan plan = named(arguments[1]);
    if (std::string(arguments[2]) == "text") {
        std::cout << print::asText(plan, {},
                                   count > 3 ? static_cast<int>(std::strtol(arguments[3], nullptr, 10)) : 100);
        return 0;
    }
    const auto pdf = print::asPdf(plan);
    if (!pdf) return failed(pdf.problems());
    const auto written = print::writeWhole(arguments[2], *pdf);
    return written ? 0 : failed(written.problems());
}
