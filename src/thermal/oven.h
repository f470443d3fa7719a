// A deck oven as two stores of heat, and how long a load takes in it. The planner gets it as a table of durations.
//
// CAUTION: estimates to plan with, from a house's own parameters once probe curves are fitted. They never replace a
// probe reading and never make food safe; ovens, trays and steam burn.
#pragma once

#include "finding/result.h"
#include "thermal/bake.h"

#include <vector>

namespace piewright::thermal {

/// Ours to begin with: a middling electric deck of 1 m2.
struct Deck {
    double power = 5500; ///< W, burner or elements at full
    double setDegC = 210;
    double band = 6;           ///< K below the set temperature at which it is full on; linear between
    double deckHeat = 45'000;  ///< J/K of stone, trays' rails and what radiates
    double wallHeat = 120'000; ///< J/K of the brick or insulation behind
    double link = 12;          ///< W/K between the two
    double loss = 4;           ///< W/K from the wall to the room
    double roomDegC = 25;
    double openLoss = 12; ///< W/K more from the deck to the room while the door is open
};

struct DeckState {
    double deckDegC = 25;
    double wallDegC = 25;
};

struct DoorOpening {
    double from = 0; ///< s
    double to = 0;
};

struct SteamShot {
    double at = 0;        ///< s; over a quarter of a minute
    double kilograms = 0; ///< of water at 20 degC, all turned to steam
};

/// What happens to a deck. `load` is J that the load has taken since the start, at even times `every` s apart.
struct DeckDay {
    double seconds = 3600;
    std::vector<DoorOpening> doors;
    std::vector<SteamShot> steam;
    std::vector<double> load;
    double every = 15;
};

struct DeckRun {
    Curve deck = Curve::steady(0);
    Curve wall = Curve::steady(0);
    DeckState end;
    double burnt = 0;   ///< J from the burner
    double lost = 0;    ///< J through the wall and the door
    double steamed = 0; ///< J into steam
    double loaded = 0;  ///< J into the load
    double stored = 0;  ///< J more in deck and wall: burnt - lost - steamed - loaded
};

/// Fourth-order Runge-Kutta over steps of at most five seconds; the stores are slow. Problems: a store, power or loss
/// out of range, more than seven days.
Result<DeckRun> run(const Deck& deck, const DeckState& start, const DeckDay& day);

/// s until the deck is within its band of the set temperature and the burner begins to ease; nothing if it never is
/// within twelve hours. The wall behind is still colder then: the first load sags more than later ones.
Result<std::optional<double>> heatUp(const Deck& deck, const DeckState& start);

struct LoadBake {
    double seconds = 0;   ///< until cooked
    double lowest = 0;    ///< degC of the deck on the way
    double lossShare = 0; ///< of the pies' weight, as steam, until then
    double browning = 0;
    DeckState end;
    DeckRun deck;
};

/// `pies` put in together, the door open for `doorSeconds` from the start: deck and pies each run in the other's
/// temperature, repeated until the deck changes by less than 0.2 K. All pies alike. Problems as bake; not cooked within
/// three hours.
Result<LoadBake> bakeLoad(const Deck& deck, const DeckState& start, const Pie& pie, const DeckHeat& heat,
                          const BakeTarget& target, int pies, double doorSeconds);

/// How long a load bakes, by its pies and by how long the deck recovered after a full load before it. Grows with pies,
/// falls with recovery, everywhere.
class BakeTimes {
  public:
    /// `loads` of pies and `recoveries` in s, both rising, the last load being the full one. The deck is settled at its
    /// set temperature before the full load that precedes. loads x recoveries bakes, each some ten conduction runs.
    static Result<BakeTimes> tabulated(const Deck& deck, const Pie& pie, const DeckHeat& heat, const BakeTarget& target,
                                       const std::vector<int>& loads, const std::vector<double>& recoveries,
                                       double doorSeconds);
    /// s; between the table's entries straight lines, beyond them the nearest. A few nanoseconds.
    [[nodiscard]] double seconds(double pies, double recovered) const;
    /// As made, before they were set right to be monotone: how far that moved the worst entry, in s.
    [[nodiscard]] double moved() const { return moved_; }

  private:
    std::vector<double> loads_;
    std::vector<double> recoveries_;
    std::vector<double> seconds_; // by load, then recovery
    double moved_ = 0;
};

} // namespace piewright::thermal
