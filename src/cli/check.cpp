#include "book/read.h"
#include "cli/verbs.h"
#include "wire/report_json.h"

#include <ostream>

namespace piewright::cli {

int check(const CheckOptions& options, const Streams& streams) {
    const auto read = book::readFolder(options.house);
    if (!read) {
        const int code = refuse(read.problems(), streams);
        if (!streams.json)
            streams.err << read.problems().findings.size() << " to mend before this book can plan a day\n";
        return code;
    }
    if (streams.json) {
        streams.out << wire::bookReport(read->book, read->warnings);
        return 0;
    }
    const book::Book& book = read->book;
    streams.out << toText(read->warnings) << book.house.name << ": " << book.goods.size() << " goods, "
                << book.formulas.size() << " formulas, " << book.stuffs.size() << " stuffs, " << book.gear.size()
                << " kinds of gear, " << book.hands.size() << " hands; rule book " << book.rules.name << "; "
                << read->warnings.size() << " to look at\n";
    return 0;
}

} // namespace piewright::cli
