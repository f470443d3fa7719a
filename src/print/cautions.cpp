#include "print/cautions.h"

#include <algorithm>
#include <cctype>

namespace piewright::print {

const CautionText& textOf(book::Caution caution) {
    using book::Caution;
    static const CautionText kBurns{
        "Burns",
        "Ovens, trays, tins and pans burn. Dry cloths or gloves, sleeves down, and call out before you carry."};
    static const CautionText kSteam{"Steam",
                                    "Open lids and doors away from you and let the steam out before you lean in."};
    static const CautionText kHotFat{
        "Hot fat",
        "Never leave hot fat alone and keep water away from it. Only for people who have been shown how, and "
        "who know where the fire blanket hangs."};
    static const CautionText kMachine{
        "Machine",
        "Guards shut, hands and cloths out, off and unplugged before cleaning. Only for people trained on it "
        "and old enough for it under the local law."};
    static const CautionText kKnife{"Knife", "Sharp knife, steady board, fingers back; never leave one in the sink."};
    static const CautionText kLifting{
        "Lifting", "Heavy: trolley or a second pair of hands, back straight, no twisting. Split the load if in doubt."};
    static const CautionText kAllergen{
        "Allergen", "Clean hands, bench and tools before and after. Check the labels of what is really used today; the "
                    "responsible person answers for what the customer is told."};
    static const CautionText kRawMeat{
        "Raw meat or fish",
        "Keep it apart from what is ready to eat: own board, own knife, own cloth. Wash hands after."};
    static const CautionText kCooling{
        "Cooling",
        "Cool it fast and shallow, and write down times and probe readings as the house's food-safety plan and "
        "the local food authority ask. What cools too slowly is for the responsible person to decide on."};
    static const CautionText kHolding{
        "Hot holding",
        "Keep it above the temperature that the local rules ask, probe it, and throw it out when its time "
        "is up."};
    switch (caution) {
    case Caution::Burns:
        return kBurns;
    case Caution::Steam:
        return kSteam;
    case Caution::HotFat:
        return kHotFat;
    case Caution::Machine:
        return kMachine;
    case Caution::Knife:
        return kKnife;
    case Caution::Lifting:
        return kLifting;
    case Caution::Allergen:
        return kAllergen;
    case Caution::RawMeat:
        return kRawMeat;
    case Caution::Cooling:
        return kCooling;
    case Caution::Holding:
        return kHolding;
    }
    static const CautionText kOther{"Caution", "Ask a competent person before you begin."};
    return kOther;
}

std::string wordsOf(const std::vector<book::Caution>& cautions) {
    std::string words;
    for (const book::Caution caution : distinct(cautions)) {
        std::string word = textOf(caution).word;
        if (!words.empty()) {
            words += ", ";
            word[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(word[0])));
        }
        words += word;
    }
    return words;
}

std::vector<book::Caution> distinct(std::vector<book::Caution> cautions) {
    std::sort(cautions.begin(), cautions.end());
    cautions.erase(std::unique(cautions.begin(), cautions.end()), cautions.end());
    return cautions;
}

} // namespace piewright::print
