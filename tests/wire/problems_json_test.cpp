#include "wire/plan_json.h"

#include <gtest/gtest.h>

namespace piewright {
namespace {

TEST(ProblemsJson, TellsFaultExitCodeAndEveryFinding) {
    Problems problems{Fault::Input,
                      {{{"goods.toml", 12, 9, "good.beef-pie.price"}, "\"5\"", "a price", "add GBP", Severity::Error},
                       {{"", 0, 0, ""}, "\xFF", "", "", Severity::Warning}}};
    EXPECT_EQ(wire::toJson(problems), R"({
  "exit_code": 2,
  "fault": "input",
  "findings": [
    {
      "column": 9,
      "file": "goods.toml",
      "hint": "add GBP",
      "key": "good.beef-pie.price",
      "line": 12,
      "saw": "\"5\"",
      "severity": "error",
      "want": "a price"
    },
    {
      "column": 0,
      "file": "",
      "hint": "",
      "key": "",
      "line": 0,
      "saw": ")"
                                      "\xEF\xBF\xBD"
                                      R"(",
      "severity": "warning",
      "want": ""
    }
  ],
  "schema": 1
}
)");
}

TEST(ProblemsJson, EachFaultHasItsWordAndItsExitCode) {
    EXPECT_NE(wire::toJson(Problems::one(Fault::World, "no disk")).find("\"fault\": \"world\""), std::string::npos);
    EXPECT_NE(wire::toJson(Problems::one(Fault::World, "no disk")).find("\"exit_code\": 3"), std::string::npos);
    EXPECT_NE(wire::toJson(Problems::one(Fault::Ours, "bug")).find("\"fault\": \"ours\""), std::string::npos);
}

} // namespace
} // namespace piewright
