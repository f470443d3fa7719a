// A file is there whole or not at all: written beside its place, flushed to the disk, then renamed over it.
#include "print/sheet.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace piewright::print {

namespace {

Problems failed(const std::filesystem::path& file, const char* what, int error) {
    return Problems::one(Fault::World, std::string(what) + ": " + std::generic_category().message(error), {},
                         {file.string(), 0, 0, {}});
}

/// A new file that is gone again unless kept.
class Beside {
  public:
    explicit Beside(const std::filesystem::path& file) {
        constexpr int kTries = 100; // what a crash left lying may hold the first names
        error_ = EEXIST;
        for (int i = 1; i <= kTries && error_ == EEXIST; ++i) {
            name_ = file.string() + ".part" + std::to_string(i);
            descriptor_ = open(name_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
            error_ = descriptor_ < 0 ? errno : 0;
        }
    }
    Beside(const Beside&) = delete;
    Beside& operator=(const Beside&) = delete;
    ~Beside() {
        if (descriptor_ >= 0) close(descriptor_);
        if (error_ == 0 && !kept_) unlink(name_.c_str());
    }

    [[nodiscard]] int error() const { return error_; }

    int write(std::string_view bytes) {
        while (!bytes.empty()) {
            const ssize_t written = ::write(descriptor_, bytes.data(), bytes.size());
            if (written < 0 && errno == EINTR) continue;
            if (written < 0) return errno;
            bytes.remove_prefix(static_cast<std::size_t>(written));
        }
        return fsync(descriptor_) == 0 ? 0 : errno;
    }

    /// Takes the place of `file`, and its permissions if it was there.
    int take(const std::filesystem::path& file) {
        struct stat old{};
        if (stat(file.c_str(), &old) == 0 && fchmod(descriptor_, old.st_mode & mode_t{0777}) != 0) return errno;
        if (rename(name_.c_str(), file.c_str()) != 0) return errno;
        kept_ = true;
        return 0;
    }

  private:
    std::string name_;
    int descriptor_ = -1;
    int error_ = 0;
    bool kept_ = false;
};

/// The folder too must reach the disk, or the new name may be lost with the power.
int flushFolder(const std::filesystem::path& file) {
    const std::filesystem::path folder = file.has_parent_path() ? file.parent_path() : ".";
    const int descriptor = open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) return errno;
    // Some file systems cannot flush a folder and say so with EINVAL: nothing more can be done there.
    const int error = fsync(descriptor) == 0 || errno == EINVAL ? 0 : errno;
    close(descriptor);
    return error;
}

} // namespace

Result<std::filesystem::path> writeWhole(const std::filesystem::path& file, std::string_view bytes) {
    std::error_code error;
    const auto there = std::filesystem::status(file, error);
    if (std::filesystem::exists(there) && !std::filesystem::is_regular_file(there))
        return Problems::one(Fault::World, "cannot write: it is there and is no file", "the name of a file",
                             {file.string(), 0, 0, {}});
    // A link goes on pointing to the file it names.
    std::filesystem::path target = file;
    if (std::filesystem::is_symlink(std::filesystem::symlink_status(file, error)) && std::filesystem::exists(there))
        target = std::filesystem::canonical(file, error);
    if (error && std::filesystem::exists(there)) return failed(file, "cannot follow the link", error.value());
    Beside beside(target);
    if (beside.error() != 0) return failed(file, "cannot write", beside.error());
    if (const int failure = beside.write(bytes); failure != 0) return failed(file, "cannot write", failure);
    if (const int failure = beside.take(target); failure != 0) return failed(file, "cannot put in place", failure);
    if (const int failure = flushFolder(target); failure != 0) return failed(file, "cannot flush the folder", failure);
    return file;
}

} // namespace piewright::print
