// What must hold for a formula: that it comes to an end, that its flour is whole, that it can be made and kept as it
// says.
#include "book/checks.h"

#include <algorithm>
#include <set>

namespace piewright::book {

namespace {

constexpr std::string_view kFile = "formulas.toml";

std::string pathOf(const Formula& formula) { return "formula." + formula.id.name(); }

template <class Look> void eachSound(const Checking& checking, Look look) {
    for (const auto& [id, formula] : checking.book.formulas)
        if (checking.sound(pathOf(formula))) look(formula);
}

// Walks down the formulas' lines and reports each loop once, from its first name in order.
class LoopFinder {
  public:
    explicit LoopFinder(const Checking& checking) : checking_(checking) {}

    void from(const FormulaId& id) {
        const auto again = std::find(way_.begin(), way_.end(), id);
        if (again != way_.end()) {
            report(again);
            return;
        }
        const auto formula = checking_.book.formulas.find(id);
        if (formula == checking_.book.formulas.end() || !done_.insert(id).second) return;
        way_.push_back(id);
        for (const Line& line : formula->second.lines)
            if (const auto* of = std::get_if<FormulaId>(&line.of)) from(*of);
        way_.pop_back();
    }

  private:
    void report(std::vector<FormulaId>::iterator first) {
        std::vector<FormulaId> loop(first, way_.end());
        std::rotate(loop.begin(), std::min_element(loop.begin(), loop.end()), loop.end());
        std::string told;
        for (const FormulaId& id : loop) told += id.name() + " -> ";
        told += loop.front().name();
        checking_.error(kFile, "formula." + loop.front().name() + ".lines", "made from itself: " + told,
                        "formulas that come to an end at stuffs");
    }

