#include "cli/run.h"

#include "cli/verbs.h"

#include <CLI/CLI.hpp>
#include <exception>
#include <iostream>
#include <map>

namespace piewright::cli {

namespace {

constexpr const char* kVersion = PIEWRIGHT_VERSION;

void example(CLI::App* verb, const std::string& line) {
    verb->footer("Example, from the project's folder:\n  " + line);
}

void salesOptions(CLI::App* verb, SalesOptions& sales) {
    verb->add_option("--sales", sales.file, "the till's CSV file [sales.csv in the house's folder]");
    verb->add_option("--till", sales.mapping,
                     "TOML file from the till's words to goods [till.toml in the house's folder, if there]");
    verb->add_option("--when", sales.columns.when, "column with the date, or date and time (a name, or #3)");
    verb->add_option("--time", sales.columns.time, "column with the time of day, when it stands apart");
    verb->add_option("--item", sales.columns.item, "column with the item");
    verb->add_option("--quantity", sales.columns.quantity, "column with the number sold");
    verb->add_option("--sold-out", sales.columns.soldOut, "column that says when it sold out");
}

} // namespace

int run(const std::vector<std::string>& arguments, std::istream&, std::ostream& out, std::ostream& err) {
    try {
        CLI::App app{"Plans the day of a pie bakehouse: how many of what, from which weights, by whom and when.\n"
                     "A plan is an estimate. Probe the food, and follow your own food-safety plan and your local "
                     "authority's rules.",
                     "piewright"};
        app.set_version_flag("--version", std::string("piewright ") + kVersion);
        app.require_subcommand(1);
        bool json = false;
        const auto addVerb = [&](const std::string& name, const std::string& what) {
            CLI::App* verb = app.add_subcommand(name, what);
            verb->add_flag("--json", json, "print JSON for programs");
            return verb;
        };

        CheckOptions checkOptions;
        CLI::App* checkVerb = addVerb("check", "Reads a house's book and tells everything that is wrong in it");
        checkVerb->add_option("house", checkOptions.house, "folder with the book's TOML files")->required();
        example(checkVerb, "piewright check data/houses/ropewalk");

        WeighOptions weighOptions;
        CLI::App* weighVerb = addVerb("weigh", "Weighs out a good or a formula: cards, heads, gauges");
        weighVerb->add_option("house", weighOptions.house, "folder with the book's TOML files")->required();
        weighVerb->add_option("what", weighOptions.what, "a good or a formula, by its short name")->required();
        weighVerb->add_option("--pieces", weighOptions.pieces, "how many of the good")->check(CLI::Range(1, 1'000'000));
        weighVerb->add_option("--make", weighOptions.make, "how much of the formula, such as \"24 kg\"");
        example(weighVerb, "piewright weigh data/houses/ropewalk beef-pie --pieces 240\n"
                           "  piewright weigh data/houses/ropewalk base-paste --make \"24 kg\"");

        SalesReportOptions salesReportOptions;
        CLI::App* salesVerb = addVerb("sales", "Reads a till's sales and tells which rows it takes, leaves, and why");
        salesVerb->add_option("house", salesReportOptions.house, "folder with the book's TOML files")->required();
        salesOptions(salesVerb, salesReportOptions.sales);
        example(salesVerb, "piewright sales data/houses/ropewalk --sales data/houses/ropewalk/sales.csv");

        PlanOptions planOptions;
        CLI::App* planVerb = addVerb("plan", "Plans a day from the book and the sales");
        planVerb->add_option("house", planOptions.house, "folder with the book's TOML files")->required();
        salesOptions(planVerb, planOptions.sales);
        planVerb->add_option("--date", planOptions.date,
                             "the day to plan, as 2026-11-27 [the next open day after the last sale]");
        planVerb->add_option("--seed", planOptions.seed, "same seed, same plan")->capture_default_str();
        planVerb->add_option("--work", planOptions.work, "how long to look for a schedule, in placements tried")
            ->capture_default_str();
        planVerb->add_option("--plan", planOptions.planFile, "write the plan to this file, as JSON");
        planVerb->add_option("--pdf", planOptions.pdf, "write the sheets to this file, as PDF");
        example(planVerb, "piewright plan data/houses/ropewalk --date 2026-11-27 --pdf friday.pdf");

        SheetOptions sheetOptions;
        CLI::App* sheetVerb = addVerb("sheet", "Prints a plan's sheets: as text, or as PDF for the wall");
        sheetVerb->add_option("plan", sheetOptions.plan, "a plan written by `piewright plan --plan`")->required();
        sheetVerb->add_option("--pdf", sheetOptions.pdf, "write the sheets to this file, as PDF");
        sheetVerb->add_option("--only", sheetOptions.only, "one kind of sheet")
            ->check(CLI::IsMember({"day", "cards", "ovens"}));
        example(sheetVerb, "piewright plan data/houses/ropewalk --plan friday.json\n"
                           "  piewright sheet friday.json --pdf friday.pdf");

        std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
        try {
            app.parse(reversed);
        } catch (const CLI::ParseError& error) {
            // CLI11 uses its own exit codes; ours are 0 for help and 2 for what is refused.
            return app.exit(error, out, err) == 0 ? 0 : static_cast<int>(Fault::Input);
        }
        const Streams streams{out, err, json};
        if (checkVerb->parsed()) return check(checkOptions, streams);
        if (weighVerb->parsed()) return weigh(weighOptions, streams);
        if (salesVerb->parsed()) return salesReport(salesReportOptions, streams);
        if (planVerb->parsed()) return plan(planOptions, streams);
        return sheet(sheetOptions, streams);
    } catch (const std::exception& error) {
        err << "piewright: a fault of ours: " << error.what() << '\n';
    } catch (...) {
        err << "piewright: a fault of ours\n";
    }
    return static_cast<int>(Fault::Ours);
}

} // namespace piewright::cli
