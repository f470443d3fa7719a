// formulas.toml: what the house makes.
#include "book/kinds.h"
#include "book/writer.h"

#include <array>
#include <set>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 1> kTop{"formula"};
constexpr std::array<std::string_view, 17> kFormula{
    "name", "makes", "basis",   "lines",       "losses",      "route",  "density",    "temperature", "made",
    "rest", "keeps", "vessels", "rework-most", "rework-from", "method", "springback", "relaxation"};
constexpr std::array<std::string_view, 6> kLine{"of", "weight", "percent", "flour", "prep", "prep-loss"};
constexpr std::array<std::string_view, 3> kLoss{"at", "share", "fixed"};
constexpr std::array<std::string_view, 3> kTemperature{"target", "friction", "count-fat"};

constexpr Bounds<Mass> kLineWeights{milligrams(1), kilograms(10'000)};
constexpr Bounds<BakersPercent> kLinePercents{BakersPercent::ofRaw(1), ofFlour(1'000)};
constexpr Bounds<Share> kParts{percent(0), percent(100)};
constexpr Bounds<Mass> kFixedLosses{milligrams(0), kilograms(1'000)};
constexpr Bounds<Density> kDensities{Density::ofRaw(300'000), gramsPerMillilitre(2)};
constexpr Bounds<Celsius> kTargets{celsius(-5), celsius(100)};
constexpr Bounds<Kelvin> kFrictions{kelvins(-10), kelvins(40)};
constexpr Bounds<Seconds> kRests{Seconds(0), Days(30)};
constexpr Bounds<Seconds> kKeeps{Seconds(60), Days(1'000)};
constexpr Bounds<Seconds> kRelaxations{Seconds(0), Days(1)};
constexpr std::size_t kMostLines = 100;
constexpr std::size_t kMostLosses = 20;
constexpr std::size_t kMostVessels = 20;
constexpr std::size_t kMostMethodSteps = 60;

using Names = std::set<std::string, std::less<>>;

// A line names a stuff or a formula; names that are neither are found out by the checks.
StuffOrFormula namedBy(const std::string& name, const Names& formulas) {
    if (formulas.contains(name)) return FormulaId(name);
    return StuffId(name);
}

void takeLoss(Fields& fields, std::string_view key, Share& into) {
    if (fields.take(key, into, kParts) && into == kWhole)
        fields.error(key, "nothing would be left", "less than \"100 %\"");
}

void readLine(Reading& reading, const Node& table, const std::string& path, const Names& formulas, Formula& formula) {
    Fields fields(reading, table, path, kLine);
    Line line;
    RuleId of; // any name
    if (fields.need("of", of)) line.of = namedBy(of.name(), formulas);
    const bool byFlour = formula.basis == Basis::Flour;
    const std::string_view right = byFlour ? "percent" : "weight";
    const std::string_view wrong = byFlour ? "weight" : "percent";
    if (fields.has(wrong))
        fields.error(wrong, "a " + std::string(wrong) + " in a formula of basis " + std::string(wordFor(formula.basis)),
                     byFlour ? "percent, of the flour" : "weight, in one written batch");
    if (byFlour && (fields.has(right) || !fields.has(wrong))) fields.need("percent", line.percent, kLinePercents);
    if (!byFlour && (fields.has(right) || !fields.has(wrong))) fields.need("weight", line.weight, kLineWeights);
    if (fields.take("flour", line.flour) && line.flour && !byFlour)
        fields.error("flour", "flour marked in a formula of basis weight", "basis = \"flour\", or no mark");
    takeLoss(fields, "prep-loss", line.prepLoss);
    fields.take("prep", line.prepName);
    formula.lines.push_back(std::move(line));
}

void readLoss(Reading& reading, const Node& table, const std::string& path, Formula& formula) {
    Fields fields(reading, table, path, kLoss);
    Loss loss;
    fields.need("at", loss.at);
    if (fields.has("share") == fields.has("fixed"))
        fields.error("share",
                     fields.has("share") ? "both a share and a fixed weight" : "neither a share nor a fixed weight",
                     "either share = \"5 %\" or fixed = \"400 g\"");
    takeLoss(fields, "share", loss.share);
    fields.take("fixed", loss.fixed, kFixedLosses);
    formula.losses.push_back(std::move(loss));
}

MixTemperature readTemperature(Reading& reading, const Node& table, const std::string& path) {
    Fields fields(reading, table, path, kTemperature);
    MixTemperature temperature;
    fields.need("target", temperature.target, kTargets);
    fields.take("friction", temperature.friction, kFrictions);
    fields.take("count-fat", temperature.countFat);
    return temperature;
}

Formula readFormula(Reading& reading, const Node& table, const std::string& path, const Names& formulas) {
    Fields fields(reading, table, path, kFormula);
    Formula formula;
    fields.need("name", formula.name);
    fields.need("makes", formula.makes);
    const bool based = fields.need("basis", formula.basis);
    if (!fields.has("lines")) fields.missing("lines", "a list of lines such as { of = \"salt\", weight = \"90 g\" }");
    if (fields.has("lines") && based) {
        const bool listed = fields.eachItem("lines", kMostLines, [&](const Node& node, const std::string& at) {
            readLine(reading, node, at, formulas, formula);
        });
        if (listed && formula.lines.empty()) fields.error("lines", "no lines", "at least one");
    }
    fields.eachItem("losses", kMostLosses,
                    [&](const Node& node, const std::string& at) { readLoss(reading, node, at, formula); });
    fields.need("route", formula.route);
    fields.take("density", formula.density, kDensities);
    if (const Node* node = fields.find("temperature"))
        formula.temperature = readTemperature(reading, *node, fields.path("temperature"));
    fields.take("made", formula.made);
    fields.take("rest", formula.rest, kRests);
    fields.take("keeps", formula.keeps, kKeeps);
    fields.takeList("vessels", formula.vessels, kMostVessels, true);
    fields.take("rework-most", formula.reworkMost, kParts);
    fields.take("rework-from", formula.reworkFrom);
    fields.takeList("method", formula.method, kMostMethodSteps);
    fields.take("springback", formula.springback, kParts);
    fields.take("relaxation", formula.relaxation, kRelaxations);
    return formula;
}

Entries lineEntries(const Line& line, Basis basis) {
    Entries entries;
    std::visit([&](const auto& id) { entries.put("of", id); }, line.of);
    if (basis == Basis::Flour)
        entries.put("percent", line.percent);
    else
        entries.put("weight", line.weight);
    entries.putUnless("flour", line.flour, false);
    entries.putText("prep", line.prepName);
    entries.putUnless("prep-loss", line.prepLoss, Share{});
    return entries;
}

Entries lossEntries(const Loss& loss) {
    Entries entries;
    entries.put("at", loss.at);
    if (loss.fixed)
        entries.put("fixed", loss.fixed);
    else
        entries.put("share", loss.share);
    return entries;
}

Entries temperatureEntries(const MixTemperature& temperature) {
    Entries entries;
    entries.put("target", temperature.target);
    entries.putUnless("friction", temperature.friction, Kelvin{});
    entries.putUnless("count-fat", temperature.countFat, true);
    return entries;
}

Entries formulaEntries(const Formula& formula) {
    const Formula plain;
    Entries entries;
    entries.put("name", formula.name);
    entries.put("makes", formula.makes);
    entries.put("basis", formula.basis);
    std::vector<Entries> lines;
    lines.reserve(formula.lines.size());
    for (const Line& line : formula.lines) lines.push_back(lineEntries(line, formula.basis));
    entries.putTables("lines", lines);
    std::vector<Entries> losses;
    losses.reserve(formula.losses.size());
    for (const Loss& loss : formula.losses) losses.push_back(lossEntries(loss));
    entries.putTables("losses", losses);
    entries.put("density", formula.density);
    if (formula.temperature) entries.putRaw("temperature", temperatureEntries(*formula.temperature).inlineTable());
    entries.putUnless("made", formula.made, plain.made);
    entries.putList("vessels", formula.vessels);
    entries.put("route", formula.route);
    entries.putUnless("rest", formula.rest, plain.rest);
    entries.put("keeps", formula.keeps);
    entries.putUnless("springback", formula.springback, plain.springback);
    entries.putUnless("relaxation", formula.relaxation, plain.relaxation);
    entries.put("rework-most", formula.reworkMost);
    entries.put("rework-from", formula.reworkFrom);
    entries.putLines("method", formula.method);
    return entries;
}

} // namespace

void readFormulas(Reading& reading, const Node& file, Book& book) {
    Fields top(reading, file, {}, kTop);
    Names formulas;
    if (const Node* all = top.find("formula"))
        for (const Member& member : all->members) formulas.insert(member.key);
    top.eachNamed("formula", [&](const std::string& name, const Node& node, const std::string& path) {
        const std::size_t before = reading.report.errors();
        const FormulaId id(name);
        Formula formula = readFormula(reading, node, path, formulas);
        formula.id = id;
        book.formulas.emplace(id, std::move(formula));
        if (reading.report.errors() != before) reading.report.flaw(path);
    });
}

std::string printFormulas(const Book& book) {
    Writer writer;
    for (const auto& [id, formula] : book.formulas) writer.table("formula." + id.name(), formulaEntries(formula));
    return writer.take();
}

std::span<const KnownTable> formulaTables() {
    static constexpr std::array<KnownTable, 4> kTables{{{"formula.NAME", kFormula},
                                                        {"formula.NAME.lines", kLine},
                                                        {"formula.NAME.losses", kLoss},
                                                        {"formula.NAME.temperature", kTemperature}}};
    return kTables;
}

} // namespace piewright::book
