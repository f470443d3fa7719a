// hands.toml: the people, and what there is to be skilled at.
#include "book/kinds.h"
#include "book/writer.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 2> kTop{"skill", "hand"};
constexpr std::array<std::string_view, 6> kHand{"name", "skills", "pay", "under-18", "shift", "away"};
constexpr std::array<std::string_view, 3> kShift{"days", "at", "breaks"};
constexpr std::array<std::string_view, 2> kBreak{"length", "between"};
constexpr std::array<std::string_view, 2> kAway{"from", "to"};
constexpr std::array<std::string_view, 1> kAnySkill{"SKILL"};

constexpr Bounds<Share> kPaces{percent(10), percent(300)};
constexpr Bounds<Minutes> kBreakLengths{Minutes(1), Minutes(240)};
constexpr MoneyBounds kPay{0, 100'000};
constexpr std::size_t kMostShifts = 14;
constexpr std::size_t kMostDays = 7;
constexpr std::size_t kMostBreaks = 10;
constexpr std::size_t kMostAway = 100;

void readBreak(Reading& reading, const Node& table, const std::string& path, Shift& shift) {
    Fields fields(reading, table, path, kBreak);
    Break rest;
    fields.need("length", rest.length, kBreakLengths);
    fields.need("between", rest.between);
    shift.breaks.push_back(rest);
}

void readShift(Reading& reading, const Node& table, const std::string& path, Hand& hand) {
    Fields fields(reading, table, path, kShift);
    Shift shift;
    if (!fields.has("days")) fields.missing("days", "a list of days, as in [\"tue\", \"wed\"]");
    if (fields.takeList("days", shift.days, kMostDays, true) && fields.find("days")->items.empty())
        fields.error("days", "a shift on no day", "at least one, as in [\"tue\", \"wed\"]");
    fields.need("at", shift.at);
    fields.eachItem("breaks", kMostBreaks,
                    [&](const Node& node, const std::string& at) { readBreak(reading, node, at, shift); });
    hand.shifts.push_back(std::move(shift));
}

void readAway(Reading& reading, const Node& table, const std::string& path, Hand& hand) {
    Fields fields(reading, table, path, kAway);
    Away away;
    const bool from = fields.need("from", away.from);
    if (!fields.need("to", away.to) || !from) return;
    if (away.to < away.from) fields.error("to", "a last day before the first", writeValue(away.from) + " or later");
    if (!hand.away.empty() && away.from <= hand.away.back().to)
        fields.error("from", "not after the last day away before it", "days away in order, apart");
    hand.away.push_back(away);
}

void readSkills(Fields& fields, Hand& hand) {
    fields.eachNamed("skills", [&](const std::string& name, const Node& node, const std::string& path) {
        Share pace = percent(100);
        fields.value(node, path, pace, kPaces);
        hand.skills.emplace(SkillId(name), pace);
    });
}

Hand readHand(Reading& reading, const Node& table, const std::string& path) {
    Fields fields(reading, table, path, kHand);
    Hand hand;
    fields.need("name", hand.name);
    readSkills(fields, hand);
    fields.needMoney("pay", hand.pay, kPay);
    fields.take("under-18", hand.under18);
    fields.eachItem("shift", kMostShifts,
                    [&](const Node& node, const std::string& at) { readShift(reading, node, at, hand); });
    fields.eachItem("away", kMostAway,
                    [&](const Node& node, const std::string& at) { readAway(reading, node, at, hand); });
    return hand;
}

Entries shiftEntries(const Shift& shift) {
    Entries entries;
    entries.putList("days", shift.days);
    entries.put("at", shift.at);
    std::vector<Entries> breaks;
    for (const Break& rest : shift.breaks) {
        breaks.emplace_back();
        breaks.back().put("length", rest.length);
        breaks.back().put("between", rest.between);
    }
    entries.putTables("breaks", breaks);
    return entries;
}

Entries handEntries(const Hand& hand) {
    Entries entries;
    entries.put("name", hand.name);
    Entries skills;
    for (const auto& [skill, pace] : hand.skills) skills.put(skill.name(), pace);
    if (!skills.empty()) entries.putRaw("skills", skills.inlineTable());
    entries.put("pay", hand.pay);
    entries.putUnless("under-18", hand.under18, false);
    std::vector<Entries> away;
    for (const Away& days : hand.away) {
        away.emplace_back();
        away.back().put("from", days.from);
        away.back().put("to", days.to);
    }
    entries.putTables("away", away);
    return entries;
}

} // namespace

void readHands(Reading& reading, const Node& file, Book& book) {
    Fields top(reading, file, {}, kTop);
    top.eachNamed("skill", [&](const std::string& name, const Node& node, const std::string& path) {
        std::string said;
        top.value(node, path, said);
        book.skills.emplace(SkillId(name), std::move(said));
    });
    top.eachNamed("hand", [&](const std::string& name, const Node& node, const std::string& path) {
        const std::size_t before = reading.report.errors();
        const HandId id(name);
        Hand hand = readHand(reading, node, path);
        hand.id = id;
        book.hands.emplace(id, std::move(hand));
        if (reading.report.errors() != before) reading.report.flaw(path);
    });
}

std::string printHands(const Book& book) {
    Writer writer;
    if (!book.skills.empty()) {
        Entries entries;
        for (const auto& [id, name] : book.skills) entries.put(id.name(), name);
        writer.table("skill", entries);
    }
    for (const auto& [id, hand] : book.hands) {
        const std::string header = "hand." + id.name();
        writer.table(header, handEntries(hand));
        for (const Shift& shift : hand.shifts) writer.listTable(header + ".shift", shiftEntries(shift));
    }
    return writer.take();
}

std::span<const KnownTable> handTables() {
    static constexpr std::array<KnownTable, 6> kTables{{{"skill", kAnySkill},
                                                        {"hand.NAME", kHand},
                                                        {"hand.NAME.skills", kAnySkill},
                                                        {"hand.NAME.shift", kShift},
                                                        {"hand.NAME.shift.breaks", kBreak},
                                                        {"hand.NAME.away", kAway}}};
    return kTables;
}

} // namespace piewright::book
