#include "print/sample_plan.h"

#include <algorithm>
#include <map>

namespace piewright::testing {

namespace {

using book::Caution;

const Currency kPounds = *Currency::of("GBP");

/// Builds a day by putting each task on the hand who is free first among those named.
class Builder {
  public:
    explicit Builder(day::Plan plan) : plan_(std::move(plan)), zone_(*Zone::named(plan_.zone)) {}

    [[nodiscard]] Instant at(const char* clock) const { return zone_.at(plan_.date, *parseClockTime(clock)); }

    void shift(const std::string& hand, const char* from, const char* to, const char* rest) {
        const Instant pause = at(rest);
        plan_.shifts.push_back({hand, at(from), at(to), {{pause, pause + Minutes(30)}}, Minutes(0)});
        busy_[hand].emplace_back(pause, pause + Minutes(30));
        day::Task task;
        task.what = "Break";
        task.start = pause, task.end = pause + Minutes(30);
        task.hands = {hand};
        task.isBreak = true;
        plan_.tasks.push_back(task);
    }

    /// Puts the task at or after `from` for `length` on the first of `able` who is free; returns its end.
    Instant put(day::Task task, Instant from, Minutes length, const std::vector<std::string>& able) {
        std::string best;
        Instant start = Instant::max();
        for (const std::string& hand : able) {
            const Instant free = freeFrom(hand, from, length);
            if (free < start) start = free, best = hand;
        }
        task.start = able.empty() ? from : start;
        task.end = task.start + length;
        if (!able.empty()) {
            task.hands = {best};
            busy_[best].emplace_back(task.start, task.end);
        }
        plan_.tasks.push_back(task);
        return task.end;
    }

    /// Loads the deck that is free first after `from`; returns when it is out.
    Instant bake(Instant from, Minutes length, Celsius at, const std::vector<day::LoadContent>& contents, int trays) {
        auto* best = &decks_.front();
        for (auto& deck : decks_)
            if (std::max(deck.free, from) < std::max(best->free, from)) best = &deck;
        day::DeckLoad load;
        load.oven = best->oven, load.deck = best->deck;
        load.in = std::max(best->free, from), load.out = load.in + length;
        load.at = at, load.contents = contents, load.trays = trays, load.room = 6;
        if (best->at != at)
            load.lightBy = std::max(best->free - Minutes(6), load.in - Minutes(best->at == Celsius{} ? 50 : 20));
        best->at = at;
        best->free = load.out + Minutes(6);
        plan_.loads.push_back(load);
        return load.out;
    }

    day::Plan& plan() { return plan_; }

    day::Plan take() && {
        auto& tasks = plan_.tasks;
        std::stable_sort(tasks.begin(), tasks.end(), [](const auto& a, const auto& b) { return a.start < b.start; });
        int number = 0;
        for (day::Task& task : tasks) {
            task.number = ++number;
            for (day::PlannedShift& shift : plan_.shifts)
                for (const std::string& hand : task.hands)
                    if (hand == shift.hand && !task.isBreak)
                        shift.busy += std::chrono::floor<Minutes>(task.end - task.start);
        }
        return std::move(plan_);
    }

  private:
    struct Oven {
        std::string oven;
        int deck;
        Instant free;
        Celsius at;
    };

    Instant freeFrom(const std::string& hand, Instant from, Minutes length) {
        for (const day::PlannedShift& shift : plan_.shifts)
            if (shift.hand == hand) from = std::max(from, shift.from);
        auto& spans = busy_[hand];
        std::sort(spans.begin(), spans.end());
        for (const auto& [start, end] : spans)
            if (start < from + length && from < end) from = end;
        return from;
    }

