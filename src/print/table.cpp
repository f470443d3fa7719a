#include "print/table.h"

#include <algorithm>
#include <numeric>

namespace piewright::print {

namespace {

constexpr double kBlankHeight = 24;
constexpr double kTallest = 330; // of a part: more than this would not fit a page on its side

double markSize(const Part& part) { return part.style.points * 1.15; }

/// Room that the mark takes before the text.
double indent(const Part& part) {
    const bool beside = part.mark == Mark::TickBox || part.mark == Mark::Caution;
    return beside ? markSize(part) + (part.text.empty() ? 0 : 3) : 0;
}

/// A part laid out, with where it goes inside its cell.
struct Placed {
    Laid text;
    Mark mark = Mark::None;
    double markSize = 0;
    double x = 0, y = 0; // of the text
    double room = 0;     // of the cell
    double cellX = 0;
    double height = 0;
    /// A box stands a little below the line, as letters with a tail do.
    [[nodiscard]] double baseline() const {
        if (mark == Mark::Blank) return 0;
        return mark == Mark::TickBox ? markSize * 0.85 : text.baseline;
    }
};

void drawMark(Canvas& canvas, const Placed& part, double x, double y) {
    switch (part.mark) {
    case Mark::None:
        break;
    case Mark::TickBox:
        canvas.frame(x + 0.5, y + 1, part.markSize - 1, part.markSize - 1, 0.9);
        break;
    case Mark::Caution:
        canvas.caution(x, y, part.markSize);
        break;
    case Mark::Blank:
        canvas.frame(x, y + 1, part.room, part.height - 2, 0.6);
        break;
    }
}

} // namespace

std::vector<double> Table::widths(Canvas& canvas, double width) const {
    std::vector<double> widths;
    double shares = 0;
    double shareLeast = 0;
    for (std::size_t c = 0; c < columns_.size(); ++c) {
        const Column& column = columns_[c];
        if (column.share > 0) {
            shares += column.share;
            shareLeast += std::max(column.least, 40.0);
            widths.push_back(0);
            continue;
        }
        double natural = std::max(column.least, canvas.lay(column.head, {headPoints, true}).width);
        for (const Row& row : rows_)
            for (const Part& part : row.cells[c])
                natural =
                    std::max(natural, indent(part) + (part.text.empty() ? 0 : canvas.lay(part.text, part.style).width));
        widths.push_back((column.most > 0 ? std::min(natural, column.most) : natural) + 0.5);
    }
    const double gaps = gap * static_cast<double>(columns_.size() - 1);
    double taken = std::accumulate(widths.begin(), widths.end(), 0.0);
    // Fitted columns that leave too little give way together.
    const double most = width - gaps - shareLeast;
    if (taken > most && taken > 0) {
        for (double& one : widths) one *= most / taken;
        taken = most;
    }
    for (std::size_t c = 0; c < columns_.size(); ++c)
        if (columns_[c].share > 0) widths[c] = (width - gaps - taken) * columns_[c].share / shares;
    return widths;
}

Block Table::block(Canvas& canvas, const Row& row, const std::vector<double>& widths, double width) const {
    std::vector<Placed> parts;
    double tallest = 0;
    double x = 0;
    for (std::size_t c = 0; c < columns_.size(); ++c) {
        double y = 0;
        for (const Part& part : row.cells[c]) {
            Placed placed;
            placed.mark = part.mark;
            placed.markSize = markSize(part);
            placed.room = widths[c];
            placed.cellX = x;
            placed.x = x + indent(part);
            placed.y = y;
            Style style = part.style;
            style.align = columns_[c].align;
            if (!part.text.empty()) placed.text = canvas.lay(part.text, style, std::max(widths[c] - indent(part), 6.0));
            placed.height = part.mark == Mark::Blank ? kBlankHeight : placed.text.height;
            if (part.mark == Mark::TickBox || part.mark == Mark::Caution)
                placed.height = std::max(placed.height, placed.markSize);
            if (placed.height > kTallest && part.mark != Mark::Blank) {
                style.most = static_cast<int>(kTallest / (style.points * 1.3));
                placed.text = canvas.lay(part.text, style, std::max(widths[c] - indent(part), 6.0));
                placed.height = placed.text.height;
            }
            y += placed.height;
            parts.push_back(placed);
        }
        x += widths[c] + gap;
    }
    // The first lines of all cells stand on one line.
    double lowest = 0;
    for (const Placed& part : parts)
        if (part.y == 0) lowest = std::max(lowest, part.baseline());
    double drop = 0;
    for (Placed& part : parts) {
        if (part.y == 0) drop = part.mark == Mark::Blank ? 0 : lowest - part.baseline();
        part.y += drop;
        tallest = std::max(tallest, part.y + part.height);
    }
    const double height = std::max(tallest + 2 * padding, row.least);
    const double thick = row.heavy ? 1.4 : row.ruled ? 0.4 : 0;
    const double above = padding;
    return {height, [parts, thick, above, width](Canvas& onto, double left, double top) {
                if (thick > 0) onto.line(left, top, left + width, top, thick, thick > 1 ? 0 : 0.55);
                for (const Placed& part : parts) {
                    drawMark(onto, part, left + part.cellX, top + above + part.y);
                    onto.put(part.text, left + part.x, top + above + part.y);
                }
            }};
}

Row Table::headRow() const {
    Row head;
    head.ruled = false;
    for (const Column& column : columns_)
        head.cells.push_back({{column.head, {headPoints, true, 0, column.align}, Mark::None}});
    return head;
}

Table::Laidout Table::layOut(Canvas& canvas, double width) const {
    const std::vector<double> fitted = widths(canvas, width);
    Laidout laid;
    const bool headless =
        std::all_of(columns_.begin(), columns_.end(), [](const Column& column) { return column.head.empty(); });
    if (headless)
        laid.head = {0, [](Canvas&, double, double) {}};
    else
        laid.head = block(canvas, headRow(), fitted, width);
    laid.height = laid.head.height;
    for (const Row& row : rows_) {
        laid.rows.push_back(block(canvas, row, fitted, width));
        laid.height += laid.rows.back().height;
    }
    return laid;
}

void Table::flow(Flow& flow) const {
    const Laidout laid = layOut(flow.canvas(), flow.width());
    int page = -1;
    for (const Block& row : laid.rows) {
        flow.need(row.height + (page < 0 ? laid.head.height : 0));
        if (flow.canvas().pages() != page) {
            page = flow.canvas().pages();
            flow.add(laid.head);
        }
        flow.add(row);
    }
}

} // namespace piewright::print
