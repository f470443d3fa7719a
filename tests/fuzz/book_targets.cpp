#include "book/read.h"
#include "fuzz/targets.h"

#include <cstdlib>

namespace piewright::fuzz {

namespace {

// A book's files one after the other, each under a line `=== NAME`; what stands before the first is left out.
book::Texts filesIn(const std::string& bytes) {
    constexpr std::string_view kMark = "=== ";
    book::Texts texts;
    std::string* file = nullptr;
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t end = std::min(bytes.find('\n', at), bytes.size() - 1) + 1;
        const std::string_view line = std::string_view(bytes).substr(at, end - at);
        if (line.starts_with(kMark))
            file = &texts[std::string(line.substr(kMark.size(), line.find_last_not_of("\r\n") + 1 - kMark.size()))];
        else if (file != nullptr)
            file->append(line);
        at = end;
    }
    return texts;
}

} // namespace

void bookOf(const std::string& bytes) {
    const auto read = book::readTexts(filesIn(bytes));
    if (!read.ok()) {
        if (read.problems().findings.empty()) std::abort();
        return;
    }
    const book::Texts printed = book::printTexts(read->book);
    const auto again = book::readTexts(printed);
    if (!again.ok() || !(again->book == read->book) || book::printTexts(again->book) != printed) std::abort();
}

} // namespace piewright::fuzz