    day::Plan plan_;
    Zone zone_;
    std::map<std::string, std::vector<std::pair<Instant, Instant>>> busy_;
    std::vector<Oven> decks_{{"Oven A", 1, Instant{}, {}}, {"Oven A", 2, Instant{}, {}}, {"Oven B", 1, Instant{}, {}}};
};

day::Plan shop() {
    day::Plan plan;
    plan.house = "Ropewalk Pie House";
    plan.place = "3 Ropewalk, Harrowmouth";
    plan.zone = "Europe/London";
    plan.date = *parseDate("2026-11-27");
    plan.ruleBook = "England";
    return plan;
}

day::PlannedAmount amount(const std::string& name, int low, int high, int pieces, std::int64_t pence) {
    day::PlannedAmount made;
    made.good = name;
    made.name = name;
    made.unit = "pieces";
    made.low = low, made.middle = (low + high) / 2, made.high = high, made.pieces = pieces;
    made.fractile = 0.81;
    made.price = Money(pence * 100, kPounds);
    made.cost = Money(pence * 30, kPounds);
    made.leftover = Money(6'000, kPounds);
    made.expectedMissed = pieces / 120.0;
    made.expectedLeft = pieces / 22.0;
    made.because = {"23 Fridays of sales, the last weeks counting most",
                    "one more earns more than one left costs: enough on 81 days of 100",
                    "rain forecast entered by the house takes off 4 %"};
    return made;
}

day::WeighCard paste(bool base, int number, int of, std::int64_t flourGrams) {
    day::WeighCard card;
    card.formula = base ? "Base paste" : "Lid paste";
    card.id = std::string(base ? "base-paste " : "lid-paste ") + std::to_string(number);
    card.number = number, card.of = of;
    card.vessel = "Big mixer";
    const auto line = [&](const char* what, std::int64_t perMille, const char* note) {
        card.lines.push_back({what, roundedTo(grams(flourGrams * perMille / 1000), grams(5)), {}, note});
        card.in += card.lines.back().weight;
    };
    if (base) {
        line("Plain flour", 1000, "");
        line("Beef dripping", 450, "at room temperature");
        line("Water", 300, "from the tap, with the ice below");
        card.lines.back().at = Celsius::ofMilli(11'000);
        line("Ice", 30, "crushed; all of it melted before the paste is done");
        card.lines.back().at = Celsius{};
        line("Salt", 18, "");
        card.target = celsius(22);
        card.yields = {"8 heads of 2.601 kg", "240 pieces of 86.7 g"};
        card.method = {"Rub the dripping into the flour and salt until it looks like crumbs.",
                       "Add the water in one go; mix until it just comes together.",
                       "Check the paste's temperature and write it on the card."};
        card.allergens = {"cereals containing gluten (wheat)"};
    } else {
        line("Plain flour", 600, "");
        line("Biscuit flour", 400, "");
        line("Butter", 580, "cold, in cubes");
        line("Water", 290, "");
        card.lines.back().at = Celsius::ofMilli(6'500);
        line("Salt", 16, "");
        card.target = celsius(17);
        card.yields = {"10 heads of 1.872 kg", "300 pieces of 62.4 g"};
        card.method = {"Cut the cold butter through the flours and salt; leave pieces the size of a pea.",
                       "Add the cold water; mix short, do not work it.",
                       "Check the paste's temperature and write it on the card."};
        card.allergens = {"cereals containing gluten (wheat)", "milk"};
    }
    card.lost = {{"bowl", Mass::ofRaw(card.in.raw() / 100)}};
    card.out = card.in - card.lost.front().second;
    card.scaleStep = grams(5);
    card.roundingError = grams(2);
    card.cautions = {Caution::Machine, Caution::Lifting, Caution::Allergen};
    return card;
}

day::WeighCard cooked(const std::string& name, const std::string& vessel, int number, int of, bool tomorrow,
                      const std::vector<day::CardLine>& lines, const std::vector<std::string>& method,
                      const std::vector<std::string>& allergens) {
    day::WeighCard card;
    card.formula = name;
    card.id = name + " " + std::to_string(number);
    card.number = number, card.of = of;
    card.vessel = vessel;
    card.forTomorrow = tomorrow;
    if (tomorrow) card.forWhen = "Saturday 28 November";
    card.lines = lines;
    for (const day::CardLine& line : lines) card.in += line.weight;
    card.lost = {{"cooking", Mass::ofRaw(card.in.raw() / 5)}, {"kettle", grams(400)}};
    card.out = card.in - card.lost[0].second - card.lost[1].second;
    card.scaleStep = grams(5);
    card.method = method;
    card.allergens = allergens;
    card.yields = {std::to_string(card.out.raw() / 150'000) + " portions of 150 g"};
    card.cautions = {Caution::Burns, Caution::Steam, Caution::Knife, Caution::Cooling, Caution::Allergen};
    return card;
}

day::Task job(const std::string& what, const std::string& of, const std::string& amount,
              const std::vector<std::string>& gear, const std::vector<Caution>& cautions) {
    day::Task task;
    task.what = what, task.of = of, task.amount = amount, task.gear = gear, task.cautions = cautions;
    return task;
}

struct Wave {
    const char* good;
    int pieces;
    const char* ready;
};

void cards(day::Plan& plan) {
    for (int i = 1; i <= 4; ++i) plan.cards.push_back(paste(true, i, 4, 11'800));
    for (int i = 1; i <= 4; ++i) plan.cards.push_back(paste(false, i, 4, 12'600));
    plan.cards.push_back(
        cooked("Mash", "Boiling pan", 1, 2, false,
               {{"Potatoes", grams(20'000), {}, "peeled, from 25 kg bought"},
                {"Butter", grams(900), {}, ""},
                {"Milk", grams(1'600), celsius(70), "hot"},
                {"Salt", grams(160), {}, ""}},
               {"Salt the boiling water; potatoes in, back to the boil, simmer until a knife slides through.",
                "Drain well, steam dry, mash with the butter and hot milk."},
               {"milk"}));
    plan.cards.push_back(plan.cards.back());
    plan.cards.back().id = "Mash 2", plan.cards.back().number = 2;
    plan.cards.push_back(cooked("Parsley sauce", "Sauce pan", 1, 1, false,
                                {{"Water", grams(6'000), {}, ""},
                                 {"Milk", grams(3'000), {}, ""},
                                 {"Butter", grams(400), {}, ""},
                                 {"Plain flour", grams(480), {}, ""},
                                 {"Parsley", grams(220), {}, "picked and chopped, from 315 g bought"},
                                 {"Salt", grams(90), {}, ""}},
                                {"Make the roux, take up with the hot milk and water, simmer ten minutes.",
                                 "Parsley in at the end, off the heat."},
                                {"cereals containing gluten (wheat)", "milk"}));
    plan.cards.push_back(cooked("Gravy", "Sauce pan", 1, 1, false,
                                {{"Water", grams(9'000), {}, ""},
                                 {"Onions", grams(900), {}, "peeled and sliced, from 1 kg bought"},
                                 {"Beef dripping", grams(250), {}, ""},
                                 {"Cornflour", grams(420), {}, ""},
                                 {"Salt", grams(100), {}, ""},
                                 {"Pepper", grams(10), {}, ""}},
                                {"Colour the onions well in the dripping; water in; simmer.",
                                 "Thicken with the slaked cornflour, boil one minute, strain."},
                                {}));
    for (int i = 1; i <= 2; ++i)
        plan.cards.push_back(
            cooked("Beef and onion filling", "Stewing kettle", i, 2, true,
                   {{"Beef chuck", grams(40'300), {}, "diced"},
                    {"Onions", grams(11'810), {}, "peeled and sliced, from 13.12 kg bought"},
                    {"Water", grams(14'590), {}, ""},
                    {"Plain flour", grams(3'055), {}, ""},
                    {"Salt", grams(590), {}, ""},
                    {"Pepper", grams(110), {}, ""}},
                   {"Brown a third of the beef with the onions; add the rest, the water and the salt.",
                    "Simmer until the beef gives to a spoon; thicken with the flour slaked in cold water.",
                    "Tray up no deeper than 50 mm and into the chiller at once."},
                   {"cereals containing gluten (wheat)"}));
    plan.cards.push_back(cooked("Chicken and leek filling", "Stewing kettle", 1, 1, true,
                                {{"Chicken thigh", grams(31'200), {}, "diced"},
                                 {"Leeks", grams(12'000), {}, "trimmed and washed, from 27.3 kg bought"},
                                 {"Milk", grams(13'200), {}, ""},
                                 {"Butter", grams(1'800), {}, ""},
                                 {"Plain flour", grams(2'400), {}, ""},
                                 {"Salt", grams(480), {}, ""},
                                 {"Pepper", grams(70), {}, ""}},
                                {"Sweat the leeks in the butter; add the chicken and the milk.",
                                 "Simmer until cooked through; thicken with the flour.",
                                 "Tray up no deeper than 50 mm and into the chiller at once."},
                                {"cereals containing gluten (wheat)", "milk"}));
}

void stores(day::Plan& plan) {
    plan.before = {{"Beef and onion filling", grams(64'800), "made on Thursday 26 November"},
                   {"Chicken and leek filling", grams(43'200), "made on Thursday 26 November"},
                   {"Cheese, onion and potato filling", grams(20'880), "made on Thursday 26 November"},
                   {"Soaked peas", grams(9'400), "made on Thursday 26 November"},
                   {"Hake in its jelly", grams(3'240), "made on Wednesday 25 November"}};
    plan.needed = {{"Plain flour", grams(83'155), 4, "sack of 25 kg"},
                   {"Biscuit flour", grams(20'160), 2, "sack of 16 kg"},
                   {"Beef dripping", grams(21'490), 2, "box of 12.5 kg"},
                   {"Butter", grams(33'232), 4, "case of 10 kg"},
                   {"Potatoes", grams(50'000), 2, "sack of 25 kg"},
                   {"Onions", grams(27'240), 2, "net of 20 kg"},
                   {"Beef chuck", grams(80'600), 9, "pack of 9 kg"},
                   {"Chicken thigh", grams(31'200), 13, "pack of 2.5 kg"},
                   {"Leeks", grams(27'300), 6, "box of 5 kg"},
                   {"Milk", grams(22'400), 12, "bottle of 2 l"},
                   {"Parsley", grams(315), 0, ""},
                   {"Salt", grams(2'400), 1, "bag of 3 kg"},
                   {"Hake", grams(11'200), 2, "box of 6 kg"},
                   {"Water", grams(88'000), 0, ""}};
    plan.surplus = {{"Base pieces for Beef and onion pie", 24, grams(2'081), "kept chilled for tomorrow"},
                    {"Lid pieces", 18, grams(1'123), "re-worked into Base paste, within its 10 %"},
                    {"Mash", 0, grams(1'340), "staff food"}};
}

void pieces(day::Plan& plan) {
    const auto add = [&](const char* good, const char* part, std::int64_t count, std::int64_t mg, std::int64_t blank) {
        day::PiecesLine line;
        line.good = good, line.part = part, line.pieces = count;
        line.each = milligrams(mg), line.onPie = milligrams(mg * 88 / 100);
        line.perHead = 30;
        line.heads = (count + 29) / 30;
        line.head = milligrams(mg * 30);
        line.gauge = micrometres(2'540), line.finished = millimetres(3);
        line.blankLength = millimetres(blank), line.blankWidth = millimetres(blank);
        plan.pieces.push_back(line);
    };
    add("Beef and onion pie", "base", 432, 86'700, 175);
    add("Beef and onion pie", "lid", 432, 62'400, 131);
    add("Chicken and leek pie", "base", 288, 86'700, 175);
    add("Chicken and leek pie", "lid", 288, 62'400, 131);
    add("Cheese, onion and potato pie", "base", 144, 85'300, 175);
    add("Cheese, onion and potato pie", "lid", 144, 62'400, 131);
    add("Family beef pie", "base", 24, 281'000, 292);
    add("Family beef pie", "lid", 24, 172'000, 226);
    plan.pieces.back().blankWidth = millimetres(196);
}

} // namespace

day::Plan fridayPlan() {
    Builder day(shop());
    day::Plan& plan = day.plan();
    plan.note = "Harrowmouth lights go on at 17:00";
    plan.open = {{day.at("11:00"), day.at("20:00")}};
    cards(plan);
    stores(plan);
    pieces(plan);
    day.shift("Nell", "05:30", "13:30", "09:30");
    day.shift("Joss", "06:00", "14:00", "10:00");
    day.shift("Amara", "07:00", "15:30", "11:30");
    day.shift("Piet", "09:30", "18:00", "14:00");
    day.shift("Wren", "10:00", "18:30", "14:30");
    const std::vector<std::string> pasteHands{"Nell", "Joss"};
    const std::vector<std::string> finishers{"Nell", "Joss", "Wren", "Amara"};
    const std::vector<std::string> cooks{"Amara", "Piet"};
    const std::vector<std::string> bakers{"Nell", "Joss", "Piet", "Wren"};

    Instant clock = day.at("05:30");
    for (int i = 1; i <= 4; ++i)
        for (const bool base : {true, false}) {
            const std::string what = std::string(base ? "Base paste" : "Lid paste") + ", batch " + std::to_string(i);
            day::Task weigh = job("Weigh the mix", what, base ? "21.21 kg" : "23.76 kg", {"Bench scale"},
                                  {Caution::Allergen, Caution::Lifting});
            weigh.card = (base ? "base-paste " : "lid-paste ") + std::to_string(i);
            const Instant weighed = day.put(weigh, clock, Minutes(4), pasteHands);
            const Instant mixed =
                day.put(job("Mix", what, "", {"Big mixer"}, {Caution::Machine}), weighed, Minutes(10), pasteHands);
            day.put(job("Scale heads and divide", what, base ? "8 heads, 240 pieces" : "10 heads, 300 pieces",
                        {"Hand divider"}, {Caution::Machine}),
                    mixed + Minutes(10), Minutes(9), pasteHands);
            clock += Minutes(14);
        }

    const std::vector<Wave> waves{{"Beef and onion pie", 72, "10:55"},           {"Chicken and leek pie", 72, "10:55"},
                                  {"Cheese, onion and potato pie", 48, "11:00"}, {"Beef and onion pie", 144, "12:00"},
                                  {"Chicken and leek pie", 72, "12:15"},         {"Family beef pie", 24, "12:45"},
                                  {"Beef and onion pie", 72, "14:00"},           {"Chicken and leek pie", 72, "14:30"},
                                  {"Cheese, onion and potato pie", 48, "15:00"}, {"Beef and onion pie", 72, "16:45"},
                                  {"Chicken and leek pie", 72, "17:00"},         {"Beef and onion pie", 72, "17:45"},
                                  {"Cheese, onion and potato pie", 48, "17:45"}};
    std::map<std::string, int> bakes;
    plan.amounts = {
        amount("Beef and onion pie", 358, 462, 432, 490), amount("Chicken and leek pie", 231, 312, 288, 490),
        amount("Cheese, onion and potato pie", 104, 158, 144, 460), amount("Family beef pie", 14, 27, 24, 1250)};
    for (const Wave& wave : waves) {
        const std::string of = std::string(wave.good) + ", bake " + std::to_string(++bakes[wave.good]);
        const bool family = std::string(wave.good) == "Family beef pie";
        const int trays = family ? 6 : wave.pieces / 12;
        const auto minutes = [&](double each) { return Minutes(static_cast<int>(wave.pieces * each / 60) + 2); };
        const std::string count = std::to_string(wave.pieces) + " pieces";
        const Instant ready = day.at(wave.ready);
        Instant from = ready - Minutes(140);
        from = day.put(job("Sheet and line the tins", of, count + ", gauge 2.5 mm, " + std::to_string(trays) + " trays",
                           {"Sheeter", "Long bench"}, {Caution::Machine}),
                       from, minutes(9), finishers);
        from = day.put(job("Fill", of, count + " of 150 g", {"Bench scale", "Long bench"}, {Caution::Allergen}), from,
                       minutes(5), finishers);
        from = day.put(job("Lid, seal, trim, dock, glaze", of, count, {"Long bench"}, {Caution::Allergen}), from,
                       minutes(8), finishers);
        const int loads = trays > 6 ? 2 : 1;
        for (int part = 0; part < loads; ++part) {
            const int share = wave.pieces / loads;
            const Instant out = day.bake(from, Minutes(family ? 45 : 32), celsius(family ? 195 : 205),
                                         {{wave.good, share, trays / loads}}, trays / loads);
            day.put(job("Load the oven", of,
                        std::to_string(share) + " pieces, " + std::to_string(trays / loads) + " trays", {"Oven"},
                        {Caution::Burns}),
                    out - Minutes(family ? 45 : 32), Minutes(3), bakers);
            day.put(job("Take out, probe, rack", of, std::to_string(share) + " pieces", {"Oven"},
                        {Caution::Burns, Caution::Holding}),
                    out, Minutes(4), bakers);
        }
        for (day::PlannedAmount& one : plan.amounts)
            if (one.name == wave.good) one.waves.push_back({ready, ready + Minutes(110), wave.pieces});
    }

    const auto portion = [&](const char* name, int low, int high, int made, const std::vector<const char*>& ready) {
        day::PlannedAmount a = amount(name, low, high, made, 220);
        a.unit = "portions";
        for (const char* when : ready) {
            a.waves.push_back({day.at(when), day.at(when) + Minutes(90), made / static_cast<int>(ready.size())});
            const std::string of = std::string(name) + ", making " + std::to_string(a.waves.size());
            const std::string count = std::to_string(a.waves.back().pieces) + " portions";
            Instant from = day.at(when) - Minutes(75);
            from = day.put(job("Weigh, peel and cut", of, count, {"Bench scale"}, {Caution::Knife, Caution::Allergen}),
                           from, Minutes(16), cooks);
            from = day.put(job("On the stove", of, count, {"Sauce pan"}, {Caution::Burns, Caution::Steam}), from,
                           Minutes(5), cooks);
            from = day.put(job("Simmers by itself", of, "", {"Sauce pan"}, {Caution::Burns}), from, Minutes(30), {});
            day.put(job("Finish and into the hot cupboard", of, count, {"Hot cupboard and counter bains-marie"},
                        {Caution::Steam, Caution::Holding}),
                    from, Minutes(8), cooks);
        }
        plan.amounts.push_back(a);
    };
    portion("Mash", 150, 212, 190, {"10:55", "14:45"});
    portion("Parsley sauce", 88, 140, 120, {"10:55", "15:10"});
    portion("Gravy", 94, 138, 122, {"11:00", "16:10"});
    portion("Mushy peas", 61, 98, 84, {"11:05"});
    portion("Stewed hake", 28, 52, 44, {"11:10"});
    day::PlannedAmount jelly = amount("Hake in its jelly", 9, 22, 36, 560);
    jelly.unit = "portions", jelly.setAside = 18;
    jelly.waves.push_back({day.at("11:00"), day.at("20:00"), 18});
    plan.amounts.push_back(jelly);

    for (const char* what : {"Beef and onion filling, for Saturday", "Chicken and leek filling, for Saturday"}) {
        Instant from = day.put(job("Weigh, peel and cut", what, "70.5 kg", {"Bench scale", "Long bench"},
                                   {Caution::Knife, Caution::RawMeat, Caution::Allergen, Caution::Lifting}),
                               day.at("13:15"), Minutes(24), cooks);
        from = day.put(job("Put on the kettle", what, "70.5 kg", {"Stewing kettle"}, {Caution::Burns, Caution::Steam}),
                       from, Minutes(6), cooks);
        from = day.put(job("Stews by itself", what, "", {"Stewing kettle"}, {Caution::Burns}), from, Minutes(115), {});
        from = day.put(job("Tray up shallow, into the chiller", what, "56 kg, 14 trays", {"Walk-in chiller"},
                           {Caution::Burns, Caution::Cooling, Caution::Lifting}),
                       from, Minutes(12), {"Piet", "Wren"});
        day.put(job("Cools in shallow trays", what, "", {"Walk-in chiller"}, {Caution::Cooling}), from, Minutes(90),
                {});
    }
    plan.assumptions = {"The fillings under \"there from before\" are in the chiller and fit to use; look and probe "
                        "before you rely on them.",
                        "Bake times are the book's, at the book's temperatures; a full cold load may take longer.",
                        "Everybody works at the pace in the book."};
    plan.warnings = {
        "The rule \"hot-hold-temperature\" of the rule book England is not confirmed by the house: check it.",
        "Family beef pie: only 24 tins are owned, so there is one bake."};
    return std::move(day).take();
}

day::Plan emptyPlan() { return shop(); }

day::Plan oneHandPlan() {
    Builder day(shop());
    day::Plan& plan = day.plan();
    plan.letterPaper = true;
    plan.house = "Quay Pies";
    plan.open = {{day.at("11:00"), day.at("14:00")}};
    day.shift("Ida", "06:00", "14:30", "10:30");
    day::PlannedAmount beef = amount("Beef and onion pie", 30, 55, 48, 490);
    beef.waves.push_back({day.at("11:00"), day.at("14:00"), 48});
    plan.amounts = {beef};
    plan.cards = {paste(true, 1, 1, 2'900)};
    const std::vector<std::string> ida{"Ida"};
    Instant from = day.put(job("Weigh the mix", "Base paste", "5.21 kg", {"Bench scale"}, {Caution::Allergen}),
                           day.at("06:10"), Minutes(4), ida);
    from = day.put(job("Mix", "Base paste", "", {"Mixer"}, {Caution::Machine}), from, Minutes(10), ida);
    from = day.put(job("Lid, seal, trim, dock, glaze", "Beef and onion pie", "48 pieces", {"Bench"}, {}),
                   from + Minutes(60), Minutes(12), ida);
    day.bake(from + Minutes(20), Minutes(32), celsius(205), {{"Beef and onion pie", 48, 4}}, 4);
    return std::move(day).take();
}

day::Plan crowdedPlan() {
    Builder day(shop());
    day::Plan& plan = day.plan();
    plan.house = "The Harrowmouth and District Co-operative Pie, Pasty and Pudding Makers' Counter";
    plan.place = "Upper floor of the old Corn Exchange, Ropewalk corner of St Botolph-without-Gate, Harrowmouth";
    plan.open = {
        {day.at("07:00"), day.at("11:00")}, {day.at("12:00"), day.at("15:30")}, {day.at("17:00"), day.at("22:30")}};
    std::vector<std::string> hands;
    for (const char* name : {"Nell", "Joss", "Amara", "Piet", "Wren", "Bartholomew-Constantine", "Ottoline", "Jo",
                             "Maximiliana Featherstonehaugh", "Zdzisław", "Þórunn", "Ngũgĩ"}) {
        hands.emplace_back(name);
        day.shift(name, hands.size() % 2 == 0 ? "04:00" : "09:00", hands.size() % 2 == 0 ? "13:00" : "22:30",
                  hands.size() % 2 == 0 ? "08:30" : "15:00");
    }
    for (int g = 1; g <= 40; ++g) {
        day::PlannedAmount a =
            amount("Steak, bone marrow, mushroom and dark ale pie with a suet crust no. " + std::to_string(g), 80, 1240,
                   1000 + g, 490);
        for (int w = 0; w < 1 + g % 9; ++w)
            a.waves.push_back({day.at("07:00") + Minutes(95 * w), day.at("08:00") + Minutes(95 * w), 110});
        plan.amounts.push_back(a);
    }
    for (int t = 0; t < 300; ++t) {
        const std::string& good = plan.amounts[static_cast<std::size_t>(t % 40)].name;
        day.put(job(t % 3 == 0 ? "Lid, seal, trim, dock and glaze with the second glaze" : "Fill",
                    good + ", bake " + std::to_string(t / 40 + 1),
                    std::to_string(90 + t) + " pieces of 152.5 g, " + std::to_string(8 + t % 5) + " trays",
                    {"Hot cupboard and counter bains-marie", "Long bench"},
                    {Caution::Burns, Caution::Steam, Caution::HotFat, Caution::Machine, Caution::Knife}),
                day.at("04:00") + Minutes(3 * t), Minutes(5 + t % 23), t % 7 == 0 ? std::vector<std::string>{} : hands);
    }
    for (int l = 0; l < 40; ++l) {
        day.bake(day.at("05:30"), Minutes(38), celsius(l % 5 == 0 ? 190 : 205),
                 {{plan.amounts[static_cast<std::size_t>(l)].name, 40, 4}, {plan.amounts[0].name, 20, 2}}, 6);
        if (l % 2 == 0) plan.loads.back().oven = "The big old three-phase deck oven behind the door";
    }
    for (int c = 1; c <= 3; ++c) {
        day::WeighCard card = paste(true, c, 3, 40'000);
        for (int i = 0; i < 22; ++i)
            card.lines.push_back(
                {"Sundry number " + std::to_string(i) + " of a long and careful list of things to weigh",
                 grams(100 + i),
                 {},
                 "picked over, washed, dried and chopped, from 1.2 kg bought"});
        for (int i = 0; i < 14; ++i)
            card.method.emplace_back("Step of a long method that goes on about how the thing should look when it is "
                                     "right, and what to do when it is not.");
        card.allergens = {"cereals containing gluten (wheat, barley, rye)",
                          "milk",
                          "eggs",
                          "fish",
                          "crustaceans",
                          "celery",
                          "mustard",
                          "sesame seeds",
                          "sulphur dioxide and sulphites"};
        plan.cards.push_back(card);
    }
    for (int i = 0; i < 25; ++i) {
        plan.warnings.push_back("Warning number " + std::to_string(i) +
                                ": something that takes a whole sentence to tell and runs past the end of the line, so "
                                "that it has to be wrapped.");
        plan.needed.push_back({"Organic stone-ground wholemeal flour of the second milling, lot " + std::to_string(i),
                               grams(100'000 + i), 5 + i, "bulk bag of 25 kg on a returnable pallet"});
    }
    stores(plan);
    pieces(plan);
    return std::move(day).take();
}

} // namespace piewright::testing
