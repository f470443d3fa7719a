// A table on paper: columns fitted to what stands in them, cells wrapped, the head on every page.
#pragma once

#include "print/flow.h"

#include <string>
#include <vector>

namespace piewright::print {

enum class Mark {
    None,
    TickBox, ///< an empty box to tick
    Caution, ///< the caution triangle before the text
    Blank    ///< an empty frame to write into, as wide as the cell
};

/// One text of a cell; a cell's parts stand one below the other.
struct Part {
    std::string text;
    Style style;
    Mark mark = Mark::None;
};
using Cell = std::vector<Part>;

struct Column {
    std::string head;
    Align align = Align::Left;
    double most = 0;  ///< fits its contents up to so many points; 0: no limit
    double share = 0; ///< of what the fitted columns leave; 0: fitted
    double least = 0;
};

struct Row {
    std::vector<Cell> cells;
    bool ruled = true;  ///< a thin line above
    bool heavy = false; ///< a thick one
    double least = 0;   ///< height
};

class Table {
  public:
    explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}
    void add(Row row) { rows_.push_back(std::move(row)); }
    void add(std::vector<Cell> cells) { rows_.push_back({std::move(cells), true, false, 0}); }
    [[nodiscard]] bool empty() const { return rows_.empty(); }
    double headPoints = 8.5;
    double gap = 8;     ///< between columns
    double padding = 2; ///< above and below a row's text

    /// The head and the rows as blocks of `width` points.
    struct Laidout {
        Block head;
        std::vector<Block> rows;
        double height = 0; ///< of all together
    };
    [[nodiscard]] Laidout layOut(Canvas& canvas, double width) const;
    /// Down the pages, the head again on each.
    void flow(Flow& flow) const;

  private:
    [[nodiscard]] std::vector<double> widths(Canvas& canvas, double width) const;
    [[nodiscard]] Block block(Canvas& canvas, const Row& row, const std::vector<double>& widths, double width) const;
    [[nodiscard]] Row headRow() const;
    std::vector<Column> columns_;
    std::vector<Row> rows_;
};

} // namespace piewright::print
