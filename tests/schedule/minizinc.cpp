#include "schedule/minizinc.h"

#include "schedule/cost.h"

#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <vector>

namespace piewright::schedule {

namespace {

std::string text(std::int64_t number) {
    return number < 0 ? "(" + std::to_string(number) + ")" : std::to_string(number);
}

class Writer {
  public:
    explicit Writer(const Problem& problem) : p_(problem) {}

    std::string write() && {
        line("include \"cumulative.mzn\";");
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            activity(a);
        }
        for (const Lag& lag : p_.lags) {
            constraint("(" + done(at(lag.from)) + " /\\ " + done(at(lag.to)) + ") -> " + time(lag.to, lag.toPoint) +
                       " - " + time(lag.from, lag.fromPoint) + " >= " + text(lag.least));
        }
        for (const Implication& one : p_.implications) {
            constraint(done(at(one.given)) + " -> " + done(at(one.also)));
        }
        for (std::size_t r = 0; r < p_.resources.size(); ++r) {
            if (p_.resources[r].machine) {
                machine(r);
                if (p_.resources[r].machine->together > 1) {
                    loads(r);
                }
            } else if (p_.resources[r].reservoir) {
                reservoir(r);
            } else {
                cumulative(r);
            }
        }
        people();
        stays();
        costs();
        line("var " + text(-kMostCost) + ".." + text(kMostCost) + ": total;");
        constraint("total = " + total_);
        line("solve minimize total;");
        line("output [\"total=\\(total)\\n\"];");
        return std::move(out_);
    }

  private:
    void line(const std::string& content) { out_ += content + "\n"; }
    void constraint(const std::string& content) { line("constraint " + content + ";"); }

    static std::string s(std::size_t a) { return "s" + std::to_string(a); }
    static std::string e(std::size_t a) { return "e" + std::to_string(a); }
    static std::string m(std::size_t a) { return "m" + std::to_string(a); }
    static std::string time(ActivityIndex a, Point point) { return point == Point::Start ? s(at(a)) : e(at(a)); }
    static std::string isMode(std::size_t a, std::size_t mode) {
        return "(" + m(a) + " = " + std::to_string(mode + 1) + ")";
    }

    static std::string done(std::size_t a) { return "(" + m(a) + " > 0)"; }

    /// A number by mode, as an expression; `absent` where it is left out.
    template <class Number> std::string byMode(std::size_t a, Number number, std::int64_t absent = 0) const {
        std::string list = text(absent);
        for (const Mode& mode : p_.activities[a].modes) {
            list += "," + text(number(mode));
        }
        return "[" + list + "][" + m(a) + " + 1]";
    }

    void activity(std::size_t a) {
        const Activity& activity = p_.activities[a];
        line("var 0.." + text(p_.horizon) + ": " + s(a) + "; var 0.." + text(p_.horizon) + ": " + e(a) + "; var " +
             (activity.isOptional ? "0.." : "1..") + std::to_string(activity.modes.size()) + ": " + m(a) + ";");
        for (std::size_t i = 0; i < activity.modes.size(); ++i) {
            const Mode& mode = activity.modes[i];
            if (mode.pauses.empty()) {
                constraint(isMode(a, i) + " -> " + e(a) + " = " + s(a) + " + " + text(mode.duration));
            } else {
                constraint(isMode(a, i) + " -> " + e(a) + " = " +
                           table(s(a), [&](Tick start) { return endOf(mode, start); }));
            }
        }
        line("var 0.." + text(p_.horizon) + ": d" + std::to_string(a) + ";");
        constraint("d" + std::to_string(a) + " = " + e(a) + " - " + s(a));
        constraint("not " + done(a) + " -> (" + s(a) + " = 0 /\\ " + e(a) + " = 0)");
        constraint(done(a) + " -> " + s(a) + " >= " + text(activity.release));
        if (activity.due < kNever) {
            constraint(done(a) + " -> " + e(a) + " <= " + text(activity.due));
        }
    }

