// goods.toml: what the house sells.
#include "book/kinds.h"
#include "book/writer.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 1> kTop{"good"};
constexpr std::array<std::string_view, 20> kGood{
    "name", "family", "price", "tax",    "label", "tin",     "base",     "lid",   "deposits", "bake-loss",
    "oven", "bake",   "route", "served", "hold",  "sold-on", "leftover", "least", "most",     "every-at-most"};
constexpr std::array<std::string_view, 3> kSheet{"paste", "thickness", "trim"};
constexpr std::array<std::string_view, 3> kDeposit{"formula", "weight", "volume"};

constexpr Bounds<Length> kThicknesses{micrometres(500), millimetres(50)};
constexpr Bounds<Share> kTrims{percent(0), percent(60)};
constexpr Bounds<Mass> kDepositWeights{milligrams(100), kilograms(20)};
constexpr Bounds<Volume> kDepositVolumes{microlitres(100), litres(20)};
constexpr Bounds<Share> kBakeLosses{percent(0), percent(60)};
constexpr Bounds<Celsius> kOvens{celsius(80), celsius(350)};
constexpr Bounds<Seconds> kBakes{Seconds(60), Seconds(12 * 3'600)};
constexpr Bounds<Seconds> kHolds{Seconds(60), Days(60)};
constexpr Bounds<Seconds> kEvery{Seconds(300), Days(1)};
constexpr Bounds<int> kAmounts{0, 100'000};
constexpr MoneyBounds kLeftovers{-10'000, 1'000'000};
constexpr std::size_t kMostDeposits = 20;
constexpr std::size_t kMostDays = 7;

void takeSheet(Fields& fields, std::string_view key, std::optional<Sheet>& into) {
    const Node* node = fields.find(key);
    if (node == nullptr) return;
    Fields sheet(fields.reading(), *node, fields.path(key), kSheet);
    into.emplace();
    sheet.need("paste", into->paste);
    sheet.need("thickness", into->thickness, kThicknesses);
    sheet.take("trim", into->trim, kTrims);
}

void readDeposit(Reading& reading, const Node& table, const std::string& path, Good& good) {
    Fields fields(reading, table, path, kDeposit);
    Deposit deposit;
    fields.need("formula", deposit.formula);
    if (fields.has("weight") == fields.has("volume"))
        fields.error("weight", fields.has("weight") ? "both a weight and a volume" : "neither a weight nor a volume",
                     "either weight = \"150 g\" or volume = \"110 ml\"");
    fields.take("weight", deposit.weight, kDepositWeights);
    fields.take("volume", deposit.volume, kDepositVolumes);
    good.deposits.push_back(std::move(deposit));
}

Good readGood(Reading& reading, const Node& table, const std::string& path) {
    Fields fields(reading, table, path, kGood);
    Good good;
    fields.need("name", good.name);
    fields.need("family", good.family);
    const bool priced = fields.needMoney("price", good.price);
    fields.take("tax", good.taxClass);
    fields.take("label", good.labelName);
    fields.take("tin", good.tin);
    takeSheet(fields, "base", good.base);
    takeSheet(fields, "lid", good.lid);
    if (!fields.has("deposits"))
        fields.missing("deposits", "a list of what is put in, as in [{ formula = \"mash\", weight = \"200 g\" }]");
    const bool listed = fields.eachItem("deposits", kMostDeposits, [&](const Node& node, const std::string& at) {
        readDeposit(reading, node, at, good);
    });
    if (listed && good.deposits.empty()) fields.error("deposits", "nothing is put in", "at least one deposit");
    fields.take("bake-loss", good.bakeLoss, kBakeLosses);
    fields.take("oven", good.ovenAt, kOvens);
    fields.take("bake", good.bake, kBakes);
    fields.need("route", good.route);
    fields.take("served", good.served);
    fields.need("hold", good.hold, kHolds);
    fields.takeList("sold-on", good.soldOn, kMostDays, true);
    good.leftover = Money(0, reading.currency.value_or(Currency{}));
    if (fields.takeMoney("leftover", good.leftover, kLeftovers) && priced &&
        good.leftover.currency() == good.price.currency() && good.leftover > good.price)
        fields.error("leftover", "an unsold one worth more than its price", "at most " + writeValue(good.price));
    fields.take("least", good.least, kAmounts);
    fields.take("most", good.most, kAmounts);
    if (good.least && good.most && *good.least > *good.most)
        fields.error("least", "least is more than most", "at most " + std::to_string(*good.most));
    fields.take("every-at-most", good.everyAtMost, kEvery);
    return good;
}

std::string sheetToml(const Sheet& sheet) {
    Entries entries;
    entries.put("paste", sheet.paste);
    entries.put("thickness", sheet.thickness);
    entries.putUnless("trim", sheet.trim, Share{});
    return entries.inlineTable();
}

Entries depositEntries(const Deposit& deposit) {
    Entries entries;
    entries.put("formula", deposit.formula);
    if (deposit.volume)
        entries.put("volume", deposit.volume);
    else
        entries.put("weight", deposit.weight);
    return entries;
}

Entries goodEntries(const Good& good) {
    const Good plain;
    Entries entries;
    entries.put("name", good.name);
    entries.put("family", good.family);
    entries.put("price", good.price);
    entries.putText("tax", good.taxClass);
    entries.putText("label", good.labelName);
    entries.put("tin", good.tin);
    if (good.base) entries.putRaw("base", sheetToml(*good.base));
    if (good.lid) entries.putRaw("lid", sheetToml(*good.lid));
    std::vector<Entries> deposits;
    deposits.reserve(good.deposits.size());
    for (const Deposit& deposit : good.deposits) deposits.push_back(depositEntries(deposit));
    entries.putTables("deposits", deposits);
    entries.putUnless("bake-loss", good.bakeLoss, plain.bakeLoss);
    entries.put("oven", good.ovenAt);
    entries.put("bake", good.bake);
    entries.put("route", good.route);
    entries.putUnless("served", good.served, plain.served);
    entries.put("hold", good.hold);
    entries.putList("sold-on", good.soldOn);
    entries.putUnless("leftover", good.leftover, Money(0, good.leftover.currency()));
    entries.put("least", good.least);
    entries.put("most", good.most);
    entries.put("every-at-most", good.everyAtMost);
    return entries;
}

} // namespace

void readGoods(Reading& reading, const Node& file, Book& book) {
    Fields top(reading, file, {}, kTop);
    top.eachNamed("good", [&](const std::string& name, const Node& node, const std::string& path) {
        const std::size_t before = reading.report.errors();
        const GoodId id(name);
        Good good = readGood(reading, node, path);
        good.id = id;
        book.goods.emplace(id, std::move(good));
        if (reading.report.errors() != before) reading.report.flaw(path);
    });
}

std::string printGoods(const Book& book) {
    Writer writer;
    for (const auto& [id, good] : book.goods) writer.table("good." + id.name(), goodEntries(good));
    return writer.take();
}

std::span<const KnownTable> goodTables() {
    static constexpr std::array<KnownTable, 4> kTables{{{"good.NAME", kGood},
                                                        {"good.NAME.base", kSheet},
                                                        {"good.NAME.lid", kSheet},
                                                        {"good.NAME.deposits", kDeposit}}};
    return kTables;
}

} // namespace piewright::book
