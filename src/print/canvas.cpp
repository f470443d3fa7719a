#include "print/canvas.h"

#include "print/words.h"

#include <cairo-pdf.h>
#include <cmath>
#include <pango/pangocairo.h>

namespace piewright::print {

namespace {

// The package depends on the first; the others are what a system without it is likely to have.
constexpr const char* kFonts = "DejaVu Sans, Noto Sans, Liberation Sans, sans-serif";

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
    try {
        static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
        return CAIRO_STATUS_SUCCESS;
    } catch (...) { // no exception may cross the library
        return CAIRO_STATUS_NO_MEMORY;
    }
}

PangoAlignment toPango(Align align) {
    switch (align) {
    case Align::Left:
        return PANGO_ALIGN_LEFT;
    case Align::Centre:
        return PANGO_ALIGN_CENTER;
    case Align::Right:
        return PANGO_ALIGN_RIGHT;
    }
    return PANGO_ALIGN_LEFT;
}

/// Shaping takes time that grows with the text, and nobody reads on.
std::string shortened(std::string text) {
    constexpr glong kLongest = 2000;
    if (text.size() <= static_cast<std::size_t>(kLongest)) return text;
    if (g_utf8_strlen(text.c_str(), -1) <= kLongest) return text;
    text.erase(static_cast<std::size_t>(g_utf8_offset_to_pointer(text.c_str(), kLongest) - text.c_str()));
    return text + "…";
}

bool isDigit(char c) { return c >= '0' && c <= '9'; }

/// The space of `12.4 kg` becomes one at which no line is broken: after a digit and before a word of at most three
/// bytes.
std::string together(const std::string& text) {
    std::string made;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const std::size_t next = text.find_first_of(" ,;.)", i + 1);
        const std::size_t word = (next == std::string::npos ? text.size() : next) - i - 1;
        if (text[i] == ' ' && i > 0 && isDigit(text[i - 1]) && word >= 1 && word <= 3)
            made += "\u00A0";
        else
            made += text[i];
    }
    return made;
}

struct FreeSurface {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct FreeContext {
    void operator()(cairo_t* context) const { cairo_destroy(context); }
};
struct FreeObject {
    void operator()(void* object) const { g_object_unref(object); }
};
struct FreeDescription {
    void operator()(PangoFontDescription* description) const { pango_font_description_free(description); }
};
struct FreeOptions {
    void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};

} // namespace

struct Canvas::Inside {
    std::string bytes; // before the surface, which writes to it until it is gone
    std::unique_ptr<cairo_surface_t, FreeSurface> surface;
    std::unique_ptr<cairo_t, FreeContext> cairo;
    std::unique_ptr<PangoContext, FreeObject> pango;
    bool fonts = false;
};

Canvas::Canvas(PaperSize size, const std::string& title, const std::string& author, const std::string& created)
    : inside_(std::make_unique<Inside>()), size_(size), width_(size.width), height_(size.height) {
    Inside& in = *inside_;
    in.surface.reset(cairo_pdf_surface_create_for_stream(&append, &in.bytes, size.width, size.height));
    cairo_pdf_surface_restrict_to_version(in.surface.get(), CAIRO_PDF_VERSION_1_5);
    const auto tell = [&](cairo_pdf_metadata_t what, const std::string& text) {
        cairo_pdf_surface_set_metadata(in.surface.get(), what, clean(text).c_str());
    };
    tell(CAIRO_PDF_METADATA_TITLE, title);
    tell(CAIRO_PDF_METADATA_AUTHOR, author);
    tell(CAIRO_PDF_METADATA_CREATOR, "piewright");
    tell(CAIRO_PDF_METADATA_CREATE_DATE, created);
    in.cairo.reset(cairo_create(in.surface.get()));
    in.pango.reset(pango_cairo_create_context(in.cairo.get()));
    // Pango's own 96 dots an inch would make every font a third too large: at 72 its units are points.
    pango_cairo_context_set_resolution(in.pango.get(), 72);
    pango_context_set_round_glyph_positions(in.pango.get(), FALSE);
    const std::unique_ptr<cairo_font_options_t, FreeOptions> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    pango_cairo_context_set_font_options(in.pango.get(), options.get());
    const std::unique_ptr<PangoFontDescription, FreeDescription> any(pango_font_description_from_string(kFonts));
    const std::unique_ptr<PangoFont, FreeObject> font(pango_context_load_font(in.pango.get(), any.get()));
    in.fonts = font != nullptr;
}

