// tins.toml: inside measures of the tins.
#include "book/kinds.h"
#include "book/writer.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 1> kTop{"tin"};
constexpr std::array<std::string_view, 9> kTin{"name",   "shape",    "mouth",    "floor", "depth",
                                               "corner", "overhang", "per-tray", "owned"};

constexpr Bounds<Length> kSizes{millimetres(10), millimetres(1'000)};
constexpr Bounds<Length> kDepths{millimetres(5), millimetres(500)};
constexpr Bounds<Length> kCorners{millimetres(0), millimetres(500)};
constexpr Bounds<Length> kOverhangs{millimetres(0), millimetres(100)};
constexpr Bounds<int> kPerTray{1, 1'000};
constexpr Bounds<int> kOwned{0, 1'000'000};

bool isRound(TinShape shape) { return shape == TinShape::Frustum || shape == TinShape::Cylinder; }

// One measure for a round tin, a length and a width for the others.
bool takeSize(Fields& fields, std::string_view key, TinShape shape, Length& length, Length& width) {
    const Node* node = fields.find(key);
    if (node == nullptr) return false;
    if (isRound(shape)) {
        if (!fields.value(*node, fields.path(key), length, kSizes)) return false;
        width = length;
        return true;
    }
    if (node->kind != Node::Kind::List || node->items.size() != 2) {
        fields.error(key, seen(*node) + " is not a length and a width",
                     "a list of the two, as in [\"190 mm\", \"135 mm\"]");
        return false;
    }
    const bool lengthRead = fields.value(node->items[0], fields.path(key) + "[0]", length, kSizes);
    return fields.value(node->items[1], fields.path(key) + "[1]", width, kSizes) && lengthRead;
}

Tin readTin(Reading& reading, const Node& table, const std::string& path) {
    Fields fields(reading, table, path, kTin);
    Tin tin;
    fields.need("name", tin.name);
    const bool shaped = fields.need("shape", tin.shape);
    if (!fields.has("mouth")) fields.missing("mouth", "its mouth: " + wantOf<Length>());
    if (shaped && takeSize(fields, "mouth", tin.shape, tin.mouthLength, tin.mouthWidth)) {
        tin.floorLength = tin.mouthLength;
        tin.floorWidth = tin.mouthWidth;
        if (tin.shape == TinShape::Frustum && !fields.has("floor")) fields.missing("floor", wantOf<Length>());
        if (tin.shape == TinShape::Cylinder && fields.has("floor"))
            fields.error("floor", "a floor of its own for a cylinder", "shape = \"frustum\", or no floor");
        takeSize(fields, "floor", tin.shape, tin.floorLength, tin.floorWidth);
    }
    fields.need("depth", tin.depth, kDepths);
    if (fields.take("corner", tin.corner, kCorners) && shaped && tin.shape != TinShape::Rectangle)
        fields.error("corner", "a corner radius for a tin without corners", "shape = \"rectangle\", or no corner");
    fields.take("overhang", tin.overhang, kOverhangs);
    fields.need("per-tray", tin.perTray, kPerTray);
    fields.take("owned", tin.owned, kOwned);
    return tin;
}

void putSize(Entries& entries, std::string_view key, TinShape shape, Length length, Length width) {
    if (isRound(shape))
        entries.put(key, length);
    else
        entries.putRaw(key, Entries::listOf({writeValue(length), writeValue(width)}));
}

} // namespace

void readTins(Reading& reading, const Node& file, Book& book) {
    Fields top(reading, file, {}, kTop);
    top.eachNamed("tin", [&](const std::string& name, const Node& node, const std::string& path) {
        const std::size_t before = reading.report.errors();
        const TinId id(name);
        Tin tin = readTin(reading, node, path);
        tin.id = id;
        book.tins.emplace(id, std::move(tin));
        if (reading.report.errors() != before) reading.report.flaw(path);
    });
}

std::string printTins(const Book& book) {
    Writer writer;
    for (const auto& [id, tin] : book.tins) {
        Entries entries;
        entries.put("name", tin.name);
        entries.put("shape", tin.shape);
        putSize(entries, "mouth", tin.shape, tin.mouthLength, tin.mouthWidth);
        if (tin.shape != TinShape::Cylinder) putSize(entries, "floor", tin.shape, tin.floorLength, tin.floorWidth);
        entries.put("depth", tin.depth);
        entries.putUnless("corner", tin.corner, Length{});
        entries.putUnless("overhang", tin.overhang, Length{});
        entries.put("per-tray", tin.perTray);
        entries.putUnless("owned", tin.owned, 0);
        writer.table("tin." + id.name(), entries);
    }
    return writer.take();
}

std::span<const KnownTable> tinTables() {
    static constexpr std::array<KnownTable, 1> kTables{{{"tin.NAME", kTin}}};
    return kTables;
}

} // namespace piewright::book
