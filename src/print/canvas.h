// Pages in points with text that is measured before it is put: the only place that speaks to Cairo and Pango.
#pragma once

#include "finding/result.h"

#include <memory>
#include <set>
#include <string>
#include <vector>

struct _PangoLayout; // NOLINT(bugprone-reserved-identifier): Pango's own name, so that its header stays inside
                     // canvas.cpp

namespace piewright::print {

constexpr double kMillimetre = 72.0 / 25.4; ///< in points

enum class Turn { Upright, Sideways };
enum class Align { Left, Centre, Right };

/// How a text is set. Black on white always: `grey` is for what may be overlooked.
struct Style {
    double points = 10;
    bool bold = false;
    double grey = 0; ///< 0 black, 1 white
    Align align = Align::Left;
    int most = 0; ///< lines; past them the text ends in an ellipsis. 0: as many as it needs
};

/// A text that was laid out: its size is known, and it may be put anywhere, any number of times.
class Laid {
  public:
    Laid() = default;
    double width = 0; ///< of the ink's box, not of the room it was given
    double height = 0;
    double baseline = 0; ///< of the first line, below the top

  private:
    friend class Canvas;
    std::shared_ptr<_PangoLayout> layout_;
    double grey_ = 0;
};

struct PaperSize {
    double width = 210 * kMillimetre;
    double height = 297 * kMillimetre;
};
constexpr PaperSize kA4{210 * kMillimetre, 297 * kMillimetre};
constexpr PaperSize kLetter{612, 792}; // ANSI/ASME Y14.1 size A: 8.5 by 11 inches

/// A PDF in the making. Coordinates are points from the page's top left corner.
class Canvas {
  public:
    /// `created` is the date in the file's metadata, ISO 8601: never the clock, or no two files would be alike.
    Canvas(PaperSize size, const std::string& title, const std::string& author, const std::string& created);
    ~Canvas();
    Canvas(const Canvas&) = delete;
    Canvas& operator=(const Canvas&) = delete;

    /// Begins a page and makes it the one that is drawn on.
    void page(Turn turn);
    [[nodiscard]] int pages() const { return pages_; }
    [[nodiscard]] double pageWidth() const { return width_; }
    [[nodiscard]] double pageHeight() const { return height_; }

    /// Wrapped to `room` points; 0: one line of any length. Control characters become spaces; a number and its unit
    /// stay on one line; what is longer than two thousand letters is cut short.
    [[nodiscard]] Laid lay(const std::string& text, const Style& style, double room = 0);
    void put(const Laid& text, double x, double y);
    /// Turned by a quarter, reading upwards; (x, y) is the lower left corner of the turned text.
    void putUpwards(const Laid& text, double x, double y);

    void line(double fromX, double fromY, double toX, double toY, double thick, double grey = 0);
    void dashes(double fromX, double fromY, double toX, double toY, double thick);
    void frame(double x, double y, double width, double height, double thick, double grey = 0);
    void dashedFrame(double x, double y, double width, double height, double thick);
    void fill(double x, double y, double width, double height, double grey);
    /// Thin slanting lines.
    void hatch(double x, double y, double width, double height, double grey);
    /// A triangle on its side with an exclamation mark: look here. Drawn, so that it needs no font.
    void caution(double x, double y, double size);
    /// A triangle that points down with its tip at (x, y).
    void pointer(double x, double y, double size);

    /// The finished file; the canvas is of no use after it. Problems: letters that no font has (Input, each text that
    /// has them); the PDF library failed (World).
    Result<std::string> finish();

  private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
    PaperSize size_;
    double width_ = 0, height_ = 0;
    int pages_ = 0;
    std::set<std::string> strange_; // texts with letters that no font has
};

} // namespace piewright::print