    const Checking& checking_;
    std::vector<FormulaId> way_;
    std::set<FormulaId> done_;
};

bool isVesselKind(GearKind kind) {
    return kind == GearKind::Mixer || kind == GearKind::Kettle || kind == GearKind::Pan;
}

} // namespace

void checkFormulaLoops(const Checking& checking) {
    LoopFinder finder(checking);
    for (const auto& [id, formula] : checking.book.formulas) finder.from(id);
}

void checkFlourIsWhole(const Checking& checking) {
    eachSound(checking, [&](const Formula& formula) {
        if (formula.basis != Basis::Flour) return;
        BakersPercent flour;
        bool any = false;
        for (const Line& line : formula.lines) {
            if (!line.flour) continue;
            flour += line.percent;
            any = true;
        }
        const std::string path = pathOf(formula) + ".lines";
        if (!any)
            checking.error(kFile, path, "no line is marked as flour", "flour = true on each flour, 100 % together");
        else if (flour != kAllFlour)
            checking.error(kFile, path, "the flours come to " + exactText(flour), "exactly 100 % together");
    });
}

void checkPastes(const Checking& checking) {
    eachSound(checking, [&](const Formula& formula) {
        const std::string path = pathOf(formula);
        if (formula.makes == Makes::Paste) {
            if (!formula.density)
                checking.error(kFile, path + ".density", "is missing", "a paste's density, as in \"1.2 g/ml\"");
            return;
        }
        const auto only = [&](bool given, const char* key) {
            if (given)
                checking.error(kFile, path + '.' + key, std::string(key) + " of what is no paste",
                               "makes = \"paste\", or the key left out");
        };
        only(formula.temperature.has_value(), "temperature");
        only(formula.springback != Share{}, "springback");
        only(formula.relaxation != Seconds(0), "relaxation");
        only(formula.reworkMost.has_value(), "rework-most");
        only(formula.reworkFrom.has_value(), "rework-from");
    });
}

void checkRework(const Checking& checking) {
    eachSound(checking, [&](const Formula& formula) {
        if (!formula.reworkFrom) return;
        const std::string path = pathOf(formula) + ".rework-from";
        if (!formula.reworkMost) checking.error(kFile, path, "rework without a limit", "rework-most, as in \"10 %\"");
        if (*formula.reworkFrom == formula.id)
            checking.error(kFile, path, "its own name", "another paste: its own may go back in anyway");
        const auto from = checking.book.formulas.find(*formula.reworkFrom);
        if (from != checking.book.formulas.end() && checking.sound(pathOf(from->second)) &&
            from->second.makes != Makes::Paste)
            checking.error(kFile, path, '"' + from->first.name() + "\" is no paste", "a paste");
    });
}

void checkMixTemperatures(const Checking& checking) {
    eachSound(checking, [&](const Formula& formula) {
        if (!formula.temperature) return;
        const bool water = std::any_of(formula.lines.begin(), formula.lines.end(), [&](const Line& line) {
            const auto* of = std::get_if<StuffId>(&line.of);
            const auto stuff = of == nullptr ? checking.book.stuffs.end() : checking.book.stuffs.find(*of);
            // A stuff that could not be read may be water.
            return stuff != checking.book.stuffs.end() &&
                   (stuff->second.water || !checking.sound("stuff." + stuff->first.name()));
        });
        if (!water && checking.sources.known("stuffs.toml"))
            checking.error(kFile, pathOf(formula) + ".temperature",
                           "a temperature to meet, and no water to meet it with",
                           "a line of a stuff with water = true, or no temperature");
    });
}

void checkKeeping(const Checking& checking) {
    eachSound(checking, [&](const Formula& formula) {
        const std::string path = pathOf(formula);
        if (formula.keeps && *formula.keeps < formula.rest)
            checking.error(kFile, path + ".keeps",
                           "keeps " + exactText(*formula.keeps) + ", and rests " + exactText(formula.rest) +
                               " before it may be used",
                           "at least the rest");
        if (formula.made != Made::SameDay && !formula.keeps)
            checking.error(kFile, path + ".keeps", "is missing",
                           "how long it keeps chilled, as it is not made on the day, as in \"48 h\"");
    });
}

void checkMadeOnDelivery(const Checking& checking) {
    eachSound(checking, [&](const Formula& formula) {
        if (formula.made != Made::Delivery) return;
        const bool comes = std::any_of(formula.lines.begin(), formula.lines.end(), [&](const Line& line) {
            const auto* of = std::get_if<StuffId>(&line.of);
            const auto stuff = of == nullptr ? checking.book.stuffs.end() : checking.book.stuffs.find(*of);
            return stuff != checking.book.stuffs.end() && ((stuff->second.life && !stuff->second.packs.empty()) ||
                                                           !checking.sound("stuff." + stuff->first.name()));
        });
        if (!comes && checking.sources.known("stuffs.toml"))
            checking.error(kFile, pathOf(formula) + ".made",
                           "made on delivery, and none of its lines is delivered fresh",
                           "a line of a stuff that is bought and has a life");
    });
}

void checkVessels(const Checking& checking) {
    eachSound(checking, [&](const Formula& formula) {
        for (std::size_t i = 0; i < formula.vessels.size(); ++i) {
            const auto gear = checking.book.gear.find(formula.vessels[i]);
            if (gear == checking.book.gear.end() || !checking.sound("gear." + gear->first.name())) continue;
            if (!isVesselKind(gear->second.kind))
                checking.error(kFile, pathOf(formula) + ".vessels[" + std::to_string(i) + ']',
                               '"' + gear->first.name() + "\" is no vessel", "a mixer, a kettle or a pan");
        }
    });
}

void checkFormulaRoutes(const Checking& checking) {
    eachSound(checking, [&](const Formula& formula) {
        const auto found = checking.book.routes.find(formula.route);
        if (found == checking.book.routes.end() || !checking.sound("route." + formula.route.name())) return;
        const std::string path = pathOf(formula) + ".route";
        bool vessel = false;
        for (const Step& step : found->second.steps) {
            const std::string told = "its step \"" + step.id.name() + '"';
            vessel = vessel || step.vessel;
            if (step.bake) checking.error(kFile, path, told + " bakes", "a route for formulas: goods are baked");
            if (!step.takes.empty())
                checking.error(kFile, path, told + " takes a good's parts", "a route for formulas, without takes");
            if (step.per == PerUnit::Piece || step.per == PerUnit::Tray)
                checking.error(kFile, path, told + " counts by " + std::string(wordFor(step.per)),
                               "a route that counts by batch, head or kilogram: goods have pieces and trays");
            if (step.per == PerUnit::Head && formula.makes != Makes::Paste)
                checking.error(kFile, path, told + " counts by head, and this is no paste",
                               "a route that counts by batch or kilogram");
        }
        if (vessel && formula.vessels.empty())
            checking.error(kFile, pathOf(formula) + ".vessels", "is missing",
                           "what it may be made in: a step of route \"" + formula.route.name() + "\" takes its vessel");
        if (!vessel && !formula.vessels.empty())
            checking.warning(kFile, path, "no step takes the formula's vessel",
                             "vessel = true on a step, or no vessels");
    });
}

} // namespace piewright::book