    /// A number by tick, from 0 to the horizon.
    template <class Number> std::string table(const std::string& tick, Number number) const {
        std::string list;
        for (Tick t = 0; t <= p_.horizon; ++t) {
            list += (t == 0 ? "" : ",") + text(number(t));
        }
        return "[" + list + "][" + tick + " + 1]";
    }

    static bool pausesAt(const Mode& mode, Tick tick) {
        return std::any_of(mode.pauses.begin(), mode.pauses.end(),
                           [&](const Span& pause) { return pause.from <= tick && tick < pause.to; });
    }

    /// Beyond the horizon where it may not start.
    Tick endOf(const Mode& mode, Tick start) const {
        Tick end = start;
        if (pausesAt(mode, start)) {
            return p_.horizon + 1;
        }
        for (Tick left = mode.duration; left > 0 && end <= p_.horizon; ++end) {
            left -= pausesAt(mode, end) ? 0 : 1;
        }
        return end;
    }

    /// From start to end, never below 0 by its bounds either.
    std::string length(std::size_t a) const {
        const std::vector<Mode>& modes = p_.activities[a].modes;
        return std::any_of(modes.begin(), modes.end(), [](const Mode& mode) { return !mode.pauses.empty(); })
                   ? "d" + std::to_string(a)
                   : byMode(a, [](const Mode& mode) { return mode.duration; });
    }

    static const Use* useOf(const Mode& mode, std::size_t resource) {
        const auto use =
            std::find_if(mode.uses.begin(), mode.uses.end(), [&](const Use& u) { return at(u.resource) == resource; });
        return use == mode.uses.end() ? nullptr : &*use;
    }

    std::string amount(std::size_t a, std::size_t resource) const {
        return byMode(a, [&](const Mode& mode) {
            const Use* use = useOf(mode, resource);
            // What takes no time takes no room; Gecode's global constraint would have it fit all the same.
            return use == nullptr || mode.duration == 0 ? 0 : use->amount;
        });
    }

    void cumulative(std::size_t r) {
        const Cumulative& cumulative = *p_.resources[r].cumulative;
        if (cumulative.reserved.empty()) {
            std::string starts;
            std::string durations;
            std::string amounts;
            for (std::size_t a = 0; a < p_.activities.size(); ++a) {
                const std::string comma = a == 0 ? "" : ",";
                starts += comma + s(a);
                durations += comma + length(a);
                amounts += comma + amount(a, r);
            }
            constraint("cumulative([" + starts + "],[" + durations + "],[" + amounts + "]," +
                       text(cumulative.capacity) + ")");
            return;
        }
        const auto usedAt = [&](const std::string& tick) {
            std::string sum = "0";
            for (std::size_t a = 0; a < p_.activities.size(); ++a) {
                sum += " + bool2int(" + s(a) + " <= " + tick + " /\\ " + tick + " < " + e(a) + ") * " + amount(a, r);
            }
            return sum;
        };
        const auto reservedAt = [&](const std::string& tick) {
            std::string sum = "0";
            for (const Cumulative::Reserved& reserved : cumulative.reserved) {
                sum += " + bool2int(" + text(reserved.span.from) + " <= " + tick + " /\\ " + tick + " < " +
                       text(reserved.span.to) + ") * " + text(reserved.amount);
            }
            return sum;
        };
        const auto keep = [&](const std::string& tick) {
            constraint("(" + usedAt(tick) + " = 0) \\/ (" + usedAt(tick) + " + " + reservedAt(tick) +
                       " <= " + text(cumulative.capacity) + ")");
        };
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            keep(s(a));
        }
        for (const Cumulative::Reserved& reserved : cumulative.reserved) {
            keep(text(reserved.span.from));
        }
    }

