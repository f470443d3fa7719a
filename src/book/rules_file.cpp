// rules.toml, and the rule books that come with the program: limits as data, each with its source.
#include "book/rules_file.h"

#include "book/kinds.h"
#include "book/writer.h"
#include "finding/suggest.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 2> kTop{"rules", "rule"};
constexpr std::array<std::string_view, 2> kRules{"name", "place"};
constexpr std::array<std::string_view, 5> kRule{"what", "value", "bound", "source", "confidence"};

constexpr Bounds<Celsius> kTemperatures{celsius(-40), celsius(150)};
constexpr Bounds<Seconds> kTimes{Seconds(1), Days(14)};
constexpr std::string_view kHouseSource = "the house's own limit";

std::vector<std::string> names() {
    std::vector<std::string> all;
    for (const KnownRule& rule : knownRules()) all.emplace_back(rule.id);
    return all;
}

std::string listed(const std::vector<std::string>& all) {
    std::string text;
    for (const std::string& name : all) text += (text.empty() ? "" : ", ") + name;
    return text;
}

bool takeValue(Fields& fields, const Node& node, const std::string& path, const KnownRule& known, RuleValue& into) {
    if (known.temperature) {
        Celsius value;
        if (!fields.value(node, path, value, kTemperatures)) return false;
        into = value;
        return true;
    }
    Seconds value{};
    if (!fields.value(node, path, value, kTimes)) return false;
    into = value;
    return true;
}

void readRule(Reading& reading, const Node& table, const std::string& path, const RuleId& id, RuleBook& rules) {
    Fields fields(reading, table, path, kRule);
    const KnownRule* known = knownRule(id);
    if (known == nullptr) {
        fields.error(table, path, inQuotes(id.name()) + " is no known rule", "one of " + listed(names()),
                     didYouMean(id.name(), names()));
        return;
    }
    Rule rule;
    rule.id = id;
    fields.need("what", rule.what);
    const Node* value = fields.find("value");
    if (value == nullptr)
        fields.missing("value", known->temperature ? wantOf<Celsius>() : wantOf<Seconds>());
    else
        takeValue(fields, *value, fields.path("value"), *known, rule.value);
    if (fields.need("bound", rule.bound) && rule.bound != known->bound)
        fields.error("bound", "the value is a " + std::string(wordFor(known->bound)) + " for this rule",
                     writeValue(known->bound));
    rule.bound = known->bound;
    fields.need("source", rule.source);
    fields.need("confidence", rule.confidence);
    rules.rules.push_back(std::move(rule));
}

std::string shownValue(const RuleValue& value) {
    return std::visit([](const auto& each) { return exactText(each); }, value);
}

Rule* findRule(RuleBook& rules, const RuleId& id) {
    for (Rule& rule : rules.rules)
        if (rule.id == id) return &rule;
    return nullptr;
}

void tighten(Fields& fields, const Node& node, const std::string& path, const RuleId& id, RuleBook& rules) {
    const KnownRule* known = knownRule(id);
    if (known == nullptr) {
        fields.error(node, path, inQuotes(id.name()) + " is no known rule", "one of " + listed(names()),
                     didYouMean(id.name(), names()));
        return;
    }
    RuleValue value;
    if (!takeValue(fields, node, path, *known, value)) return;
    Rule* rule = findRule(rules, id);
    if (rule == nullptr) {
        rules.rules.push_back({id,
                               std::string(known->what),
                               known->bound,
                               value,
                               std::string(kHouseSource),
                               Confidence::Confirmed,
                               true,
                               {},
                               {}});
        return;
    }
    if (stricter(rule->bound, rule->value, value)) {
        fields.error(node, path, seen(node) + " is looser than the rule book allows",
                     std::string(rule->bound == Bound::Least ? "at least " : "at most ") + shownValue(rule->value) +
                         ": " + rule->source);
        return;
    }
    if (value == rule->value) return;
    rule->before = rule->value;
    rule->value = value;
    rule->tightened = true;
}

void confirm(Fields& fields, const Node& node, const std::string& path, const RuleId& id, RuleBook& rules) {
    std::string said;
    if (!fields.value(node, path, said)) return;
    Rule* rule = findRule(rules, id);
    if (rule == nullptr) {
        std::vector<std::string> stated;
        stated.reserve(rules.rules.size());
        for (const Rule& each : rules.rules) stated.push_back(each.id.name());
        fields.error(node, path, inQuotes(id.name()) + " is no rule of the rule book in force",
                     stated.empty() ? "a rule it states" : "one of " + listed(stated), didYouMean(id.name(), stated));
        return;
    }
    rule->confidence = Confidence::Confirmed;
    rule->confirmed = std::move(said);
}

} // namespace

void readRules(Reading& reading, const Node& file, Book& book) { book.rules = readRuleBook(reading, file); }

RuleBook readRuleBook(Reading& reading, const Node& file) {
    RuleBook rules;
    Fields top(reading, file, {}, kTop);
    if (const Node* table = top.find("rules")) {
        Fields fields(reading, *table, "rules", kRules);
        fields.need("name", rules.name);
        fields.need("place", rules.place);
    } else {
        top.missing("rules", "a table [rules] with name and place");
    }
    top.eachNamed("rule", [&](const std::string& name, const Node& node, const std::string& path) {
        readRule(reading, node, path, RuleId(name), rules);
    });
    return rules;
}

void applyHouseRules(Reading& reading, const Node& houseFile, RuleBook& rules) {
    static constexpr std::array<std::string_view, 2> kTables{"tighten", "confirm"};
    Node only; // the two tables alone, so that the file's others are not called unknown again
    for (const Member& member : houseFile.members)
        if (std::find(kTables.begin(), kTables.end(), member.key) != kTables.end()) only.members.push_back(member);
    Fields fields(reading, only, {}, kTables);
    fields.eachNamed("tighten", [&](const std::string& name, const Node& node, const std::string& path) {
        tighten(fields, node, path, RuleId(name), rules);
    });
    fields.eachNamed("confirm", [&](const std::string& name, const Node& node, const std::string& path) {
        confirm(fields, node, path, RuleId(name), rules);
    });
}

std::string printRules(const Book& book) {
    if (book.house.ruleBook != kOwnRules) return {};
    Writer writer;
    Entries about;
    about.put("name", book.rules.name);
    about.put("place", book.rules.place);
    writer.table("rules", about);
    for (const Rule& rule : book.rules.rules) {
        if (rule.tightened && !rule.before) continue; // the house's alone: in house.toml
        Entries entries;
        entries.put("what", rule.what);
        std::visit([&](const auto& value) { entries.put("value", value); }, rule.before.value_or(rule.value));
        entries.put("bound", rule.bound);
        entries.put("source", rule.source);
        entries.put("confidence", rule.confidence);
        writer.table("rule." + rule.id.name(), entries);
    }
    return writer.take();
}

std::span<const KnownTable> ruleTables() {
    static constexpr std::array<KnownTable, 2> kTables{{{"rules", kRules}, {"rule.RULE", kRule}}};
    return kTables;
}

} // namespace piewright::book
