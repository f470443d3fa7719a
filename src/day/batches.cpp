#include "day/batches.h"

#include <algorithm>
#include <functional>
#include <map>
#include <set>

namespace piewright::day {

namespace {

using book::Book;
using book::Formula;
using book::Gear;

/// Time between a batch's last step and the pinning or depositing that the routes' own lags may stretch.
constexpr Seconds kSlack = std::chrono::hours(1);

struct Head {
    std::size_t kind = 0;
    std::int64_t index = 0; ///< among the kind's heads
};

/// Something asks for so much of a formula by a time.
struct Want {
    ClockTime when;
    Mass mass;
    std::optional<std::variant<LotUses, ServingUses, BatchUses>> to; ///< none for what is made ahead, and for heads
    std::optional<Head> head;
};

int heightOf(const Book& book, const Formula& formula) {
    int height = 0;
    for (const book::Line& line : formula.lines)
        if (const auto* id = std::get_if<FormulaId>(&line.of))
            height = std::max(height, 1 + heightOf(book, book.formulas.at(*id)));
    return height;
}

Seconds spreadAllowed(const Formula& formula) {
    if (!formula.keeps) return std::chrono::hours(48);
    return std::max(Seconds(0), *formula.keeps - formula.rest - kSlack);
}

class Maker {
  public:
    Maker(const Book& book, Date date) : book_(book), date_(date) {}

    void wantLots(const DayLots& lots);
    void wantServings(const DayLots& lots);
    /// Another date's lots and servings have no place in this date's work.
    void forgetUsers() {
        for (auto& [formula, wants] : wants_)
            for (Want& w : wants) w.to.reset();
    }
    void want(const FormulaId& formula, const Want& w) { wants_[formula].push_back(w); }

    /// Works through the wants, users before what they use. `make` says what becomes of a formula.
    enum class Fate { Make, TakeFromBefore, LookInside, Leave };
    void run(const std::function<Fate(const Formula&, const Want&)>& fate);
    void tieLots(const DayLots& lots);
    void wantAhead(const Book& book, const std::vector<Chosen>& over);
    void setDates(const std::function<std::vector<Date>(const Formula&)>& dates) { datesOf_ = dates; }

    Result<DayBatches> finish() {
        if (!findings_.empty()) return Problems{Fault::Input, findings_};
        return std::move(out_);
    }

  private:
    std::size_t kindFor(const book::Good& good, Part part);
    void pressHeads(const DayLots& lots);
    void make(const Formula& formula, std::vector<Want> wants);
    void makeGroup(const Formula& formula, const std::vector<Want>& wants);
    void lookInside(const Formula& formula, const std::vector<Want>& wants);
    void addBatch(const Formula& formula, const Gear* vessel, Mass out, const std::vector<const Want*>& wants);
    struct Fit {
        const Gear* vessel = nullptr;
        formula::BatchSplit split;
    };
    std::optional<Fit> fit(const Formula& formula, Mass out);
    [[nodiscard]] std::optional<ClockTime> arrival(const Formula& formula) const;
    void refuse(std::string saw, std::string want) {
        findings_.push_back({{}, std::move(saw), std::move(want), {}, Severity::Error});
    }