    void machine(std::size_t r) {
        const Machine& machine = *p_.resources[r].machine;
        const auto setup = [&](const Use& from, const Use& to) {
            return machine.setup.empty() ? Tick{0} : machine.setup[at(from.family)][at(to.family)];
        };
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            for (std::size_t i = 0; i < p_.activities[a].modes.size(); ++i) {
                const Use* mine = useOf(p_.activities[a].modes[i], r);
                if (mine == nullptr) {
                    continue;
                }
                const std::string then = isMode(a, i) + " -> ";
                if (!machine.first.empty()) {
                    constraint(then + s(a) + " >= " + text(machine.first[at(mine->family)]));
                }
                for (const Span& away : machine.away) {
                    constraint(then + "(" + e(a) + " <= " + text(away.from) + " \\/ " + s(a) + " >= " + text(away.to) +
                               ")");
                }
                for (std::size_t b = 0; b < a; ++b) {
                    for (std::size_t j = 0; j < p_.activities[b].modes.size(); ++j) {
                        const Use* other = useOf(p_.activities[b].modes[j], r);
                        if (other == nullptr) {
                            continue;
                        }
                        const bool isAlike = machine.together > 1 && mine->family == other->family;
                        constraint("(" + isMode(a, i) + " /\\ " + isMode(b, j) + ") -> (" +
                                   (isAlike ? s(a) + " = " + s(b) + " \\/ " : "") + e(a) + " + " +
                                   text(setup(*mine, *other)) + " <= " + s(b) + " \\/ " + e(b) + " + " +
                                   text(setup(*other, *mine)) + " <= " + s(a) + ")");
                    }
                }
            }
        }
    }

    /// What the loads of a machine hold, seen from each of their activities.
    void loads(std::size_t r) {
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            std::string sum = "0";
            for (std::size_t b = 0; b < p_.activities.size(); ++b) {
                sum += " + bool2int(" + s(b) + " = " + s(a) + ") * " + amount(b, r);
            }
            constraint(sum + " <= " + text(p_.resources[r].machine->together));
        }
    }

    /// The level at each start and end, of what has flowed by then.
    void reservoir(std::size_t r) {
        const Reservoir& reservoir = *p_.resources[r].reservoir;
        const auto flows = [&](std::size_t a, Point point) {
            return byMode(a, [&](const Mode& mode) {
                int sum = 0;
                for (const Flow& flow : mode.flows) {
                    sum += at(flow.resource) == r && flow.point == point ? flow.amount : 0;
                }
                return sum;
            });
        };
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            for (const std::string& now : {s(a), e(a)}) {
                std::string level = text(reservoir.initial);
                for (std::size_t b = 0; b < p_.activities.size(); ++b) {
                    level += " + bool2int(" + s(b) + " <= " + now + ") * " + flows(b, Point::Start);
                    level += " + bool2int(" + e(b) + " <= " + now + ") * " + flows(b, Point::End);
                }
                constraint(level + " >= " + text(reservoir.least));
                constraint(level + " <= " + text(reservoir.most));
            }
        }
    }

    void cost(const std::string& term) { total_ += " + " + term; }

    /// The curve at a tick, where something holds.
    std::string along(const Curve& curve, const std::string& tick, const std::string& when) const {
        return "bool2int(" + when + ") * " + table(tick, [&](Tick t) { return valueOf(curve, t); });
    }

    void costs() {
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            cost(byMode(a, [](const Mode& mode) { return mode.cost; }, p_.activities[a].absentCost));
        }
        for (const TimeCost& one : p_.costs.times) {
            cost(along(one.curve, time(one.activity, one.point), done(at(one.activity))));
        }
        for (std::size_t i = 0; i < p_.costs.extents.size(); ++i) {
            extent(p_.costs.extents[i], std::to_string(i));
        }
        for (const LoadCost& one : p_.costs.loads) {
            for (Tick t = std::max(one.span.from, 0); t < std::min(one.span.to, p_.horizon); ++t) {
                std::string used = "0";
                for (std::size_t a = 0; a < p_.activities.size(); ++a) {
                    used += " + bool2int(" + s(a) + " <= " + text(t) + " /\\ " + text(t) + " < " + e(a) + ") * " +
                            amount(a, at(one.resource));
                }
                cost(text(one.perTick) + " * max(0, " + used + " - " + text(one.above) + ")");
            }
        }
        for (std::size_t i = 0; i < p_.costs.work.size(); ++i) {
            const std::string work = "work" + std::to_string(i);
            std::string sum = "0";
            for (std::size_t a = 0; a < p_.activities.size(); ++a) {
                sum += " + " + busy(a, at(p_.costs.work[i].worker)) + " * " +
                       byMode(a, [](const Mode& mode) { return mode.duration; });
            }
            line("var 0.." + text(p_.horizon) + ": " + work + ";");
            constraint(work + " = " + sum);
            cost(along(p_.costs.work[i].curve, work, "true"));
        }
        for (const HandOver& one : p_.costs.handOvers) {
            for (std::size_t w = 0; w < p_.workers.size(); ++w) {
                cost(text(one.cost) + " * bool2int(" + done(at(one.from)) + " /\\ " + busy(at(one.to), w) +
                     " = 1 /\\ " + busy(at(one.from), w) + " = 0)");
            }
        }
        for (const Before& one : p_.costs.before) {
            before(one);
        }
    }

    void extent(const ExtentCost& one, const std::string& number) {
        const std::string first = "first" + number;
        const std::string last = "last" + number;
        std::string starts = text(p_.horizon);
        std::string ends = "0";
        std::string any = "false";
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            std::string isIn = done(a);
            if (one.worker) {
                isIn = "(" + busy(a, at(*one.worker)) + " = 1)";
            } else if (one.resource) {
                isIn = "(" +
                       byMode(a,
                              [&](const Mode& mode) {
                                  const auto isIt = [&](const auto& use) { return use.resource == *one.resource; };
                                  return std::any_of(mode.uses.begin(), mode.uses.end(), isIt) ||
                                                 std::any_of(mode.flows.begin(), mode.flows.end(), isIt)
                                             ? 1
                                             : 0;
                              }) +
                       " = 1)";
            }
            starts += ", if " + isIn + " then " + s(a) + " else " + text(p_.horizon) + " endif";
            ends += ", if " + isIn + " then " + e(a) + " else 0 endif";
            any += " \\/ " + isIn;
        }
        for (const std::string& name : {first, last}) {
            line("var 0.." + text(p_.horizon) + ": " + name + ";");
        }
        constraint(first + " = min([" + starts + "])");
        constraint(last + " = max([" + ends + "])");
        const std::string length = "length" + number;
        line("var 0.." + text(p_.horizon) + ": " + length + ";");
        constraint(length + " = max(0, " + last + " - " + first + ")");
        cost(along(one.curve,
                   one.of == ExtentCost::Of::First  ? first
                   : one.of == ExtentCost::Of::Last ? last
                                                    : length,
                   any));
    }

    void before(const Before& one) {
        const std::size_t a = at(one.activity);
        cost(text(one.otherMode) + " * bool2int(" + m(a) + " != " + std::to_string(one.mode + 1) + ")");
        if (one.mode == kAbsent) {
            return;
        }
        cost(text(one.perTick) + " * bool2int" + done(a) + " * abs(" + s(a) + " - " + text(one.start) + ")");
        for (std::size_t w = 0; w < p_.workers.size(); ++w) {
            if (std::find(one.workers.begin(), one.workers.end(), static_cast<WorkerIndex>(w)) == one.workers.end()) {
                cost(text(one.perPerson) + " * " + busy(a, w));
            }
        }
    }

    /// Starts at which the worker is there all the while that the mode does not pause.
    std::string presentStarts(const Worker& worker, const Mode& mode) const {
        std::string starts;
        for (Tick start = 0; start <= p_.horizon; ++start) {
            const Tick end = endOf(mode, start);
            bool isThere = end <= p_.horizon;
            if (mode.duration == 0) {
                isThere = std::any_of(worker.present.begin(), worker.present.end(),
                                      [&](const Span& span) { return span.from <= start && start <= span.to; });
            }
            for (Tick t = start; t < end && isThere; ++t) {
                isThere =
                    pausesAt(mode, t) || std::any_of(worker.present.begin(), worker.present.end(),
                                                     [&](const Span& span) { return span.from <= t && t < span.to; });
            }
            if (isThere) {
                starts += (starts.empty() ? "" : ",") + text(start);
            }
        }
        return "{" + starts + "}";
    }

    static std::string at_(std::size_t a, std::size_t mode, std::size_t need, std::size_t worker) {
        return "y_" + std::to_string(a) + "_" + std::to_string(mode) + "_" + std::to_string(need) + "_" +
               std::to_string(worker);
    }
    static std::string busy(std::size_t a, std::size_t worker) {
        return "busy_" + std::to_string(a) + "_" + std::to_string(worker);
    }

    void stays() {
        for (const Stay& stay : p_.stays) {
            for (std::size_t w = 0; w < p_.workers.size(); ++w) {
                constraint("(" + done(at(stay.from)) + " /\\ " + busy(at(stay.to), w) + " = 1) -> " +
                           busy(at(stay.from), w) + " = 1");
            }
        }
    }

    void people() {
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            std::vector<std::string> places(p_.workers.size(), "0"); // how many each worker fills
            for (std::size_t i = 0; i < p_.activities[a].modes.size(); ++i) {
                const Mode& mode = p_.activities[a].modes[i];
                for (std::size_t k = 0; k < mode.needs.size(); ++k) {
                    std::string filled = "0";
                    for (std::size_t w = 0; w < p_.workers.size(); ++w) {
                        const std::vector<SkillIndex>& skills = p_.workers[w].skills;
                        if (std::find(skills.begin(), skills.end(), mode.needs[k].skill) == skills.end()) {
                            continue;
                        }
                        line("var 0..1: " + at_(a, i, k, w) + ";");
                        filled += " + " + at_(a, i, k, w);
                        places[w] += " + " + at_(a, i, k, w);
                    }
                    constraint(filled + " = " + text(mode.needs[k].count) + " * bool2int" + isMode(a, i));
                }
                for (const WorkerIndex worker : mode.team) {
                    places[at(worker)] += " + bool2int" + isMode(a, i);
                }
            }
            for (std::size_t w = 0; w < p_.workers.size(); ++w) {
                line("var 0..1: " + busy(a, w) + ";");
                constraint(busy(a, w) + " = " + places[w]);
                for (std::size_t i = 0; i < p_.activities[a].modes.size(); ++i) {
                    constraint("(" + busy(a, w) + " = 1 /\\ " + isMode(a, i) + ") -> " + s(a) + " in " +
                               presentStarts(p_.workers[w], p_.activities[a].modes[i]));
                }
                for (std::size_t b = 0; b < a; ++b) {
                    constraint("(" + busy(a, w) + " + " + busy(b, w) + " = 2) -> (" + e(a) + " <= " + s(b) + " \\/ " +
                               e(b) + " <= " + s(a) + ")");
                }
            }
        }
    }

    const Problem& p_;
    std::string total_ = "0";
    std::string out_;
};

} // namespace

