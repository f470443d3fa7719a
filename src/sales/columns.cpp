#include "sales/columns.h"

#include "finding/suggest.h"
#include "sales/fold.h"
#include "sales/left.h"
#include "sales/pieces.h"
#include "sales/when.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <functional>
#include <set>
#include <span>

namespace piewright::sales {

namespace {

using Words = std::span<const std::string_view>;

// Folded; the likelier first. A header counts when it is one of these or has one of them among its words.
constexpr auto kWhen = std::to_array<std::string_view>(
    {"when", "date time", "datetime", "date", "timestamp", "business date", "sold at", "created at", "closed at",
     "zeitpunkt", "datum", "date heure", "date vente", "horodatage", "fecha y hora", "fecha", "day"});
constexpr auto kTime = std::to_array<std::string_view>({"time", "time of day", "uhrzeit", "zeit", "heure", "hora"});
constexpr auto kItem = std::to_array<std::string_view>(
    {"item",        "item name", "product",  "product name", "article",     "artikel",     "artikelname",
     "bezeichnung", "produkt",   "produit",  "libellé",      "libelle",     "désignation", "designation",
     "producto",    "artículo",  "articulo", "descripción",  "description", "name"});
constexpr auto kQuantity = std::to_array<std::string_view>(
    {"quantity", "qty",   "pieces", "pcs",      "units",    "count",           "items sold", "menge",
     "anzahl",   "stück", "stueck", "stk",      "verkauft", "verkaufte menge", "quantité",   "quantite",
     "qté",      "qte",   "vendus", "cantidad", "cant",     "unidades",        "sold"});
constexpr auto kSoldOut = std::to_array<std::string_view>(
    {"sold out", "sold out at", "soldout", "out of stock", "ausverkauft", "épuisé", "rupture", "agotado"});
// A header with one of these among its words is money, a number of a thing or a code, not what is looked for.
constexpr auto kOther = std::to_array<std::string_view>(
    {"price",   "amount", "cost",    "value",  "tax",    "vat",     "discount", "id",     "code",   "number", "no",
     "nr",      "ticket", "receipt", "bon",    "table",  "preis",   "betrag",   "steuer", "rabatt", "nummer", "prix",
     "montant", "tva",    "remise",  "numéro", "precio", "importe", "iva",      "número", "stock",  "plu"});

bool letterOrDigit(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
}

/// Words apart: everything that is no letter or digit is a space.
std::string words(std::string_view header) {
    std::string text = fold(header);
    for (char& c : text)
        if (!letterOrDigit(c)) c = ' ';
    return fold(text);
}

bool among(const std::string& header, std::string_view word) {
    return (' ' + header + ' ').find(' ' + std::string(word) + ' ') != std::string::npos;
}

/// How well a header fits: 0 not at all; the whole name beats a word among others, the likelier word the other.
std::size_t fits(const std::string& header, Words wanted) {
    for (std::size_t i = 0; i < wanted.size(); ++i)
        if (header == wanted[i]) return 2 * wanted.size() - i;
    if (std::any_of(kOther.begin(), kOther.end(), [&](std::string_view other) { return among(header, other); }))
        return 0;
    for (std::size_t i = 0; i < wanted.size(); ++i)
        if (among(header, wanted[i])) return wanted.size() - i;
    return 0;
}

struct ColumnFacts {
    std::size_t filled = 0;
    std::size_t dates = 0;           // a date, or a date and a time
    std::size_t times = 0;           // a time alone
    std::size_t pieces = 0;          // a whole number of pieces
    std::size_t small = 0;           // of these, up to 1,000
    std::size_t numbers = 0;         // whole or not, however large
    std::size_t goods = 0;           // known to the mapping or the goods
    std::size_t flags = 0;           // yes or no
    std::set<std::string> different; // up to a few
};

bool mostly(std::size_t some, std::size_t all) { return all > 0 && some * 10 >= all * 8; }

std::vector<ColumnFacts> factsOf(const Sample& sample, bool decimalComma, Items& items) {
    std::size_t width = sample.header.size();
    for (const auto& row : sample.rows) width = std::max(width, row.size());
    std::vector<ColumnFacts> facts(width);
    for (const auto& row : sample.rows) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            const std::string_view text = trimmed(row[i]);
            ColumnFacts& fact = facts[i];
            if (text.empty()) continue;
            ++fact.filled;
            const WhenText when = splitWhen(text);
            const auto date = parseDateText(when.date);
            if (date && (dateOf(*date, true) || dateOf(*date, false)) &&
                (when.time.empty() || parseTimeText(when.time)))
                ++fact.dates;
            if (text.find_first_of(":.hH") != std::string_view::npos && parseTimeText(text)) ++fact.times;
            const Pieces pieces = parsePieces(text, decimalComma);
            if (pieces.kind == Pieces::Kind::Whole) ++fact.pieces;
            if (pieces.kind == Pieces::Kind::Whole && std::abs(pieces.count) <= 1000) ++fact.small;
            if (pieces.kind != Pieces::Kind::NotANumber) ++fact.numbers;
            if (items.find(text) != Items::kUnknown) ++fact.goods;
            if (parseYesNo(text)) ++fact.flags;
            if (fact.different.size() < 8) fact.different.insert(std::string(text.substr(0, 40)));
        }
    }
    return facts;
}