    const Book& book_;
    Date date_;
    DayBatches out_;
    std::vector<Finding> findings_;
    std::map<FormulaId, std::vector<Want>> wants_;
    std::map<std::pair<std::size_t, std::int64_t>, std::size_t> batchOfHead_;
    std::vector<std::int64_t> piecesOfKind_;
    std::function<std::vector<Date>(const Formula&)> datesOf_;
};

std::size_t Maker::kindFor(const book::Good& good, Part part) {
    const book::Sheet& sheet = part == Part::Base ? *good.base : *good.lid;
    const book::Tin& tin = book_.tins.at(*good.tin);
    const Density density = *book_.formulas.at(sheet.paste).density;
    const pastry::Piece piece =
        part == Part::Base ? pastry::basePiece(tin, sheet, density) : pastry::lidPiece(tin, sheet, density);
    const std::pair<const book::Good*, Part> use{&good, part};
    for (std::size_t k = 0; k < out_.kinds.size(); ++k) {
        PieceKind& kind = out_.kinds[k];
        if (kind.paste == sheet.paste && kind.piece.divided == piece.divided && kind.piece.onPie == piece.onPie) {
            if (std::find(kind.uses.begin(), kind.uses.end(), use) == kind.uses.end()) kind.uses.push_back(use);
            return k;
        }
    }
    out_.kinds.push_back({sheet.paste, piece, nullptr, {}, {use}});
    piecesOfKind_.push_back(0);
    return out_.kinds.size() - 1;
}

/// Counts the pieces of each kind, and asks for its heads in the order the lots need them.
void Maker::pressHeads(const DayLots& lots) {
    for (const Lot& lot : lots.lots) {
        if (lot.good->base) piecesOfKind_[kindFor(*lot.good, Part::Base)] += lot.pieces;
        if (lot.good->lid) piecesOfKind_[kindFor(*lot.good, Part::Lid)] += lot.pieces;
    }
    for (std::size_t k = 0; k < out_.kinds.size(); ++k) {
        PieceKind& kind = out_.kinds[k];
        std::string why = "the house has no divider";
        for (const auto& [id, gear] : book_.gear) {
            if (gear.kind != book::GearKind::Divider) continue;
            const auto heads = pastry::headsFor(piecesOfKind_[k], kind.piece.divided, gear);
            if (heads) {
                kind.divider = &gear;
                kind.heads = *heads;
                break;
            }
            why = heads.problems().findings.front().saw;
        }
        if (!kind.divider)
            refuse(book_.formulas.at(kind.paste).name + " for " + kind.uses.front().first->name + ": " + why,
                   "a divider whose least and most hold this head, or another thickness or tin");
    }
    if (!findings_.empty()) return;
    std::vector<std::int64_t> pressed(out_.kinds.size(), 0);
    std::vector<std::int64_t> used(out_.kinds.size(), 0);
    for (const Lot& lot : lots.lots) {
        for (const Part part : {Part::Base, Part::Lid}) {
            if (part == Part::Base ? !lot.good->base : !lot.good->lid) continue;
            const std::size_t k = kindFor(*lot.good, part);
            const PieceKind& kind = out_.kinds[k];
            used[k] += lot.pieces;
            while (pressed[k] * kind.heads.piecesPerHead < used[k])
                want(kind.paste,
                     {lots.loads[lot.load].ready, kind.heads.headWeight, std::nullopt, Head{k, pressed[k]++}});
        }
    }
}

void Maker::wantLots(const DayLots& lots) {
    pressHeads(lots);
    for (std::size_t i = 0; i < lots.lots.size(); ++i) {
        const Lot& lot = lots.lots[i];
        for (const book::Deposit& deposit : lot.good->deposits) {
            const bool glaze = book_.formulas.at(deposit.formula).makes == book::Makes::Glaze;
            want(deposit.formula, {lots.loads[lot.load].ready, deposit.weight * lot.pieces,
                                   LotUses{i, glaze ? book::Takes::Glaze : book::Takes::Filling}, std::nullopt});
        }
    }
}

void Maker::wantServings(const DayLots& lots) {
    for (std::size_t i = 0; i < lots.servings.size(); ++i) {
        const Serving& serving = lots.servings[i];
        want(serving.good->deposits.front().formula, {serving.ready, serving.mass, ServingUses{i}, std::nullopt});
    }
}

void Maker::wantAhead(const Book& book, const std::vector<Chosen>& over) {
    for (const Chosen& chosen : over) {
        const book::Good& good = book.goods.at(chosen.good);
        const book::Deposit& portion = good.deposits.front();
        if (chosen.amount.pieces > 0)
            want(portion.formula, {ClockTime(Minutes(24 * 60)), portion.weight * chosen.amount.pieces, {}, {}});
    }
}

void Maker::run(const std::function<Fate(const Formula&, const Want&)>& fate) {
    if (!findings_.empty()) return;
    std::vector<const Formula*> order;
    order.reserve(book_.formulas.size());
    for (const auto& [id, formula] : book_.formulas) order.push_back(&formula);
    std::stable_sort(order.begin(), order.end(),
                     [&](const Formula* a, const Formula* b) { return heightOf(book_, *a) > heightOf(book_, *b); });
    for (const Formula* formula : order) {
        const auto found = wants_.find(formula->id);
        if (found == wants_.end()) continue;
        std::vector<Want> wants = std::move(found->second);
        wants_.erase(found);
        std::stable_sort(wants.begin(), wants.end(), [](const Want& a, const Want& b) { return a.when < b.when; });
        std::vector<Want> made;
        std::vector<Want> inside;
        Mass before;
        for (const Want& w : wants) {
            switch (fate(*formula, w)) {
            case Fate::Make:
                made.push_back(w);
                break;
            case Fate::LookInside:
                inside.push_back(w);
                break;
            case Fate::TakeFromBefore:
                before += w.mass;
                break;
            case Fate::Leave:
                break;
            }
        }
        if (before > Mass{}) out_.before.push_back({formula, before});
        make(*formula, std::move(made));
        lookInside(*formula, inside);
    }
}

void Maker::lookInside(const Formula& formula, const std::vector<Want>& wants) {
    for (const Want& w : wants) {
        const formula::WeighedBatch batch = formula::weigh(formula, w.mass, book_.house.scaleStep);
        for (const formula::WeighedLine& line : batch.lines)
            if (const auto* id = std::get_if<FormulaId>(&line.of)) want(*id, {w.when, line.weighed, {}, {}});
    }
}

/// Wants whose times lie too far apart for one keeping time go into different groups; each portioned serving is its
/// own.
void Maker::make(const Formula& formula, std::vector<Want> wants) {
    const Seconds spread = spreadAllowed(formula);
    std::vector<Want> group;
    for (Want& w : wants) {
        const bool serving = w.to && std::holds_alternative<ServingUses>(*w.to);
        const bool apart =
            !group.empty() && (w.when - group.front().when > spread || (serving && w.when != group.front().when));
        if (apart) {
            makeGroup(formula, group);
            group.clear();
        }
        group.push_back(w);
    }
    if (!group.empty()) makeGroup(formula, group);
    int number = 0;
    int of = 0;
    for (const Batch& batch : out_.batches) of += batch.formula == &formula ? 1 : 0;
    for (Batch& batch : out_.batches)
        if (batch.formula == &formula) {
            batch.number = ++number;
            batch.of = of;
        }
}

/// The vessel that takes the fewest batches; of equals the one with the least left over; then the first named.
std::optional<Maker::Fit> Maker::fit(const Formula& formula, Mass out) {
    if (formula.vessels.empty()) return Fit{nullptr, {1, out}};
    std::optional<Fit> best;
    std::string why;
    for (const GearId& id : formula.vessels) {
        const Gear& vessel = book_.gear.at(id);
        const auto split = formula::split(formula, out, vessel.least, vessel.most);
        if (!split) {
            why = vessel.name + ": " + split.problems().findings.front().saw;
            continue;
        }
        const auto worse = [&](const formula::BatchSplit& s) { return s.each * s.count; };
        const Mass slack = milligrams(split->count);
        if (!best || split->count < best->split.count ||
            (split->count == best->split.count && worse(*split) + slack < worse(best->split)))
            best = Fit{&vessel, *split};
    }
    if (!best) refuse(formula.name + ": " + why, "a vessel that takes it, among the formula's vessels");
    return best;
}

void Maker::makeGroup(const Formula& formula, const std::vector<Want>& wants) {
    Mass total;
    for (const Want& w : wants) total += w.mass;
    if (total <= Mass{}) return;
    const auto fitting = fit(formula, total);
    if (!fitting) return;
    // Heads are whole, so batches of heads come out nearly equal; one more batch where the largest would not fit.
    for (int count = fitting->split.count;; ++count) {
        std::vector<std::vector<const Want*>> shares(static_cast<std::size_t>(count));
        std::vector<Mass> sums(shares.size());
        Mass before;
        bool whole = false;
        for (const Want& w : wants) {
            const double first = static_cast<double>(count) * ratio(before, total);
            const double last = static_cast<double>(count) * ratio(before + w.mass, total);
            before += w.mass;
            if (w.head) {
                const auto b = std::min(shares.size() - 1, static_cast<std::size_t>((first + last) / 2));
                shares[b].push_back(&w);
                sums[b] += w.mass;
                whole = true;
            } else {
                constexpr double kTouch = 1e-6; // a want that ends where a batch ends does not touch the next
                const auto from = std::min(shares.size() - 1, static_cast<std::size_t>(first + kTouch));
                const auto to = std::min(shares.size() - 1, static_cast<std::size_t>(std::max(first, last - kTouch)));
                for (std::size_t b = from; b <= to; ++b) shares[b].push_back(&w);
            }
        }
        if (whole && fitting->vessel && fitting->vessel->most && count < fitting->split.count + 3) {
            const Mass largest = *std::max_element(sums.begin(), sums.end());
            if (formula::inputFor(formula, largest) > *fitting->vessel->most) continue;
        }
        for (std::size_t b = 0; b < shares.size(); ++b) {
            const Mass out = whole ? sums[b] : fitting->split.each;
            const bool topped = whole && fitting->split.each * fitting->split.count > total + milligrams(count);
            if (!shares[b].empty())
                addBatch(formula, fitting->vessel, topped ? std::max(out, fitting->split.each) : out, shares[b]);
        }
        return;
    }
}

/// When today's delivery must be waited for: what came in last time no longer keeps.
std::optional<ClockTime> Maker::arrival(const Formula& formula) const {
    if (!comesInOn(book_, formula, date_)) return std::nullopt;
    const book::Stuff* stuff = mostPerishable(book_, formula);
    const ClockTime arrives = supplierOf(book_, *stuff)->arrives;
    if (formula.made == book::Made::Delivery) return arrives;
    Date last = date_ - Days(1);
    while (date_ - last < Days(14) && !comesInOn(book_, formula, last)) last = last - Days(1);
    return *stuff->life < date_ - last ? std::optional(arrives) : std::nullopt;
}

void Maker::addBatch(const Formula& formula, const Gear* vessel, Mass out, const std::vector<const Want*>& wants) {
    const std::size_t index = out_.batches.size();
    Batch batch;
    batch.formula = &formula;
    batch.vessel = vessel;
    batch.weighed = formula::weigh(formula, out, book_.house.scaleStep);
    batch.notBefore = arrival(formula);
    if (datesOf_) batch.forDates = datesOf_(formula);
    for (const Want* w : wants) {
        if (w->to) out_.supplies.push_back({index, *w->to});
        if (!w->head) continue;
        batchOfHead_[{w->head->kind, w->head->index}] = index;
        if (batch.heads.empty() || batch.heads.back().kind != w->head->kind) {
            const auto same = std::find_if(batch.heads.begin(), batch.heads.end(),
                                           [&](const HeadsFrom& h) { return h.kind == w->head->kind; });
            if (same != batch.heads.end()) {
                ++same->heads;
                continue;
            }
            batch.heads.push_back({w->head->kind, 0});
        }
        ++batch.heads.back().heads;
    }
    const ClockTime when = wants.front()->when;
    for (const formula::WeighedLine& line : batch.weighed.lines)
        if (const auto* id = std::get_if<FormulaId>(&line.of))
            want(*id, {when, line.weighed, BatchUses{index}, std::nullopt});
    out_.batches.push_back(std::move(batch));
}

/// Which batches each lot's bases and lids come from, by the heads they are pressed from.
void Maker::tieLots(const DayLots& lots) {
    if (!findings_.empty()) return;
    std::vector<std::int64_t> used(out_.kinds.size(), 0);
    for (std::size_t i = 0; i < lots.lots.size(); ++i) {
        const Lot& lot = lots.lots[i];
        for (const Part part : {Part::Base, Part::Lid}) {
            if (part == Part::Base ? !lot.good->base : !lot.good->lid) continue;
            const std::size_t k = kindFor(*lot.good, part);
            const int perHead = out_.kinds[k].heads.piecesPerHead;
            const std::int64_t firstHead = used[k] / perHead;
            used[k] += lot.pieces;
            const std::int64_t lastHead = (used[k] - 1) / perHead;
            std::set<std::size_t> from;
            for (std::int64_t head = firstHead; head <= lastHead; ++head)
                if (const auto found = batchOfHead_.find({k, head}); found != batchOfHead_.end())
                    from.insert(found->second);
            for (const std::size_t batch : from)
                out_.supplies.push_back({batch, LotUses{i, part == Part::Base ? book::Takes::Base : book::Takes::Lid}});
        }
    }
}

} // namespace

Result<DayBatches> batchesFor(const Book& book, const DayLots& lots, Date date) {
    Maker maker(book, date);
    maker.wantLots(lots);
    maker.wantServings(lots);
    maker.run([&](const Formula& formula, const Want&) {
        return madeBefore(book, formula, date) ? Maker::Fate::TakeFromBefore : Maker::Fate::Make;
    });
    maker.tieLots(lots);
    return maker.finish();
}

Result<DayBatches> allBatchesFor(const Book& book, const DayLots& lots, Date date) {
    Maker maker(book, date);
    maker.wantLots(lots);
    maker.wantServings(lots);
    maker.run([](const Formula&, const Want&) { return Maker::Fate::Make; });
    return maker.finish();
}

Result<DayBatches> allBatchesOf(const Book& book, const Formula& formula, Mass out, Date date) {
    Maker maker(book, date);
    maker.want(formula.id, {ClockTime{}, out, std::nullopt, std::nullopt});
    maker.run([](const Formula&, const Want&) { return Maker::Fate::Make; });
    return maker.finish();
}

Result<DayBatches> batchesAhead(const Book& book, const DayLots& next, Date nextDate, const std::vector<Chosen>& over,
                                Date date) {
    Maker maker(book, date);
    std::map<FormulaId, std::vector<Date>> dates;
    for (const Chosen& chosen : over) dates[book.goods.at(chosen.good).deposits.front().formula] = chosen.dates;
    maker.setDates([=](const Formula& formula) {
        const auto found = dates.find(formula.id);
        return found == dates.end() ? std::vector<Date>{nextDate} : found->second;
    });
    maker.wantLots(next);
    maker.wantServings(next);
    maker.forgetUsers();
    maker.run([&](const Formula& formula, const Want& want) {
        // What is made today for tomorrow may itself need something made on the day; tomorrow's goods' own batches of
        // the day are only looked into for what they need from the day before.
        const bool forBatch = want.to && std::holds_alternative<BatchUses>(*want.to);
        if (formula.made == book::Made::Delivery) return Maker::Fate::Leave;
        return forBatch || madeBefore(book, formula, nextDate) ? Maker::Fate::Make : Maker::Fate::LookInside;
    });
    maker.wantAhead(book, over);
    maker.run([](const Formula&, const Want&) { return Maker::Fate::Make; });
    return maker.finish();
}

} // namespace piewright::day
