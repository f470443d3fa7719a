#include "print/flow.h"

#include <algorithm>

namespace piewright::print {

void Flow::page(Turn turn, const std::string& title) {
    canvas_.page(turn);
    turn_ = turn;
    title_ = title;
    y_ = kMargin;
    foot();
}

void Flow::foot() {
    const double baseline = canvas_.pageHeight() - kFoot + 5 * kMillimetre;
    canvas_.line(kMargin, baseline - 4, kMargin + width(), baseline - 4, 0.5);
    std::string number = "page " + std::to_string(canvas_.pages());
    if (running_.total > 0) number += " of " + std::to_string(running_.total);
    const Style style{8, false, 0, Align::Left, 1};
    const Laid right = canvas_.lay(number, style);
    const Laid middle = canvas_.lay(running_.middle, style);
    canvas_.put(right, kMargin + width() - right.width, baseline);
    canvas_.put(middle, kMargin + width() - right.width - middle.width - 14, baseline);
    canvas_.put(canvas_.lay(running_.left, style, width() - right.width - middle.width - 28), kMargin, baseline);
}

void Flow::need(double height) {
    if (height <= room()) return;
    page(turn_, title_);
    if (!title_.empty()) text(title_ + " (goes on)", {10, true, 0, Align::Left, 1});
    space(4);
}

Laid Flow::fitting(const std::string& text, Style style, double room) {
    const Laid laid = canvas_.lay(text, style, room);
    const double most = fullRoom() - 40;
    if (laid.height <= most) return laid;
    style.most = static_cast<int>(most / (style.points * 1.3));
    return canvas_.lay(text, style, room);
}

void Flow::add(const Block& block) {
    need(std::min(block.height, fullRoom() - 24));
    block.draw(canvas_, left(), y_);
    y_ += block.height;
}

void Flow::text(const std::string& text, const Style& style, double indent) {
    const Laid laid = fitting(text, style, width() - indent);
    need(laid.height);
    canvas_.put(laid, left() + indent, y_);
    y_ += laid.height;
}

void Flow::heading(const std::string& text, double after) {
    const Laid laid = canvas_.lay(text, {14, true, 0, Align::Left, 2}, width());
    if (y_ > kMargin + 1) space(12);
    need(laid.height + after);
    canvas_.put(laid, left(), y_);
    y_ += laid.height + 3;
}

void Flow::caution(const std::string& text, const Style& style) {
    const double size = style.points * 1.25;
    const double indent = size + 4;
    const Laid laid = fitting(text, style, width() - indent);
    need(laid.height);
    canvas_.caution(left(), y_, size);
    canvas_.put(laid, left() + indent, y_);
    y_ += std::max(laid.height, size) + 2;
}

} // namespace piewright::print