std::string listed(const Sample& sample, std::size_t width) {
    std::string text;
    for (std::size_t i = 0; i < width && i < 12; ++i) text += (i > 0 ? ", " : "") + shown(nameOf(sample, i));
    return width > 12 ? text + ", …" : text;
}

class Finder {
  public:
    Finder(const Sample& sample, bool decimalComma, Items& items)
        : sample_(sample), facts_(factsOf(sample, decimalComma, items)), taken_(facts_.size()) {
        for (std::size_t i = 0; i < sample.header.size(); ++i) headers_.push_back(words(sample.header[i]));
    }

    Result<Found> find(const Columns& columns);

  private:
    using Suits = std::function<bool(const ColumnFacts&)>;

    /// Marks the column named; a Problem when there is none.
    std::optional<std::size_t> named(const std::optional<std::string>& name, const std::string& role);
    /// The free column whose header fits best and whose content does not speak against it.
    std::optional<std::size_t> byHeader(Words wanted, const Suits& suits);
    /// The free column that suits, the one with the most of `count`; the first of equals.
    std::optional<std::size_t> byContent(const Suits& suits, std::size_t ColumnFacts::* count);
    std::optional<std::size_t> quantity();
    void missing(const std::string& what, const std::string& option);

    const Sample& sample_;
    std::vector<ColumnFacts> facts_;
    std::vector<bool> taken_;
    std::vector<std::string> headers_;
    std::vector<Finding> findings_;
};

std::optional<std::size_t> Finder::named(const std::optional<std::string>& name, const std::string& role) {
    if (!name) return std::nullopt;
    std::optional<std::size_t> column;
    std::vector<std::string> known;
    for (std::size_t i = 0; i < sample_.header.size(); ++i) {
        known.emplace_back(trimmed(sample_.header[i]));
        if (!column && fold(sample_.header[i]) == fold(*name)) column = i;
    }
    if (!column && name->size() > 1 && name->front() == '#') {
        std::size_t place = 0;
        const auto [end, error] = std::from_chars(name->data() + 1, name->data() + name->size(), place);
        if (error == std::errc{} && end == name->data() + name->size() && place >= 1 && place <= facts_.size())
            column = place - 1;
    }
    if (!column) {
        findings_.push_back({{{}, 0, 0, role},
                             "the file has no column " + shown(*name),
                             "one of " + listed(sample_, facts_.size()),
                             didYouMean(*name, known),
                             Severity::Error});
        return std::nullopt;
    }
    taken_[*column] = true;
    return column;
}

std::optional<std::size_t> Finder::byHeader(Words wanted, const Suits& suits) {
    std::optional<std::size_t> best;
    std::size_t bestFit = 0;
    for (std::size_t i = 0; i < headers_.size(); ++i) {
        const std::size_t fit = taken_[i] ? 0 : fits(headers_[i], wanted);
        if (fit <= bestFit || (facts_[i].filled > 0 && !suits(facts_[i]))) continue;
        best = i;
        bestFit = fit;
    }
    if (best) taken_[*best] = true;
    return best;
}

std::optional<std::size_t> Finder::byContent(const Suits& suits, std::size_t ColumnFacts::* count) {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < facts_.size(); ++i) {
        if (taken_[i] || !suits(facts_[i])) continue;
        if (!best || facts_[i].*count > facts_[*best].*count) best = i;
    }
    if (best) taken_[*best] = true;
    return best;
}

std::optional<std::size_t> Finder::quantity() {
    std::vector<std::size_t> candidates;
    for (std::size_t i = 0; i < facts_.size(); ++i) {
        const ColumnFacts& fact = facts_[i];
        if (taken_[i] || !mostly(fact.small, fact.filled) || fact.numbers < fact.filled) continue;
        const bool other =
            i < headers_.size() &&
            std::any_of(kOther.begin(), kOther.end(), [&](std::string_view word) { return among(headers_[i], word); });
        if (!other) candidates.push_back(i);
    }
    if (candidates.empty()) return std::nullopt;
    if (candidates.size() > 1) {
        std::string which;
        for (const std::size_t i : candidates) which += (which.empty() ? "" : ", ") + shown(nameOf(sample_, i));
        findings_.push_back({{{}, 0, 0, "quantity"},
                             "more than one column may be the number of pieces: " + which,
                             "the quantity's column named",
                             {},
                             Severity::Error});
        return std::nullopt;
    }
    taken_[candidates[0]] = true;
    return candidates[0];
}

