// stuffs.toml: what the house buys or uses.
#include "book/kinds.h"
#include "book/writer.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 1> kTop{"stuff"};
constexpr std::array<std::string_view, 12> kStuff{"name",      "measure",     "density", "each",
                                                  "packs",     "storage",     "life",    "life-opened",
                                                  "allergens", "composition", "species", "water"};
constexpr std::array<std::string_view, 6> kPack{"size", "volume", "count", "price", "supplier", "name"};

constexpr Bounds<Density> kDensities{Density::ofRaw(300'000), gramsPerMillilitre(2)};
constexpr Bounds<Mass> kPieces{milligrams(10), kilograms(100)};
constexpr Bounds<Mass> kPackSizes{grams(1), kilograms(10'000)};
constexpr Bounds<Volume> kPackVolumes{millilitres(1), litres(10'000)};
constexpr Bounds<int> kPackCounts{1, 1'000'000};
constexpr Bounds<Seconds> kLives{Seconds(3'600), Days(7'300)};
constexpr std::size_t kMostPacks = 50;
constexpr std::size_t kMostAllergens = 40;

std::string_view packKey(Measure measure) {
    switch (measure) {
    case Measure::Volume:
        return "volume";
    case Measure::Count:
        return "count";
    case Measure::Mass:
        break;
    }
    return "size";
}

void readPack(Reading& reading, const Node& table, const std::string& path, Stuff& stuff) {
    Fields fields(reading, table, path, kPack);
    Pack pack;
    const std::string_view right = packKey(stuff.measure);
    bool wrong = false;
    for (const std::string_view key : {"size", "volume", "count"}) {
        if (key == right || !fields.has(key)) continue;
        wrong = true;
        fields.error(key,
                     "a pack by " + std::string(key) + " of a stuff measured by " + std::string(wordFor(stuff.measure)),
                     std::string(right) + ", or another measure for the stuff");
    }
    const bool asked = fields.has(right) || !wrong; // else the wrong one says enough
    if (asked && stuff.measure == Measure::Mass) fields.need("size", pack.mass, kPackSizes);
    if (asked && stuff.measure == Measure::Volume) {
        Volume volume;
        if (fields.need("volume", volume, kPackVolumes)) pack.volume = volume;
        if (pack.volume && stuff.density) pack.mass = *pack.volume * *stuff.density;
    }
    if (asked && stuff.measure == Measure::Count) {
        int count = 0;
        if (fields.need("count", count, kPackCounts)) pack.count = count;
        if (pack.count && stuff.each) pack.mass = *stuff.each * *pack.count;
    }
    fields.needMoney("price", pack.price);
    fields.need("supplier", pack.supplier);
    fields.take("name", pack.name);
    stuff.packs.push_back(std::move(pack));
}

Stuff readStuff(Reading& reading, const Node& table, const std::string& path) {
    Fields fields(reading, table, path, kStuff);
    Stuff stuff;
    fields.need("name", stuff.name);
    fields.take("measure", stuff.measure);
    if (stuff.measure == Measure::Volume)
        fields.has("density")
            ? void(fields.take("density", stuff.density, kDensities))
            : fields.missing("density", "its density, as it is measured by volume: " + wantOf<Density>());
    else
        fields.take("density", stuff.density, kDensities);
    if (stuff.measure == Measure::Count && !fields.has("each"))
        fields.missing("each", "the weight of one, as it is counted: " + wantOf<Mass>());
    fields.take("each", stuff.each, kPieces);
    fields.eachItem("packs", kMostPacks,
                    [&](const Node& node, const std::string& at) { readPack(reading, node, at, stuff); });
    fields.take("storage", stuff.storage);
    fields.take("life", stuff.life, kLives);
    fields.take("life-opened", stuff.lifeOpened, kLives);
    fields.takeList("allergens", stuff.allergens, kMostAllergens, true);
    fields.take("composition", stuff.composition);
    fields.take("species", stuff.species);
    fields.take("water", stuff.water);
    return stuff;
}

Entries packEntries(const Pack& pack) {
    Entries entries;
    if (pack.volume)
        entries.put("volume", pack.volume);
    else if (pack.count)
        entries.put("count", pack.count);
    else
        entries.put("size", pack.mass);
    entries.put("price", pack.price);
    entries.put("supplier", pack.supplier);
    entries.putText("name", pack.name);
    return entries;
}

} // namespace

void readStuffs(Reading& reading, const Node& file, Book& book) {
    Fields top(reading, file, {}, kTop);
    top.eachNamed("stuff", [&](const std::string& name, const Node& node, const std::string& path) {
        const std::size_t before = reading.report.errors();
        const StuffId id(name);
        Stuff stuff = readStuff(reading, node, path);
        stuff.id = id;
        book.stuffs.emplace(id, std::move(stuff));
        if (reading.report.errors() != before) reading.report.flaw(path);
    });
}

std::string printStuffs(const Book& book) {
    Writer writer;
    const Stuff plain;
    for (const auto& [id, stuff] : book.stuffs) {
        Entries entries;
        entries.put("name", stuff.name);
        entries.putUnless("measure", stuff.measure, plain.measure);
        entries.put("density", stuff.density);
        entries.put("each", stuff.each);
        std::vector<Entries> packs;
        packs.reserve(stuff.packs.size());
        for (const Pack& pack : stuff.packs) packs.push_back(packEntries(pack));
        entries.putTables("packs", packs);
        entries.putUnless("storage", stuff.storage, plain.storage);
        entries.put("life", stuff.life);
        entries.put("life-opened", stuff.lifeOpened);
        entries.putList("allergens", stuff.allergens);
        entries.putText("composition", stuff.composition);
        entries.putText("species", stuff.species);
        entries.putUnless("water", stuff.water, plain.water);
        writer.table("stuff." + id.name(), entries);
    }
    return writer.take();
}

std::span<const KnownTable> stuffTables() {
    static constexpr std::array<KnownTable, 2> kTables{{{"stuff.NAME", kStuff}, {"stuff.NAME.packs", kPack}}};
    return kTables;
}

} // namespace piewright::book
