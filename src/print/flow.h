// Things one below the other down the pages: each is measured, and what does not fit begins the next page.
#pragma once

#include "print/canvas.h"

#include <functional>
#include <string>
#include <vector>

namespace piewright::print {

/// Something of known height that can be drawn with its top left corner anywhere.
struct Block {
    double height = 0;
    std::function<void(Canvas&, double x, double y)> draw;
};

/// What stands on every page.
struct Running {
    std::string left; ///< in the foot
    std::string middle;
    int total = 0; ///< pages in all; 0: not known yet
};

class Flow {
  public:
    Flow(Canvas& canvas, Running running) : canvas_(canvas), running_(std::move(running)) {}

    /// Begins a page whose first line names what it is about; `title` comes again on pages that go on from it.
    void page(Turn turn, const std::string& title);
    void retitle(const std::string& title) { title_ = title; }

    [[nodiscard]] Canvas& canvas() { return canvas_; }
    [[nodiscard]] double left() const { return kMargin; }
    [[nodiscard]] double width() const { return canvas_.pageWidth() - 2 * kMargin; }
    [[nodiscard]] double y() const { return y_; }
    [[nodiscard]] double bottom() const { return canvas_.pageHeight() - kFoot; }
    [[nodiscard]] double room() const { return bottom() - y_; }
    [[nodiscard]] double fullRoom() const { return bottom() - kMargin; } ///< of an untouched page, less its title

    void space(double points) { y_ += points; }
    /// A page is begun unless so much room is left.
    void need(double height);
    void add(const Block& block);
    /// Wrapped over the whole width.
    void text(const std::string& text, const Style& style, double indent = 0);
    /// Keeps at least `after` points of what follows on its page.
    void heading(const std::string& text, double after = 60);
    /// Words beside the caution triangle.
    void caution(const std::string& text, const Style& style);

    static constexpr double kMargin = 12 * kMillimetre;
    static constexpr double kFoot = 16 * kMillimetre;

  private:
    void foot();
    /// Cut short when it would fill more than a page.
    [[nodiscard]] Laid fitting(const std::string& text, Style style, double room);
    Canvas& canvas_;
    Running running_;
    Turn turn_ = Turn::Upright;
    std::string title_;
    double y_ = 0;
};

} // namespace piewright::print