void Finder::missing(const std::string& what, const std::string& option) {
    findings_.push_back({{{}, 0, 0, option},
                         "no column of " + what + " is recognised among " + listed(sample_, facts_.size()),
                         "the " + option + " column named",
                         {},
                         Severity::Error});
}

Result<Found> Finder::find(const Columns& columns) {
    const auto dates = [](const ColumnFacts& f) { return f.dates * 2 >= f.filled && f.dates > 0; };
    const auto times = [](const ColumnFacts& f) { return f.times * 2 >= f.filled && f.times > 0; };
    const auto pieces = [](const ColumnFacts& f) { return f.numbers * 2 >= f.filled; };
    const auto texts = [](const ColumnFacts& f) {
        return f.goods > 0 || (!mostly(f.numbers, f.filled) && !mostly(f.dates, f.filled));
    };
    Found found;
    auto when = named(columns.when, "when");
    found.time = named(columns.time, "time");
    auto item = named(columns.item, "item");
    found.quantity = named(columns.quantity, "quantity");
    found.soldOut = named(columns.soldOut, "sold-out");
    if (!findings_.empty()) return Problems{Fault::Input, findings_};

    if (!when) when = byHeader(kWhen, dates);
    if (!when) when = byContent([](const ColumnFacts& f) { return mostly(f.dates, f.filled); }, &ColumnFacts::dates);
    if (!when) missing("dates", "when");
    // A time of selling out says more than a yes. What else speaks of selling out is no time of sale.
    if (!found.soldOut)
        found.soldOut = byHeader(kSoldOut, [](const ColumnFacts& f) { return mostly(f.times, f.filled); });
    if (!found.soldOut)
        found.soldOut = byHeader(kSoldOut, [](const ColumnFacts& f) { return mostly(f.flags + f.times, f.filled); });
    for (std::size_t i = 0; i < headers_.size(); ++i)
        if (fits(headers_[i], kSoldOut) > 0) taken_[i] = true;
    if (!item) item = byHeader(kItem, texts);
    if (!item || facts_[*item].goods == 0) {
        // Words that are known goods say more than a header does.
        const auto better =
            columns.item ? std::nullopt
                         : byContent([](const ColumnFacts& f) { return f.goods * 10 >= f.filled && f.goods > 0; },
                                     &ColumnFacts::goods);
        if (better) item = better;
    }
    if (!item) {
        const auto free =
            static_cast<std::size_t>(std::count_if(facts_.begin(), facts_.end(), [&](const ColumnFacts& f) {
                return !taken_[static_cast<std::size_t>(&f - facts_.data())] && f.filled > 0 && f.numbers == 0 &&
                       f.dates == 0 && f.times == 0;
            }));
        if (free == 1)
            item = byContent(
                [](const ColumnFacts& f) { return f.filled > 0 && f.numbers == 0 && f.dates == 0 && f.times == 0; },
                &ColumnFacts::filled);
    }
    if (!item) missing("items", "item");
    if (!found.quantity) found.quantity = byHeader(kQuantity, pieces);
    const bool hasTimes = when && std::any_of(sample_.rows.begin(), sample_.rows.end(), [&](const auto& row) {
                              return *when < row.size() && !splitWhen(row[*when]).time.empty();
                          });
    if (!found.time && !hasTimes) {
        found.time = byHeader(kTime, times);
        if (!found.time)
            found.time = byContent([](const ColumnFacts& f) { return mostly(f.times, f.filled); }, &ColumnFacts::times);
    }
    if (!found.quantity && findings_.empty()) found.quantity = quantity();
    if (!findings_.empty() || !when || !item) return Problems{Fault::Input, findings_};
    found.when = *when;
    found.item = *item;
    return found;
}

} // namespace

Result<Found> findColumns(const Sample& sample, const Columns& named, bool decimalComma, Items& items) {
    return Finder(sample, decimalComma, items).find(named);
}

std::string nameOf(const Sample& sample, std::size_t column) {
    if (column < sample.header.size() && !trimmed(sample.header[column]).empty())
        return std::string(trimmed(sample.header[column]));
    return '#' + std::to_string(column + 1);
}

std::optional<bool> parseYesNo(std::string_view text) {
    const std::string word = fold(text.substr(0, 40));
    for (const std::string_view yes :
         {"1", "yes", "y", "true", "x", "ja", "j", "wahr", "oui", "o", "vrai", "sí", "si", "s"})
        if (word == yes) return true;
    for (const std::string_view no : {"0", "", "no", "n", "false", "nein", "falsch", "non", "faux", "-"})
        if (word == no) return false;
    return std::nullopt;
}

} // namespace piewright::sales
