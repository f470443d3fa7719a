// A file that a test writes and that is gone after it.
#pragma once

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <string>

namespace piewright::outside {

class Written {
  public:
    explicit Written(const std::string& text) {
        static int number = 0;
        const auto* const test = testing::UnitTest::GetInstance()->current_test_info();
        const std::string name =
            std::string(test->test_suite_name()) + "." + test->name() + "-" + std::to_string(++number) + ".csv";
        path_ = std::filesystem::path(testing::TempDir()) / ("piewright-outside-" + name);
        std::ofstream(path_, std::ios::binary) << text;
    }
    ~Written() {
        std::error_code ignored;
        std::filesystem::remove(path_, ignored);
    }
    Written(const Written&) = delete;
    Written& operator=(const Written&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

  private:
    std::filesystem::path path_;
};

inline constexpr const char* kColumns =
    "case_id,topic,quantity,inputs,expected,unit,tolerance,kind,source,address,confidence,notes\n";

} // namespace piewright::outside