bool isMinizincThere() {
    return std::system("command -v minizinc >/dev/null 2>&1 && command -v fzn-gecode >/dev/null 2>&1") == 0; // NOLINT
}

std::string asMinizinc(const Problem& problem) { return Writer{problem}.write(); }

MinizincAnswer runMinizinc(const std::string& model) {
    std::string folder = (std::filesystem::temp_directory_path() / "piewright-XXXXXX").string();
    if (mkdtemp(folder.data()) == nullptr) {
        return {};
    }
    const std::string file = folder + "/model.mzn";
    std::ofstream(file) << model;
    std::string output;
    const std::string command = "minizinc --solver gecode --fzn-flags '-fail 300000' '" + file + "' 2>/dev/null";
    if (FILE* pipe = popen(command.c_str(), "r"); pipe != nullptr) { // NOLINT(cert-env33-c)
        char buffer[256];
        while (std::fgets(buffer, sizeof buffer, pipe) != nullptr) {
            output += buffer;
        }
        pclose(pipe);
    }
    std::filesystem::remove_all(folder);
    MinizincAnswer answer;
    if (output.find("=====UNSATISFIABLE=====") != std::string::npos) {
        answer.finished = true;
    } else if (output.find("==========") != std::string::npos) { // the last and best, proved
        answer.finished = true;
        answer.value = std::strtoll(output.c_str() + output.rfind("total=") + 6, nullptr, 10);
    }
    return answer;
}

} // namespace piewright::schedule
