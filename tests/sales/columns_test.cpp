#include "sales/columns.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace piewright::sales {
namespace {

using testing::HasSubstr;
using Rows = std::vector<std::vector<std::string>>;

const std::map<GoodId, std::string> kGoods{{GoodId("beef-pie"), "Beef and onion pie"}, {GoodId("mash"), "Mash"}};

/// The columns' names by role, `when/time/item/quantity/sold out`, or what is wrong.
std::string found(const std::vector<std::string>& header, const Rows& rows, const Columns& named = {},
                  bool comma = false) {
    Items items({}, kGoods);
    const Sample sample{header, rows};
    const auto result = findColumns(sample, named, comma, items);
    if (!result) return toText(result.problems().findings);
    const auto name = [&](const std::optional<std::size_t>& column) {
        return column ? nameOf(sample, *column) : std::string("-");
    };
    return name(result->when) + "/" + name(result->time) + "/" + name(result->item) + "/" + name(result->quantity) +
           "/" + name(result->soldOut);
}

TEST(Columns, ByTheHeadersOfFourLanguages) {
    const Rows rows{{"27.11.2026", "12:30", "Pastete", "2"}, {"27.11.2026", "12:31", "Püree", "1"}};
    EXPECT_EQ(found({"Date", "Time", "Item", "Qty"}, rows), "Date/Time/Item/Qty/-");
    EXPECT_EQ(found({"Datum", "Uhrzeit", "Artikel", "Menge"}, rows), "Datum/Uhrzeit/Artikel/Menge/-");
    EXPECT_EQ(found({"Date", "Heure", "Produit", "Quantité"}, rows), "Date/Heure/Produit/Quantité/-");
    EXPECT_EQ(found({"FECHA", "HORA", "PRODUCTO", "CANTIDAD"}, rows), "FECHA/HORA/PRODUCTO/CANTIDAD/-");
}

TEST(Columns, MoneyAndNumbersOfThingsAreNotPieces) {
    EXPECT_EQ(
        found({"Receipt no", "Transaction date", "Item ID", "Item name", "Unit price", "Quantity sold", "Net amount"},
              {{"1001", "2026-11-27 12:30", "17", "Beef pie", "4.90", "2", "9.80"},
               {"1002", "2026-11-27 12:31", "18", "Mash", "2.50", "1", "2.50"}}),
        "Transaction date/-/Item name/Quantity sold/-");
}

TEST(Columns, WithoutAHeaderByWhatStandsInThem) {
    EXPECT_EQ(found({}, {{"12:30", "2026-11-27", "beef-pie", "2"}, {"12:31", "2026-11-27", "Mash", "1"}}),
              "#2/#1/#3/#4/-");
    EXPECT_EQ(found({}, {{"2026-11-27T12:30", "something", "2"}, {"2026-11-27T12:31", "other", "1"}}), "#1/-/#2/#3/-");
}

TEST(Columns, WordsThatAreGoodsSayMoreThanAHeader) {
    EXPECT_EQ(found({"date", "description", "what", "qty"},
                    {{"2026-11-27", "takeaway", "beef-pie", "2"}, {"2026-11-27", "table 4", "mash", "1"}}),
              "date/-/what/qty/-");
}

TEST(Columns, WithoutAQuantityEachRowIsOne) {
    EXPECT_EQ(
        found({"when", "item", "ticket"}, {{"2026-11-27T12:30", "beef-pie", "1"}, {"2026-11-27T12:31", "mash", "1"}}),
        "when/-/item/-/-");
}

TEST(Columns, OneColumnOfSmallNumbersIsTheQuantity) {
    EXPECT_EQ(found({"when", "item", "how many"}, {{"2026-11-27", "beef-pie", "12"}, {"2026-11-27", "mash", "8"}}),
              "when/-/item/how many/-");
}

TEST(Columns, TwoThatMayBeTheQuantityAreRefused) {
    const std::string text = found({"when", "item", "here", "away"},
                                   {{"2026-11-27", "beef-pie", "12", "3"}, {"2026-11-27", "mash", "8", "2"}});
    EXPECT_THAT(text, AllOf(HasSubstr("\"here\", \"away\""), HasSubstr("quantity")));
    Columns named;
    named.quantity = "away";
    EXPECT_EQ(found({"when", "item", "here", "away"}, {{"2026-11-27", "beef-pie", "12", "3"}}, named),
              "when/-/item/away/-");
}

TEST(Columns, SoldOutAsYesOrTime) {
    const Rows rows{{"2026-11-27", "beef-pie", "12", "1", "16:30"}, {"2026-11-28", "beef-pie", "8", "0", ""}};
    EXPECT_EQ(found({"date", "item", "qty", "sold_out"}, {{"2026-11-27", "beef-pie", "12", "1"}}),
              "date/-/item/qty/sold_out");
    EXPECT_EQ(found({"date", "item", "qty", "sold_out", "sold_out_at"}, rows), "date/-/item/qty/sold_out_at");
    EXPECT_EQ(found({"Datum", "Artikel", "Menge", "Ausverkauft", "x"}, rows), "Datum/x/Artikel/Menge/Ausverkauft");
}

TEST(Columns, ANameThatIsNotThereGetsASuggestion) {
    Columns named;
    named.item = "Artikle";
    EXPECT_THAT(found({"Datum", "Artikel", "Menge"}, {{"27.11.2026", "mash", "2"}}, named),
                AllOf(HasSubstr("no column \"Artikle\""), HasSubstr("did you mean \"Artikel\"?")));
    named.item = "#2";
    EXPECT_EQ(found({"Datum", "Artikel", "Menge"}, {{"27.11.2026", "mash", "2"}}, named), "Datum/-/Artikel/Menge/-");
    named.item = "#4";
    EXPECT_THAT(found({"Datum", "Artikel", "Menge"}, {{"27.11.2026", "mash", "2"}}, named),
                HasSubstr("no column \"#4\""));
}

TEST(Columns, NoDatesAndNoItemsAreBothSaid) {
    EXPECT_THAT(found({"a", "b"}, {{"1", "2"}, {"3", "4"}}),
                AllOf(HasSubstr("no column of dates"), HasSubstr("no column of items")));
}

TEST(Columns, YesAndNoInFourLanguages) {
    for (const char* yes : {"1", "Yes", "y", "TRUE", "ja", "oui", "Sí", "x"}) EXPECT_EQ(parseYesNo(yes), true) << yes;
    for (const char* no : {"0", "no", "N", "false", "nein", "non", "", "-"}) EXPECT_EQ(parseYesNo(no), false) << no;
    EXPECT_EQ(parseYesNo("16:30"), std::nullopt);
}

} // namespace
} // namespace piewright::sales
