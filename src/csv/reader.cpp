#include "csv/reader.h"

#include "csv/scan.h"

#include <algorithm>
#include <cstring>
#include <limits>

namespace piewright::csv {

namespace {

constexpr std::size_t kBlock = 131'072;

Problems tooLong(std::size_t line) {
    const auto at = static_cast<int>(std::min<std::size_t>(line, std::numeric_limits<int>::max()));
    return Problems::one(Fault::Input, "a row longer than 1 MiB", "rows that end in a line end", {{}, at, 0, {}});
}

} // namespace

Result<std::size_t> read(std::string_view beginning, std::istream& in, const Dialect& dialect,
                         const std::function<bool(const Row&)>& take) {
    Scan scan(dialect.delimiter, dialect.latin1);
    std::vector<char> block(std::max(kBlock, beginning.size()) + 1); // one for the sentinel
    std::copy(beginning.begin(), beginning.end(), block.begin());
    std::size_t from = beginning.substr(0, 3) == "\xEF\xBB\xBF" ? 3 : 0;
    std::size_t to = beginning.size();
    bool atStart = beginning.size() < 3;
    bool last = false;
    std::size_t rows = 0;
    for (;;) {
        char* next = block.data() + from;
        Scanned scanned = Scanned::More;
        // Fewer than three bytes may still be the start of a byte order mark.
        while (!atStart) {
            scanned = scan.next(next, block.data() + to, last);
            if (scanned != Scanned::Row) break;
            ++rows;
            if (!take(scan.row())) return rows;
        }
        from = static_cast<std::size_t>(next - block.data());
        if (scanned == Scanned::Problem) return Problems{Fault::Input, {scan.problem()}};
        if (last) return rows;
        if (to - from > kLongestRow) return tooLong(scan.line());

        // What is left of a row moves to the front and more is read behind it.
        std::memmove(block.data(), block.data() + from, to - from);
        to -= from;
        from = 0;
        if (block.size() - 1 - to < kBlock / 2) block.resize(block.size() * 2);
        in.read(block.data() + to, static_cast<std::streamsize>(block.size() - 1 - to));
        to += static_cast<std::size_t>(in.gcount());
        if (in.bad()) return Problems::one(Fault::World, "the file could not be read to its end");
        last = in.eof() || in.gcount() == 0;
        if (atStart && (to >= 3 || last)) {
            atStart = false;
            if (to >= 3 && std::memcmp(block.data(), "\xEF\xBB\xBF", 3) == 0) from = 3;
        }
    }
}

Result<std::size_t> read(std::istream& in, const Dialect& dialect, const std::function<bool(const Row&)>& take) {
    return read({}, in, dialect, take);
}

} // namespace piewright::csv
