// A file is there whole or not at all.
#include "print/sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <csignal>
#include <fstream>
#include <sstream>
#include <sys/resource.h>
#include <unistd.h>

namespace piewright {
namespace {

using ::testing::HasSubstr;
namespace fs = std::filesystem;

class WriteWhole : public ::testing::Test {
  protected:
    void SetUp() override {
        folder = fs::path(::testing::TempDir()) / ("write-whole-" + std::to_string(getpid()));
        fs::remove_all(folder);
        fs::create_directories(folder);
    }
    void TearDown() override { fs::remove_all(folder); }

    [[nodiscard]] static std::string contents(const fs::path& file) {
        std::ifstream stream(file, std::ios::binary);
        std::ostringstream text;
        text << stream.rdbuf();
        return text.str();
    }
    [[nodiscard]] std::size_t files() const {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
    }
    static void refused(const fs::path& file) {
        const auto written = print::writeWhole(file, "new");
        ASSERT_FALSE(written.ok());
        EXPECT_EQ(written.problems().fault, Fault::World);
        EXPECT_THAT(toText(written.problems().findings), HasSubstr(file.string()));
    }

    fs::path folder;
};

TEST_F(WriteWhole, MakesAFileWithTheBytesAndNothingBeside) {
    const std::string bytes("%PDF\0\xFF", 6);
    const auto written = print::writeWhole(folder / "day.pdf", bytes);
    ASSERT_TRUE(written.ok());
    EXPECT_EQ(*written, folder / "day.pdf");
    EXPECT_EQ(contents(folder / "day.pdf"), bytes);
    EXPECT_EQ(files(), 1U);
}

TEST_F(WriteWhole, TakesThePlaceOfAFileAndItsPermissions) {
    std::ofstream(folder / "day.pdf") << "a much longer text than the new one";
    fs::permissions(folder / "day.pdf", fs::perms::owner_read | fs::perms::owner_write | fs::perms::group_read);
    ASSERT_TRUE(print::writeWhole(folder / "day.pdf", "new").ok());
    EXPECT_EQ(contents(folder / "day.pdf"), "new");
    EXPECT_EQ(fs::status(folder / "day.pdf").permissions(),
              fs::perms::owner_read | fs::perms::owner_write | fs::perms::group_read);
    EXPECT_EQ(files(), 1U);
}

TEST_F(WriteWhole, PassesByWhatACrashLeftLying) {
    std::ofstream(folder / "day.pdf.part1") << "half";
    ASSERT_TRUE(print::writeWhole(folder / "day.pdf", "new").ok());
    EXPECT_EQ(contents(folder / "day.pdf"), "new");
    EXPECT_EQ(contents(folder / "day.pdf.part1"), "half");
}

TEST_F(WriteWhole, FollowsALinkToItsFile) {
    std::ofstream(folder / "real.pdf") << "old";
    fs::create_symlink("real.pdf", folder / "link.pdf");
    ASSERT_TRUE(print::writeWhole(folder / "link.pdf", "new").ok());
    EXPECT_TRUE(fs::is_symlink(folder / "link.pdf"));
    EXPECT_EQ(contents(folder / "real.pdf"), "new");
}

TEST_F(WriteWhole, IntoAFolderThatIsMissingIsRefused) { refused(folder / "no such folder" / "day.pdf"); }

TEST_F(WriteWhole, BelowAFileIsRefused) {
    std::ofstream(folder / "file") << "x";
    refused(folder / "file" / "day.pdf");
}

TEST_F(WriteWhole, OverAFolderOrADeviceIsRefused) {
    refused(folder);
    refused("/dev/null");
    EXPECT_FALSE(fs::is_regular_file("/dev/null"));
}

TEST_F(WriteWhole, WhereNobodyMayWriteIsRefused) {
    refused("/proc/day.pdf"); // not even root makes files there
    if (geteuid() == 0) GTEST_SKIP() << "root may write into a read-only folder";
    fs::permissions(folder, fs::perms::owner_read | fs::perms::owner_exec);
    refused(folder / "day.pdf");
    fs::permissions(folder, fs::perms::owner_all);
}

TEST_F(WriteWhole, WhenTheDiskTakesOnlyHalfTheOldFileStays) {
    std::ofstream(folder / "day.pdf") << "old";
    // A limit on file size stands for a full disk: the write stops half way with an error.
    signal(SIGXFSZ, SIG_IGN);
    rlimit before{};
    getrlimit(RLIMIT_FSIZE, &before);
    const rlimit small{1000, before.rlim_max};
    setrlimit(RLIMIT_FSIZE, &small);
    const auto written = print::writeWhole(folder / "day.pdf", std::string(5000, 'x'));
    setrlimit(RLIMIT_FSIZE, &before);
    signal(SIGXFSZ, SIG_DFL);
    ASSERT_FALSE(written.ok());
    EXPECT_EQ(written.problems().fault, Fault::World);
    EXPECT_EQ(contents(folder / "day.pdf"), "old");
    EXPECT_EQ(files(), 1U);
}

} // namespace
} // namespace piewright
