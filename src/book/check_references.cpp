#include "book/checks.h"

#include <vector>

namespace piewright::book {

namespace {

template <class Key, class Value> std::vector<std::string> namesOf(const std::map<Key, Value>& things) {
    std::vector<std::string> names;
    names.reserve(things.size());
    for (const auto& [id, thing] : things) names.push_back(id.name());
    return names;
}

struct Kind {
    std::string_view file;    // where such things stand
    std::string_view article; // `a stuff`
};

constexpr Kind kSupplier{"suppliers.toml", "a supplier"};
constexpr Kind kFormula{"formulas.toml", "a formula"};
constexpr Kind kTin{"tins.toml", "a tin"};
constexpr Kind kGear{"gear.toml", "gear"};
constexpr Kind kSkill{"hands.toml", "a skill"};
constexpr Kind kRoute{"routes.toml", "a route"};

// From one file into the things of another.
template <class Key, class Value>
void refer(const Checking& checking, std::string_view file, const std::string& path, const Key& id,
           const std::map<Key, Value>& things, Kind kind) {
    if (id.empty() || things.contains(id) || !checking.sources.known(kind.file)) return;
    const std::string hint = checking.report.suggestFrom(id.name(), [&] { return namesOf(things); });
    checking.error(file, path, '"' + id.name() + "\" is not " + std::string(kind.article),
                   "a name from " + std::string(kind.file), hint);
}

std::string item(const std::string& path, std::size_t i) { return path + '[' + std::to_string(i) + ']'; }

void stuffs(const Checking& checking) {
    const Book& book = checking.book;
    for (const auto& [id, stuff] : book.stuffs)
        for (std::size_t i = 0; i < stuff.packs.size(); ++i)
            refer(checking, "stuffs.toml", item("stuff." + id.name() + ".packs", i) + ".supplier",
                  stuff.packs[i].supplier, book.suppliers, kSupplier);
}

void line(const Checking& checking, const std::string& path, const Line& line) {
    const Book& book = checking.book;
    const auto* formula = std::get_if<FormulaId>(&line.of);
    const std::string name = formula != nullptr ? formula->name() : std::get<StuffId>(line.of).name();
    const bool isStuff = book.stuffs.contains(StuffId(name));
    if (formula != nullptr && isStuff)
        checking.error("formulas.toml", path, '"' + name + "\" is both a stuff and a formula",
                       "different names, so that it is clear which is meant");
    if (formula != nullptr || isStuff || name.empty()) return;
    if (!checking.sources.known("stuffs.toml")) return;
    const auto names = [&] {
        std::vector<std::string> all = namesOf(book.stuffs);
        for (const std::string& each : namesOf(book.formulas)) all.push_back(each);
        return all;
    };
    checking.error("formulas.toml", path, '"' + name + "\" is neither a stuff nor a formula",
                   "a name from stuffs.toml or formulas.toml", checking.report.suggestFrom(name, names));
}

void formulas(const Checking& checking) {
    const Book& book = checking.book;
    for (const auto& [id, formula] : book.formulas) {
        const std::string path = "formula." + id.name();
        for (std::size_t i = 0; i < formula.lines.size(); ++i)
            line(checking, item(path + ".lines", i) + ".of", formula.lines[i]);
        refer(checking, "formulas.toml", path + ".route", formula.route, book.routes, kRoute);
        for (std::size_t i = 0; i < formula.vessels.size(); ++i)
            refer(checking, "formulas.toml", item(path + ".vessels", i), formula.vessels[i], book.gear, kGear);
        if (formula.reworkFrom)
            refer(checking, "formulas.toml", path + ".rework-from", *formula.reworkFrom, book.formulas, kFormula);
    }
}

void goods(const Checking& checking) {
    const Book& book = checking.book;
    for (const auto& [id, good] : book.goods) {
        const std::string path = "good." + id.name();
        if (good.tin) refer(checking, "goods.toml", path + ".tin", *good.tin, book.tins, kTin);
        if (good.base) refer(checking, "goods.toml", path + ".base.paste", good.base->paste, book.formulas, kFormula);
        if (good.lid) refer(checking, "goods.toml", path + ".lid.paste", good.lid->paste, book.formulas, kFormula);
        for (std::size_t i = 0; i < good.deposits.size(); ++i)
            refer(checking, "goods.toml", item(path + ".deposits", i) + ".formula", good.deposits[i].formula,
                  book.formulas, kFormula);
        refer(checking, "goods.toml", path + ".route", good.route, book.routes, kRoute);
    }
}

void hands(const Checking& checking) {
    const Book& book = checking.book;
    for (const auto& [id, hand] : book.hands)
        for (const auto& [skill, pace] : hand.skills)
            refer(checking, "hands.toml", "hand." + id.name() + ".skills." + skill.name(), skill, book.skills, kSkill);
}

void routes(const Checking& checking) {
    const Book& book = checking.book;
    for (const auto& [id, route] : book.routes) {
        for (std::size_t i = 0; i < route.steps.size(); ++i) {
            const Step& step = route.steps[i];
            const std::string path = item("route." + id.name() + ".step", i);
            if (step.skill) refer(checking, "routes.toml", path + ".skill", *step.skill, book.skills, kSkill);
            for (std::size_t j = 0; j < step.gear.size(); ++j)
                refer(checking, "routes.toml", item(path + ".gear", j), step.gear[j], book.gear, kGear);
        }
    }
}

} // namespace

void checkReferences(const Checking& checking) {
    stuffs(checking);
    formulas(checking);
    goods(checking);
    hands(checking);
    routes(checking);
}

} // namespace piewright::book
