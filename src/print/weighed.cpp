#include "print/weighed.h"

#include "print/cautions.h"
#include "print/text_sheet.h"

namespace piewright::print {

std::string asText(const day::WeighedOut& weighed, int width) {
    TextSheet sheet(width);
    sheet.line(weighed.what);
    writePieces(sheet, weighed.pieces);
    writeCards(sheet, weighed.cards);
    writeNeeded(sheet, weighed.needed);
    sheet.blank();
    sheet.line(kFootnote);
    return std::move(sheet).take();
}

} // namespace piewright::print
