// house.toml: the house itself, its hours, its usual temperatures, and what it makes of the rule book.
#include "book/kinds.h"
#include "book/writer.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 6> kTop{"house", "hours", "special", "usual", "tighten", "confirm"};
constexpr std::array<std::string_view, 9> kHouse{"name",       "place", "zone",  "currency",    "rules",
                                                 "scale-step", "paper", "units", "energy-price"};
constexpr std::array<std::string_view, 7> kDays{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
constexpr std::array<std::string_view, 3> kSpecial{"date", "hours", "note"};
constexpr std::array<std::string_view, 5> kUsual{"room", "flour", "fat", "tap", "ice"};
constexpr std::array<std::string_view, 1> kAnyRule{"RULE"};

constexpr Bounds<Mass> kScaleSteps{milligrams(10), kilograms(1)};
constexpr MoneyBounds kEnergyPrices{0, 100};
constexpr Bounds<Celsius> kRooms{celsius(-10), celsius(50)};
constexpr Bounds<Celsius> kIngredients{celsius(-30), celsius(120)};
constexpr Bounds<Celsius> kTaps{celsius(0), celsius(60)};
constexpr Bounds<Celsius> kIces{celsius(-40), celsius(0)};
constexpr std::size_t kMostSpans = 8; // a day
constexpr std::size_t kMostSpecialDays = 400;

void readHours(Reading& reading, const Node& table, House& house) {
    Fields fields(reading, table, "hours", kDays);
    for (unsigned day = 0; day < kDays.size(); ++day) {
        const std::size_t before = reading.report.errors();
        const std::string name = toText(Weekday(day));
        fields.takeList(name, house.hours.at(day), kMostSpans);
        if (reading.report.errors() != before) reading.report.flaw(fields.path(name));
    }
}

void readSpecial(Reading& reading, const Node& table, const std::string& path, House& house) {
    Fields fields(reading, table, path, kSpecial);
    const std::size_t before = reading.report.errors();
    SpecialDay day;
    fields.need("date", day.date);
    if (!fields.has("hours"))
        fields.missing("hours", "a list of hours such as [\"10:00-15:00\"], or [] for a day that is shut");
    fields.takeList("hours", day.hours, kMostSpans);
    fields.take("note", day.note);
    house.special.push_back(std::move(day));
    if (reading.report.errors() != before) reading.report.flaw(path);
}

void readUsual(Reading& reading, const Node& table, UsualTemperatures& usual) {
    Fields fields(reading, table, "usual", kUsual);
    fields.take("room", usual.room, kRooms);
    fields.take("flour", usual.flour, kIngredients);
    fields.take("fat", usual.fat, kIngredients);
    fields.take("tap", usual.tap, kTaps);
    fields.take("ice", usual.ice, kIces);
}

} // namespace

void readHouse(Reading& reading, const Node& file, Book& book) {
    House& house = book.house;
    Fields top(reading, file, {}, kTop);
    if (const Node* table = top.find("house")) {
        Fields fields(reading, *table, "house", kHouse);
        fields.need("name", house.name);
        fields.take("place", house.place);
        fields.need("zone", house.zone);
        if (fields.need("currency", house.currency)) reading.currency = house.currency;
        RuleId rules;
        if (fields.need("rules", rules)) house.ruleBook = rules.name();
        fields.take("scale-step", house.scaleStep, kScaleSteps);
        fields.take("paper", house.paper);
        fields.take("units", house.shown);
        house.energyPrice = Money(0, house.currency);
        fields.takeMoney("energy-price", house.energyPrice, kEnergyPrices);
    } else {
        top.missing("house", "a table [house] with at least name, zone, currency and rules");
    }
    if (const Node* table = top.find("hours"))
        readHours(reading, *table, house);
    else
        top.missing("hours", "a table [hours] with the selling hours of each day, as in tue = [\"11:00-19:00\"]");
    top.eachItem("special", kMostSpecialDays,
                 [&](const Node& node, const std::string& path) { readSpecial(reading, node, path, house); });
    if (const Node* table = top.find("usual")) readUsual(reading, *table, house.usual);
}

std::string printHouse(const Book& book) {
    const House& house = book.house;
    const House plain;
    Writer writer;
    Entries entries;
    entries.put("name", house.name);
    entries.putText("place", house.place);
    entries.put("zone", house.zone);
    entries.put("currency", house.currency);
    entries.putText("rules", house.ruleBook);
    entries.putUnless("scale-step", house.scaleStep, plain.scaleStep);
    entries.putUnless("paper", house.paper, plain.paper);
    entries.putUnless("units", house.shown, plain.shown);
    entries.putUnless("energy-price", house.energyPrice, Money(0, house.currency));
    writer.table("house", entries);

    Entries hours;
    for (const std::string_view day : kDays) hours.putList(day, house.hours.at(parseWeekday(day)->c_encoding()));
    writer.table("hours", hours);

    for (const SpecialDay& day : house.special) {
        Entries special;
        special.put("date", day.date);
        special.putRaw("hours", "[]");
        if (!day.hours.empty()) {
            special = {};
            special.put("date", day.date);
            special.putList("hours", day.hours);
        }
        special.putText("note", day.note);
        writer.listTable("special", special);
    }

    Entries usual;
    usual.putUnless("room", house.usual.room, plain.usual.room);
    usual.putUnless("flour", house.usual.flour, plain.usual.flour);
    usual.putUnless("fat", house.usual.fat, plain.usual.fat);
    usual.putUnless("tap", house.usual.tap, plain.usual.tap);
    usual.putUnless("ice", house.usual.ice, plain.usual.ice);
    if (!usual.empty()) writer.table("usual", usual);

    Entries tighten;
    Entries confirm;
    for (const Rule& rule : book.rules.rules) {
        if (rule.tightened) std::visit([&](const auto& value) { tighten.put(rule.id.name(), value); }, rule.value);
        confirm.putText(rule.id.name(), rule.confirmed);
    }
    if (!tighten.empty()) writer.table("tighten", tighten);
    if (!confirm.empty()) writer.table("confirm", confirm);
    return writer.take();
}

std::span<const KnownTable> houseTables() {
    static constexpr std::array<KnownTable, 6> kTables{{{"house", kHouse},
                                                        {"hours", kDays},
                                                        {"special", kSpecial},
                                                        {"usual", kUsual},
                                                        {"tighten", kAnyRule},
                                                        {"confirm", kAnyRule}}};
    return kTables;
}

} // namespace piewright::book
