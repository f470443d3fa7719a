#include "csv/scan.h"

#include "csv/encoding.h"

#include <algorithm>
#include <cstring>
#include <utility>

namespace piewright::csv {

namespace {

unsigned char index(char c) { return static_cast<unsigned char>(c); }
bool high(unsigned seen) { return (seen & 0x80U) != 0; }

} // namespace

Scan::Scan(char delimiter, bool latin1) : delimiter_(delimiter), latin1_(latin1) {
    for (const char c : {delimiter, '\r', '\n', '\0'}) ends_.at(index(c)) = true;
}

Scanned Scan::refuse(std::size_t line, std::string saw, std::string want) {
    problem_ = Finding{
        {{}, static_cast<int>(std::min<std::size_t>(line, 2'000'000'000)), 0, {}}, std::move(saw), std::move(want), {}};
    return Scanned::Problem;
}

Scanned Scan::unquoted(char*& at, char* to, bool last) {
    char* const start = at;
    unsigned seen = 0;
    while (!ends_[index(*at)]) seen |= index(*at++);
    if (at == to) {
        if (!last) return Scanned::More;
    } else if (*at == '\0') {
        return refuse(lineNow_, "a NUL byte, which no text file holds", "a text file in UTF-8 or Latin-1");
    }
    fields_.push_back({start, at, false, high(seen)});
    return Scanned::Row;
}

Scanned Scan::quoted(char*& at, char* to, bool last) {
    const std::size_t opened = lineNow_;
    char* const start = ++at;
    bool doubled = false;
    unsigned seen = 0;
    for (;; ++at) {
        if (at == to) {
            if (static_cast<std::size_t>(at - start) > kLongestField || last)
                return refuse(opened, "a quote opened here is not closed", "a closing quote (\") at the field's end");
            return Scanned::More;
        }
        const char c = *at;
        if (c == '"') {
            if (at + 1 == to && !last) return Scanned::More;
            if (at + 1 == to || at[1] != '"') break;
            doubled = true;
            ++at;
        } else if (c == '\n') {
            // The LF of a CR LF was counted with its CR.
            if (at == start || at[-1] != '\r') ++lineNow_;
        } else if (c == '\r') {
            ++lineNow_;
        } else if (c == '\0') {
            return refuse(lineNow_, "a NUL byte, which no text file holds", "a text file in UTF-8 or Latin-1");
        }
        seen |= index(c);
    }
    fields_.push_back({start, at, doubled, high(seen)});
    ++at;
    while (*at == ' ' && at != to) ++at;
    if (at == to) return last ? Scanned::Row : Scanned::More;
    if (*at != delimiter_ && *at != '\r' && *at != '\n')
        return refuse(lineNow_, "text after a closing quote", "quotes inside a quoted field doubled (\"\")");
    return Scanned::Row;
}

void Scan::finish() {
    row_.fields.clear();
    row_.line = line_;
    std::size_t toConvert = 0;
    for (Field& field : fields_) {
        if (field.doubled) {
            char* write = field.from;
            for (const char* read = field.from; read != field.to; ++read) {
                *write++ = *read;
                if (*read == '"') ++read;
            }
            field.to = write;
        }
        const std::string_view text(field.from, static_cast<std::size_t>(field.to - field.from));
        field.high = field.high && (latin1_ || !isUtf8(text));
        if (field.high) toConvert += 3 * text.size();
        row_.fields.push_back(text);
    }
    if (toConvert == 0) return;
    converted_.clear();
    converted_.reserve(toConvert); // so that no view moves
    for (std::size_t i = 0; i < fields_.size(); ++i) {
        if (!fields_[i].high) continue;
        const std::size_t start = converted_.size();
        addFromWindows1252(row_.fields[i], converted_);
        row_.fields[i] = std::string_view(converted_).substr(start);
    }
}

Scanned Scan::next(char*& from, char* to, bool last) {
    *to = '\0';
    for (;;) { // empty lines
        if (from == to) return Scanned::End;
        if (*from == '\n') {
            if (!afterCr_) ++line_;
            afterCr_ = false;
            ++from;
        } else if (*from == '\r') {
            ++line_;
            afterCr_ = true;
            ++from;
        } else {
            break;
        }
    }
    char* at = from;
    lineNow_ = line_;
    fields_.clear();
    for (;;) {
        const Scanned scanned = *at == '"' && at != to ? quoted(at, to, last) : unquoted(at, to, last);
        if (scanned != Scanned::Row) return scanned;
        const Field& field = fields_.back();
        if (static_cast<std::size_t>(field.to - field.from) > kLongestField)
            return refuse(lineNow_, "a field longer than 64 KiB", "a closing quote, if one was left open before it");
        if (fields_.size() > kMostFields)
            return refuse(line_, "a row of more than 4,096 fields", "a file of rows and columns");
        if (at == to || *at != delimiter_) break;
        ++at;
    }
    finish();
    afterCr_ = false;
    line_ = lineNow_;
    if (at != to) {
        ++line_;
        afterCr_ = *at == '\r';
        ++at;
    }
    from = at;
    return Scanned::Row;
}

} // namespace piewright::csv
