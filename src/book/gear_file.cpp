// gear.toml: machines, vessels and spaces.
#include "book/kinds.h"
#include "book/writer.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 1> kTop{"gear"};
constexpr std::array<std::string_view, 15> kGear{"name",   "kind",   "count", "least",  "most",
                                                 "pieces", "decks",  "trays", "places", "heat-up",
                                                 "change", "reload", "setup", "clean",  "power"};

constexpr Bounds<int> kCounts{1, 100};
constexpr Bounds<Mass> kWeights{grams(1), kilograms(100'000)};
constexpr Bounds<int> kPieces{1, 500};
constexpr Bounds<int> kDecks{1, 50};
constexpr Bounds<int> kTrays{1, 10'000};
constexpr Bounds<int> kPlaces{1, 100};
constexpr Bounds<Seconds> kTimes{Seconds(0), Days(1)};
constexpr Bounds<Power> kPowers{Power::ofRaw(0), Power::ofRaw(1'000'000)};

struct OnlyFor {
    std::string_view key;
    std::string_view kinds;
    std::array<GearKind, 3> of; // repeated where there are fewer
};

// Keys that mean nothing for other kinds of gear.
constexpr std::array<OnlyFor, 7> kOnlyFor{
    {{"pieces", "a divider", {GearKind::Divider, GearKind::Divider, GearKind::Divider}},
     {"decks", "an oven", {GearKind::Oven, GearKind::Oven, GearKind::Oven}},
     {"trays", "an oven, a rack or a chiller", {GearKind::Oven, GearKind::Rack, GearKind::Chiller}},
     {"places", "a bench", {GearKind::Bench, GearKind::Bench, GearKind::Bench}},
     {"heat-up", "an oven", {GearKind::Oven, GearKind::Oven, GearKind::Oven}},
     {"change", "an oven", {GearKind::Oven, GearKind::Oven, GearKind::Oven}},
     {"reload", "an oven", {GearKind::Oven, GearKind::Oven, GearKind::Oven}}}};

bool needsMost(GearKind kind) {
    return kind == GearKind::Mixer || kind == GearKind::Divider || kind == GearKind::Kettle || kind == GearKind::Pan ||
           kind == GearKind::Peeler || kind == GearKind::Masher;
}

void checkKeys(Fields& fields, const Gear& gear) {
    const std::string kind(wordFor(gear.kind));
    for (const OnlyFor& only : kOnlyFor)
        if (fields.has(only.key) && std::find(only.of.begin(), only.of.end(), gear.kind) == only.of.end())
            fields.error(only.key, std::string(only.key) + " of gear of kind \"" + kind + '"',
                         "the key left out: it is for " + std::string(only.kinds));
    if (gear.kind == GearKind::Divider && !fields.has("pieces"))
        fields.missing("pieces", "how many pieces it presses from one head");
    if (gear.kind == GearKind::Oven && !fields.has("decks")) fields.missing("decks", "how many decks it has");
    if (gear.kind == GearKind::Oven && !fields.has("trays")) fields.missing("trays", "how many trays one deck takes");
    if (gear.kind == GearKind::Rack && !fields.has("trays")) fields.missing("trays", "how many trays it takes");
    if (gear.kind == GearKind::Bench && !fields.has("places")) fields.missing("places", "how many can work at it");
    if (needsMost(gear.kind) && !fields.has("most"))
        fields.missing("most", "the most it can work with: " + wantOf<Mass>());
    if (gear.least && gear.most && *gear.least > *gear.most)
        fields.error("least", "least is more than most", "at most " + writeValue(*gear.most));
}

Gear readOne(Reading& reading, const Node& table, const std::string& path) {
    Fields fields(reading, table, path, kGear);
    Gear gear;
    fields.need("name", gear.name);
    const bool known = fields.need("kind", gear.kind);
    fields.take("count", gear.count, kCounts);
    fields.take("least", gear.least, kWeights);
    fields.take("most", gear.most, kWeights);
    fields.take("pieces", gear.pieces, kPieces);
    fields.take("decks", gear.decks, kDecks);
    fields.take("trays", gear.trays, kTrays);
    fields.take("places", gear.places, kPlaces);
    fields.take("heat-up", gear.heatUp, kTimes);
    fields.take("change", gear.change, kTimes);
    fields.take("reload", gear.reload, kTimes);
    fields.take("setup", gear.setup, kTimes);
    fields.take("clean", gear.clean, kTimes);
    fields.take("power", gear.power, kPowers);
    if (known) checkKeys(fields, gear);
    return gear;
}

} // namespace

void readGear(Reading& reading, const Node& file, Book& book) {
    Fields top(reading, file, {}, kTop);
    top.eachNamed("gear", [&](const std::string& name, const Node& node, const std::string& path) {
        const std::size_t before = reading.report.errors();
        const GearId id(name);
        Gear gear = readOne(reading, node, path);
        gear.id = id;
        book.gear.emplace(id, std::move(gear));
        if (reading.report.errors() != before) reading.report.flaw(path);
    });
}

std::string printGear(const Book& book) {
    Writer writer;
    const Gear plain;
    for (const auto& [id, gear] : book.gear) {
        Entries entries;
        entries.put("name", gear.name);
        entries.put("kind", gear.kind);
        entries.putUnless("count", gear.count, plain.count);
        entries.put("least", gear.least);
        entries.put("most", gear.most);
        entries.putUnless("pieces", gear.pieces, plain.pieces);
        entries.putUnless("decks", gear.decks, plain.decks);
        entries.putUnless("trays", gear.trays, plain.trays);
        entries.putUnless("places", gear.places, plain.places);
        entries.putUnless("heat-up", gear.heatUp, plain.heatUp);
        entries.putUnless("change", gear.change, plain.change);
        entries.putUnless("reload", gear.reload, plain.reload);
        entries.putUnless("setup", gear.setup, plain.setup);
        entries.putUnless("clean", gear.clean, plain.clean);
        entries.put("power", gear.power);
        writer.table("gear." + id.name(), entries);
    }
    return writer.take();
}

std::span<const KnownTable> gearTables() {
    static constexpr std::array<KnownTable, 1> kTables{{{"gear.NAME", kGear}}};
    return kTables;
}

} // namespace piewright::book
