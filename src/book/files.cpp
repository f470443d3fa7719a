// The list of the book's files.
#include "book/kinds.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 6> kHouse{"house", "hours", "special", "usual", "tighten", "confirm"};
constexpr std::array<std::string_view, 1> kSuppliers{"supplier"};
constexpr std::array<std::string_view, 1> kStuffs{"stuff"};
constexpr std::array<std::string_view, 1> kFormulas{"formula"};
constexpr std::array<std::string_view, 1> kTins{"tin"};
constexpr std::array<std::string_view, 1> kGoods{"good"};
constexpr std::array<std::string_view, 1> kGear{"gear"};
constexpr std::array<std::string_view, 2> kHands{"skill", "hand"};
constexpr std::array<std::string_view, 1> kRoutes{"route"};
constexpr std::array<std::string_view, 2> kRules{"rules", "rule"};

constexpr std::array<BookFile, 10> kFiles{{
    {"house.toml", readHouse, printHouse, kHouse, houseTables, true},
    {"suppliers.toml", readSuppliers, printSuppliers, kSuppliers, supplierTables, false},
    {"stuffs.toml", readStuffs, printStuffs, kStuffs, stuffTables, true},
    {"formulas.toml", readFormulas, printFormulas, kFormulas, formulaTables, true},
    {"tins.toml", readTins, printTins, kTins, tinTables, false},
    {"goods.toml", readGoods, printGoods, kGoods, goodTables, true},
    {"gear.toml", readGear, printGear, kGear, gearTables, true},
    {"hands.toml", readHands, printHands, kHands, handTables, true},
    {"routes.toml", readRoutes, printRoutes, kRoutes, routeTables, true},
    {"rules.toml", readRules, printRules, kRules, ruleTables, false},
}};

} // namespace

std::span<const BookFile> bookFiles() { return kFiles; }

} // namespace piewright::book
