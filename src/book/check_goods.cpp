// What must hold for a good: it is a pie or a portion, and its route takes just what it is built of.
#include "book/checks.h"

#include <algorithm>
#include <array>

namespace piewright::book {

namespace {

constexpr std::string_view kFile = "goods.toml";

std::string pathOf(const Good& good) { return "good." + good.id.name(); }

template <class Look> void eachSound(const Checking& checking, Look look) {
    for (const auto& [id, good] : checking.book.goods)
        if (checking.sound(pathOf(good))) look(good);
}

bool isPie(const Good& good) { return good.tin || good.base || good.lid || good.ovenAt || good.bake; }

// The formula, if it is there and could be read.
const Formula* soundFormula(const Checking& checking, const FormulaId& id) {
    const auto found = checking.book.formulas.find(id);
    const bool fine = found != checking.book.formulas.end() && checking.sound("formula." + id.name());
    return fine ? &found->second : nullptr;
}

const Route* soundRoute(const Checking& checking, const RouteId& id) {
    const auto found = checking.book.routes.find(id);
    return found != checking.book.routes.end() && checking.sound("route." + id.name()) ? &found->second : nullptr;
}

void pieIsWhole(const Checking& checking, const Good& good) {
    const std::string path = pathOf(good);
    const auto needed = [&](bool given, const char* key, const char* want) {
        if (!given) checking.error(kFile, path + '.' + key, "is missing", want);
    };
    needed(good.tin.has_value(), "tin", "the tin a pie is built in");
    needed(good.base || good.lid, "base", "a base or a lid, as in { paste = \"base-paste\", thickness = \"3 mm\" }");
    needed(good.ovenAt.has_value(), "oven", "the deck's temperature, as in \"205 degC\"");
    needed(good.bake.has_value(), "bake", "the time in the deck, as in \"32 min\"");
}

void portionIsOne(const Checking& checking, const Good& good) {
    if (good.deposits.size() != 1)
        checking.error(kFile, pathOf(good) + ".deposits",
                       "a portion of " + std::to_string(good.deposits.size()) + " formulas",
                       "exactly one; or a tin, a base or a lid to make it a pie");
    if (good.bakeLoss != Share{})
        checking.error(kFile, pathOf(good) + ".bake-loss", "a portion does not bake", "no bake-loss");
}

void sheetIsPaste(const Checking& checking, const std::optional<Sheet>& sheet, const std::string& path) {
    if (!sheet) return;
    const Formula* paste = soundFormula(checking, sheet->paste);
    if (paste != nullptr && paste->makes != Makes::Paste)
        checking.error(kFile, path + ".paste", '"' + sheet->paste.name() + "\" is no paste",
                       "a formula that makes paste");
}

struct Part {
    Takes takes;
    std::string_view named; // in a sentence: `takes the base`
};

constexpr std::array<Part, 5> kParts{{{Takes::Base, "the base"},
                                      {Takes::Lid, "the lid"},
                                      {Takes::Filling, "the filling"},
                                      {Takes::Glaze, "the glaze"},
                                      {Takes::Portion, "the portion"}}};

// Which parts the good has; nothing when a deposit's formula is not known.
std::optional<std::vector<Takes>> partsOf(const Checking& checking, const Good& good) {
    if (!isPie(good)) return std::vector<Takes>{Takes::Portion};
    std::vector<Takes> parts;
    if (good.base) parts.push_back(Takes::Base);
    if (good.lid) parts.push_back(Takes::Lid);
    for (const Deposit& deposit : good.deposits) {
        const Formula* formula = soundFormula(checking, deposit.formula);
        if (formula == nullptr) return std::nullopt;
        parts.push_back(formula->makes == Makes::Glaze ? Takes::Glaze : Takes::Filling);
    }
    return parts;
}

bool takes(const Step& step, Takes part) {
    return std::find(step.takes.begin(), step.takes.end(), part) != step.takes.end();
}

void partIsTaken(const Checking& checking, const Good& good, const Route& route, const Part& part, bool has) {
    const std::string path = pathOf(good) + ".route";
    const std::string named(part.named);
    std::size_t count = 0;
    bool baked = false;
    bool late = false;
    for (const Step& step : route.steps) {
        baked = baked || step.bake;
        if (!takes(step, part.takes)) continue;
        ++count;
        late = late || (baked && part.takes != Takes::Glaze && part.takes != Takes::Portion);
    }
    if (has && count == 0) checking.error(kFile, path, "no step takes " + named, "a route with one step that does");
    if (has && count > 1)
        checking.error(kFile, path, std::to_string(count) + " steps take " + named, "a route with one step that does");
    if (!has && count > 0)
        checking.error(kFile, path, "a step takes " + named + ", and this good has none", "a route without it");
    if (has && late)
        checking.error(kFile, path, "a step takes " + named + " after the baking has begun", "it before the baking");
}

void stepsFit(const Checking& checking, const Good& good, const Route& route) {
    const std::string path = pathOf(good) + ".route";
    std::size_t bakes = 0;
    for (const Step& step : route.steps) {
        const std::string told = "its step \"" + step.id.name() + '"';
        bakes += step.bake ? 1 : 0;
        if (step.vessel)
            checking.error(kFile, path, told + " takes a formula's vessel", "a route for goods, without vessel");
        if (step.per == PerUnit::Head)
            checking.error(kFile, path, told + " counts by head",
                           "a route that counts by batch, piece, tray or kilogram");
        if (step.per == PerUnit::Tray && !good.tin)
            checking.error(kFile, path, told + " counts by tray, and this good has no tin",
                           "a route that counts by batch, piece or kilogram");
        if (step.bake && good.bake && *good.bake < step.start + step.end)
            checking.error(kFile, path, told + " is attended for longer than the good bakes",
                           "a start and an end of at most " + exactText(*good.bake) + " together");
    }
    if (isPie(good) && bakes != 1)
        checking.error(kFile, path, std::to_string(bakes) + " steps bake", "a route with exactly one step that does");
    if (!isPie(good) && bakes > 0)
        checking.error(kFile, path, "a step bakes, and this good is a portion", "a route without baking");
}

} // namespace

void checkPiesAndPortions(const Checking& checking) {
    eachSound(checking, [&](const Good& good) {
        if (isPie(good))
            pieIsWhole(checking, good);
        else
            portionIsOne(checking, good);
    });
}

void checkSheets(const Checking& checking) {
    eachSound(checking, [&](const Good& good) {
        sheetIsPaste(checking, good.base, pathOf(good) + ".base");
        sheetIsPaste(checking, good.lid, pathOf(good) + ".lid");
    });
}

void checkDepositDensities(const Checking& checking) {
    eachSound(checking, [&](const Good& good) {
        for (std::size_t i = 0; i < good.deposits.size(); ++i) {
            const Formula* formula = soundFormula(checking, good.deposits[i].formula);
            if (good.deposits[i].volume && formula != nullptr && !formula->density)
                checking.error(kFile, pathOf(good) + ".deposits[" + std::to_string(i) + "].volume",
                               "a volume of \"" + formula->id.name() + "\", whose density is not known",
                               "density in [formula." + formula->id.name() + "], or a weight");
        }
    });
}

void checkGoodRoutes(const Checking& checking) {
    eachSound(checking, [&](const Good& good) {
        const Route* route = soundRoute(checking, good.route);
        if (route == nullptr) return;
        stepsFit(checking, good, *route);
        const auto parts = partsOf(checking, good);
        if (!parts) return;
        for (const Part& part : kParts)
            partIsTaken(checking, good, *route, part,
                        std::find(parts->begin(), parts->end(), part.takes) != parts->end());
    });
}

void checkOvens(const Checking& checking) {
    if (!checking.sources.known("gear.toml")) return;
    const bool oven = std::any_of(checking.book.gear.begin(), checking.book.gear.end(), [&](const auto& each) {
        return each.second.kind == GearKind::Oven || !checking.sound("gear." + each.first.name());
    });
    if (oven) return;
    eachSound(checking, [&](const Good& good) {
        if (good.ovenAt || good.bake)
            checking.error(kFile, pathOf(good) + ".oven", "there is no oven to bake in", "gear of kind \"oven\"");
    });
}

void checkSoldOn(const Checking& checking) {
    const House& house = checking.book.house;
    eachSound(checking, [&](const Good& good) {
        for (std::size_t i = 0; i < good.soldOn.size(); ++i)
            if (house.hours.at(good.soldOn[i].c_encoding()).empty() && checking.sources.known("house.toml"))
                checking.warning(kFile, pathOf(good) + ".sold-on[" + std::to_string(i) + ']',
                                 "sold on a day on which the house is shut", "days with hours in house.toml");
    });
}

} // namespace piewright::book