Canvas::~Canvas() = default;

void Canvas::page(Turn turn) {
    Inside& in = *inside_;
    if (pages_ > 0) cairo_show_page(in.cairo.get());
    width_ = turn == Turn::Upright ? size_.width : size_.height;
    height_ = turn == Turn::Upright ? size_.height : size_.width;
    cairo_pdf_surface_set_size(in.surface.get(), width_, height_);
    ++pages_;
}

Laid Canvas::lay(const std::string& text, const Style& style, double room) {
    Laid laid;
    Inside& in = *inside_;
    if (!in.fonts) return laid; // told at the end
    laid.layout_ = std::shared_ptr<PangoLayout>(pango_layout_new(in.pango.get()), FreeObject());
    PangoLayout* layout = laid.layout_.get();
    laid.grey_ = style.grey;
    const std::unique_ptr<PangoFontDescription, FreeDescription> font(pango_font_description_from_string(kFonts));
    pango_font_description_set_size(font.get(), static_cast<int>(std::lround(style.points * PANGO_SCALE)));
    pango_font_description_set_weight(font.get(), style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(layout, font.get());
    const std::string plain = together(shortened(clean(text)));
    pango_layout_set_text(layout, plain.data(), static_cast<int>(plain.size()));
    if (room > 0) {
        pango_layout_set_width(layout, static_cast<int>(std::lround(room * PANGO_SCALE)));
        pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
        pango_layout_set_alignment(layout, toPango(style.align));
    }
    if (style.most > 0) {
        pango_layout_set_height(layout, -style.most);
        pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
    }
    if (pango_layout_get_unknown_glyphs_count(layout) > 0) strange_.insert(plain);
    PangoRectangle box{};
    pango_layout_get_extents(layout, nullptr, &box);
    laid.width = static_cast<double>(box.width) / PANGO_SCALE;
    laid.height = static_cast<double>(box.height) / PANGO_SCALE;
    laid.baseline = static_cast<double>(pango_layout_get_baseline(layout)) / PANGO_SCALE;
    return laid;
}

void Canvas::put(const Laid& text, double x, double y) {
    if (!text.layout_) return;
    cairo_t* cairo = inside_->cairo.get();
    cairo_set_source_rgb(cairo, text.grey_, text.grey_, text.grey_);
    cairo_move_to(cairo, x, y);
    pango_cairo_show_layout(cairo, text.layout_.get());
}

void Canvas::putUpwards(const Laid& text, double x, double y) {
    if (!text.layout_) return;
    cairo_t* cairo = inside_->cairo.get();
    cairo_save(cairo);
    cairo_translate(cairo, x, y);
    cairo_rotate(cairo, -std::acos(0.0)); // a quarter
    cairo_set_source_rgb(cairo, text.grey_, text.grey_, text.grey_);
    cairo_move_to(cairo, 0, 0);
    pango_cairo_show_layout(cairo, text.layout_.get());
    cairo_restore(cairo);
}

void Canvas::line(double fromX, double fromY, double toX, double toY, double thick, double grey) {
    cairo_t* cairo = inside_->cairo.get();
    cairo_set_source_rgb(cairo, grey, grey, grey);
    cairo_set_line_width(cairo, thick);
    cairo_move_to(cairo, fromX, fromY);
    cairo_line_to(cairo, toX, toY);
    cairo_stroke(cairo);
}

void Canvas::dashes(double fromX, double fromY, double toX, double toY, double thick) {
    cairo_t* cairo = inside_->cairo.get();
    constexpr double kDash[] = {4, 3};
    cairo_set_dash(cairo, kDash, 2, 0);
    line(fromX, fromY, toX, toY, thick);
    cairo_set_dash(cairo, nullptr, 0, 0);
}

void Canvas::frame(double x, double y, double width, double height, double thick, double grey) {
    cairo_t* cairo = inside_->cairo.get();
    cairo_set_source_rgb(cairo, grey, grey, grey);
    cairo_set_line_width(cairo, thick);
    cairo_rectangle(cairo, x, y, width, height);
    cairo_stroke(cairo);
}

void Canvas::dashedFrame(double x, double y, double width, double height, double thick) {
    cairo_t* cairo = inside_->cairo.get();
    constexpr double kDash[] = {2, 2};
    cairo_set_dash(cairo, kDash, 2, 0);
    frame(x, y, width, height, thick);
    cairo_set_dash(cairo, nullptr, 0, 0);
}

void Canvas::fill(double x, double y, double width, double height, double grey) {
    cairo_t* cairo = inside_->cairo.get();
    cairo_set_source_rgb(cairo, grey, grey, grey);
    cairo_rectangle(cairo, x, y, width, height);
    cairo_fill(cairo);
}

void Canvas::hatch(double x, double y, double width, double height, double grey) {
    cairo_t* cairo = inside_->cairo.get();
    constexpr double kApart = 4;
    cairo_save(cairo);
    cairo_rectangle(cairo, x, y, width, height);
    cairo_clip(cairo);
    cairo_set_source_rgb(cairo, grey, grey, grey);
    cairo_set_line_width(cairo, 0.5);
    const int strokes = static_cast<int>((width + height) / kApart) + 1;
    for (int i = 0; i <= strokes; ++i) {
        cairo_move_to(cairo, x + i * kApart, y);
        cairo_line_to(cairo, x + i * kApart - height, y + height);
    }
    cairo_stroke(cairo);
    cairo_restore(cairo);
}

void Canvas::caution(double x, double y, double size) {
    cairo_t* cairo = inside_->cairo.get();
    const double height = size * 0.9;
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_set_line_width(cairo, size / 12);
    cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
    cairo_move_to(cairo, x + size / 2, y + size * 0.06);
    cairo_line_to(cairo, x + size * 0.96, y + height);
    cairo_line_to(cairo, x + size * 0.04, y + height);
    cairo_close_path(cairo);
    cairo_stroke(cairo);
    cairo_rectangle(cairo, x + size * 0.46, y + height * 0.38, size * 0.08, height * 0.30);
    cairo_rectangle(cairo, x + size * 0.46, y + height * 0.76, size * 0.08, height * 0.09);
    cairo_fill(cairo);
}

void Canvas::pointer(double x, double y, double size) {
    cairo_t* cairo = inside_->cairo.get();
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_move_to(cairo, x, y);
    cairo_line_to(cairo, x - size / 2, y - size);
    cairo_line_to(cairo, x + size / 2, y - size);
    cairo_close_path(cairo);
    cairo_fill(cairo);
}

Result<std::string> Canvas::finish() {
    Inside& in = *inside_;
    if (!in.fonts)
        return Problems::one(Fault::World, "no fonts are installed", "DejaVu Sans (package fonts-dejavu-core)");
    if (!strange_.empty()) {
        Problems problems{Fault::Input, {}};
        for (const std::string& text : strange_)
            problems.findings.push_back({{},
                                         "no font has all the letters of \"" + text + "\"",
                                         "letters that can be printed",
                                         "install a font that has them, such as fonts-noto-core or fonts-noto-cjk"});
        return problems;
    }
    cairo_show_page(in.cairo.get());
    cairo_status_t status = cairo_status(in.cairo.get());
    cairo_surface_finish(in.surface.get());
    if (status == CAIRO_STATUS_SUCCESS) status = cairo_surface_status(in.surface.get());
    if (status != CAIRO_STATUS_SUCCESS)
        return Problems::one(Fault::World, std::string("the PDF could not be made: ") + cairo_status_to_string(status));
    return std::move(in.bytes);
}

} // namespace piewright::print
