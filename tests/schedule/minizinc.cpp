#include "schedule/minizinc.h"

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
        line("var 0.." + text(p_.horizon) + ": makespan;");
        for (std::size_t a = 0; a < p_.activities.size(); ++a) {
            activity(a);
        }
        for (const Lag& lag : p_.lags) {
            constraint(time(lag.to, lag.toPoint) + " - " + time(lag.from, lag.fromPoint) + " >= " + text(lag.least));
        }
        for (std::size_t r = 0; r < p_.resources.size(); ++r) {
            if (p_.resources[r].machine) {
                machine(r);
            } else {
                cumulative(r);
            }
        }
        people();
        line("solve minimize makespan;");
        line("output [\"makespan=\\(makespan)\\n\"];");
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

    /// A number by mode, as an expression.
    template <class Number> std::string byMode(std::size_t a, Number number) const {
        std::string list;
        for (const Mode& mode : p_.activities[a].modes) {
            list += (list.empty() ? "" : ",") + text(number(mode));
        }
        return "[" + list + "][" + m(a) + "]";
    }

    void activity(std::size_t a) {
        const Activity& activity = p_.activities[a];
        line("var 0.." + text(p_.horizon) + ": " + s(a) + "; var 0.." + text(p_.horizon) + ": " + e(a) + "; var 1.." +
             std::to_string(activity.modes.size()) + ": " + m(a) + ";");
        constraint(e(a) + " = " + s(a) + " + " + byMode(a, [](const Mode& mode) { return mode.duration; }));
        constraint(s(a) + " >= " + text(activity.release));
        if (activity.due < kNever) {
            constraint(e(a) + " <= " + text(activity.due));
        }
        constraint(e(a) + " <= makespan");
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
                const char* comma = a == 0 ? "" : ",";
                starts += comma + s(a);
                durations += comma + byMode(a, [](const Mode& mode) { return mode.duration; });
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
                        constraint("(" + isMode(a, i) + " /\\ " + isMode(b, j) + ") -> (" + e(a) + " + " +
                                   text(setup(*mine, *other)) + " <= " + s(b) + " \\/ " + e(b) + " + " +
                                   text(setup(*other, *mine)) + " <= " + s(a) + ")");
                    }
                }
            }
        }
    }

    static std::string at_(std::size_t a, std::size_t mode, std::size_t need, std::size_t worker) {
        return "y_" + std::to_string(a) + "_" + std::to_string(mode) + "_" + std::to_string(need) + "_" +
               std::to_string(worker);
    }
    static std::string busy(std::size_t a, std::size_t worker) {
        return "busy_" + std::to_string(a) + "_" + std::to_string(worker);
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
                std::string present = "false";
                for (const Span& span : p_.workers[w].present) {
                    present +=
                        " \\/ (" + s(a) + " >= " + text(span.from) + " /\\ " + e(a) + " <= " + text(span.to) + ")";
                }
                constraint("(" + busy(a, w) + " = 1) -> (" + present + ")");
                for (std::size_t b = 0; b < a; ++b) {
                    constraint("(" + busy(a, w) + " + " + busy(b, w) + " = 2) -> (" + e(a) + " <= " + s(b) + " \\/ " +
                               e(b) + " <= " + s(a) + ")");
                }
            }
        }
    }

    const Problem& p_;
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
        answer.makespan = static_cast<Tick>(std::strtol(output.c_str() + output.rfind("makespan=") + 9, nullptr, 10));
    }
    return answer;
}

} // namespace piewright::schedule
