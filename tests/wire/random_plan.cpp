#include "wire/random_plan.h"

#include <array>
#include <cmath>
#include <random>

namespace piewright::testing {

namespace {

class Draw {
  public:
    explicit Draw(std::uint64_t seed) : engine_(seed) {}

    std::int64_t whole(std::int64_t least, std::int64_t most) {
        const auto width = static_cast<std::uint64_t>(most - least) + 1;
        return least + static_cast<std::int64_t>(engine_() % width);
    }
    bool coin() { return whole(0, 1) == 1; }

    // Now and then a bound, mostly something of every size.
    std::int64_t upTo(std::int64_t most) {
        switch (whole(0, 5)) {
        case 0:
            return 0;
        case 1:
            return most;
        case 2:
            return whole(0, most);
        default:
            return whole(0, 1000);
        }
    }
    int count() { return static_cast<int>(upTo(1'000'000'000)); }
    std::int64_t either(std::int64_t most) { return coin() ? upTo(most) : -upTo(most); }
    Mass mass() { return milligrams(either(1'000'000'000'000'000)); }
    Length length() { return micrometres(upTo(1'000'000'000'000)); }
    Celsius temperature() { return Celsius::ofMilli(whole(-273'150, 10'000'000)); }
    Money money() {
        const std::array<const char*, 3> codes{"GBP", "EUR", "JPY"};
        return {either(1'000'000'000'000'000), *Currency::of(codes.at(static_cast<std::size_t>(whole(0, 2))))};
    }
    double real() {
        switch (whole(0, 3)) {
        case 0:
            return 0.0;
        case 1:
            return static_cast<double>(whole(-1'000'000, 1'000'000)) / 7.0;
        case 2:
            return std::ldexp(static_cast<double>(engine_() >> 11U), static_cast<int>(whole(-900, 900)));
        default:
            return static_cast<double>(whole(0, 100));
        }
    }
    Instant instant() { return Instant(Seconds(whole(-62'167'219'200, 253'402'300'799))); } // years 0000 to 9999
    std::pair<Instant, Instant> span() {
        const Instant a = instant();
        const Instant b = instant();
        return {std::min(a, b), std::max(a, b)};
    }
    std::string text() {
        static const std::array<const char*, 12> kParts{
            "Beef pie", "\"", "\\", "\n", "\t", "\x01", "é", "pâté ", "派", "\xF0\x9F\xA5\xA7", "12.5 kg", "/"};
        std::string made;
        for (std::int64_t n = whole(0, 4); n > 0; --n) made += kParts.at(static_cast<std::size_t>(whole(0, 11)));
        return made;
    }
    template <class Make> auto several(Make make) {
        std::vector<decltype(make())> made;
        for (std::int64_t n = whole(0, 3); n > 0; --n) made.push_back(make());
        return made;
    }
    std::vector<std::string> texts() {
        return several([this] { return text(); });
    }
    std::vector<book::Caution> cautions() {
        return several([this] { return static_cast<book::Caution>(whole(0, 9)); });
    }

  private:
    std::mt19937_64 engine_;
};

day::PlannedAmount amount(Draw& d) {
    day::PlannedAmount a;
    a.good = d.text(), a.name = d.text(), a.unit = d.text();
    a.low = d.count(), a.middle = d.count(), a.high = d.count(), a.pieces = d.count(), a.setAside = d.count();
    a.fractile = d.real();
    a.price = d.money(), a.cost = d.money(), a.leftover = d.money();
    a.expectedMissed = d.real(), a.expectedLeft = d.real();
    a.waves = d.several([&] {
        const auto [ready, until] = d.span();
        return day::PlannedWave{ready, until, d.count()};
    });
    a.because = d.texts();
    return a;
}

day::WeighCard card(Draw& d) {
    day::WeighCard c;
    c.id = d.text(), c.formula = d.text();
    c.number = d.count(), c.of = d.count();
    c.forTomorrow = d.coin(), c.forWhen = d.text(), c.vessel = d.text();
    c.lines = d.several([&] {
        day::CardLine line{d.text(), d.mass(), {}, d.text()};
        if (d.coin()) line.at = d.temperature();
        return line;
    });
    c.in = d.mass(), c.out = d.mass();
    c.lost = d.several([&] { return std::pair{d.text(), d.mass()}; });
    c.scaleStep = d.mass(), c.roundingError = d.mass();
    if (d.coin()) c.target = d.temperature();
    c.yields = d.texts(), c.method = d.texts(), c.allergens = d.texts();
    c.cautions = d.cautions();
    return c;
}

day::Task task(Draw& d) {
    day::Task t;
    t.number = d.count();
    t.what = d.text(), t.of = d.text(), t.amount = d.text();
    std::tie(t.start, t.end) = d.span();
    t.hands = d.texts(), t.gear = d.texts();
    t.card = d.text(), t.isBreak = d.coin();
    t.cautions = d.cautions();
    return t;
}

day::DeckLoad load(Draw& d) {
    day::DeckLoad l;
    l.oven = d.text(), l.deck = d.count();
    std::tie(l.in, l.out) = d.span();
    l.at = d.temperature();
    l.contents = d.several([&] { return day::LoadContent{d.text(), d.count(), d.count()}; });
    l.trays = d.count(), l.room = d.count();
    if (d.coin()) l.lightBy = d.instant();
    return l;
}

day::PlannedShift shift(Draw& d) {
    day::PlannedShift s;
    s.hand = d.text();
    std::tie(s.from, s.to) = d.span();
    s.breaks = d.several([&] { return d.span(); });
    s.busy = Minutes(d.upTo(1'000'000));
    return s;
}

day::PiecesLine pieces(Draw& d) {
    day::PiecesLine p;
    p.good = d.text(), p.part = d.text();
    p.pieces = d.upTo(1'000'000'000), p.each = d.mass(), p.onPie = d.mass();
    p.heads = d.upTo(1'000'000'000), p.perHead = d.count(), p.head = d.mass();
    p.gauge = d.length(), p.finished = d.length(), p.blankLength = d.length(), p.blankWidth = d.length();
    return p;
}

} // namespace

day::Plan randomPlan(std::uint64_t seed) {
    Draw d(seed);
    const std::array<const char*, 4> zones{"Europe/London", "America/New_York", "Pacific/Auckland", "UTC"};
    day::Plan p;
    p.house = d.text(), p.place = d.text();
    p.zone = zones.at(static_cast<std::size_t>(d.whole(0, 3)));
    p.date = Date(std::chrono::local_days(Days(d.whole(-719'528, 2'932'896)))); // years 0000 to 9999
    p.note = d.text();
    p.open = d.several([&] { return d.span(); });
    p.ruleBook = d.text();
    p.letterPaper = d.coin();
    p.amounts = d.several([&] { return amount(d); });
    p.pieces = d.several([&] { return pieces(d); });
    p.cards = d.several([&] { return card(d); });
    p.tasks = d.several([&] { return task(d); });
    p.loads = d.several([&] { return load(d); });
    p.shifts = d.several([&] { return shift(d); });
    p.before = d.several([&] { return day::FromBefore{d.text(), d.mass(), d.text()}; });
    p.needed = d.several([&] { return day::Needed{d.text(), d.mass(), d.upTo(1'000'000'000), d.text()}; });
    p.surplus = d.several([&] { return day::PlannedSurplus{d.text(), d.upTo(1'000'000'000), d.mass(), d.text()}; });
    p.assumptions = d.texts(), p.warnings = d.texts();
    return p;
}

} // namespace piewright::testing
