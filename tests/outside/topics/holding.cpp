// The temperatures and times of the rule books that come with the program.
#include "book/fields.h"
#include "book/rules_file.h"
#include "outside/topics.h"
#include "thermal/cooling.h"
#include "toml/read.h"

#include <algorithm>
#include <array>

namespace piewright::outside {

namespace {

struct Place {
    std::string_view words; ///< how a row begins to name it
    std::string_view book;
};

constexpr std::array<Place, 9> kPlaces{{{"England", "england"},
                                        {"UK", "england"},
                                        {"Wales", "england"},
                                        {"Scotland", "scotland"},
                                        {"Ireland", "ireland"},
                                        {"US", "united-states"},
                                        {"Australia", "australia"},
                                        {"ACT", "australia"},
                                        {"FSANZ", "australia"}}};

std::optional<book::RuleBook> bookFor(std::string_view place) {
    const auto* found =
        std::find_if(kPlaces.begin(), kPlaces.end(), [&](const Place& each) { return place.starts_with(each.words); });
    if (found == kPlaces.end()) return std::nullopt;
    for (const book::ShippedRules& each : book::shippedRules()) {
        if (each.name != found->book) continue;
        book::Report report;
        const auto root = toml::read(std::string(each.text), "rules");
        if (!root) return std::nullopt;
        book::Reading reading{report, "rules", {}};
        return book::readRuleBook(reading, *root);
    }
    return std::nullopt;
}

/// A temperature in C, a time in min.
Answer valueOf(const book::RuleBook& rules, const char* id, const std::string& unit) {
    const book::Rule* rule = rules.find(RuleId(id));
    if (!rule) return NotCovered{"the rule book says nothing on it"};
    if (const auto* degC = std::get_if<Celsius>(&rule->value))
        return unit == "C" ? Answer(degC->degC()) : NotCovered{"a temperature in C"};
    const double seconds = static_cast<double>(std::get<Seconds>(rule->value).count());
    return unit == "min" ? Answer(seconds / 60) : NotCovered{"a time in min"};
}

Answer byPlace(const Case& asked, const char* id) {
    if (!asked.inputs.only({"place", "occasions"})) return NotCovered{"a key not known here"};
    const auto rules = bookFor(asked.inputs.text("place"));
    return rules ? valueOf(*rules, id, asked.unit) : NotCovered{"no rule book for that place"};
}

bool says(const Case& asked, std::string_view words) { return asked.quantity.find(words) != std::string::npos; }

} // namespace

Answer hotHolding(const Case& asked, const Foods&) {
    if (says(asked, "tolerance")) return byPlace(asked, "hot-hold-tolerance");
    if (says(asked, "minimum")) return byPlace(asked, "hot-hold-temperature");
    return NotCovered{"neither a minimum nor a tolerance"};
}

Answer chilledHolding(const Case& asked, const Foods&) {
    if (says(asked, "tolerance")) return byPlace(asked, "chill-tolerance");
    if (says(asked, "maximum")) return byPlace(asked, "chill-temperature");
    return NotCovered{"neither a maximum nor a tolerance"};
}

Answer reheating(const Case& asked, const Foods&) { return byPlace(asked, "reheat-temperature"); }

Answer timeControl(const Case& asked, const Foods&) { return byPlace(asked, "time-control"); }

Answer coreSurvey(const Case& asked, const Foods&) {
    if (!says(asked, "hot food minimum")) return NotCovered{"not the minimum for hot food"};
    return byPlace(asked, "hot-hold-temperature");
}

/// Which of a rule book's stages goes from the one temperature to the other.
Answer coolingRule(const Case& asked, const Foods&) {
    if (asked.inputs.text("place") == "UK,EU" && says(asked, "general duty")) return std::string(thermal::kCoolingDuty);
    const auto stage = asked.inputs.exactly({"T0_C", "T_end_C"});
    const auto rules = bookFor(asked.quantity);
    if (!stage || !rules || asked.unit != "min") return NotCovered{"wants T0_C, T_end_C and a rule book, in min"};
    const auto [from, to] = *stage;
    const auto is = [&](const char* id, double degC) {
        const book::Rule* rule = rules->find(RuleId(id));
        return rule && std::holds_alternative<Celsius>(rule->value) && std::get<Celsius>(rule->value).degC() == degC;
    };
    if (is("cool-from", from) && is("cool-midway", to)) return valueOf(*rules, "cool-first-within", asked.unit);
    if (is("cool-midway", from) && is("cool-to", to)) return valueOf(*rules, "cool-second-within", asked.unit);
    if (is("cool-from", from) && is("cool-to", to)) return valueOf(*rules, "cool-within", asked.unit);
    return NotCovered{"no stage of that rule book"};
}

} // namespace piewright::outside
