#include "book/read.h"

#include "book/checks.h"
#include "book/kinds.h"
#include "book/rules_file.h"
#include "book/sources.h"
#include "finding/suggest.h"
#include "toml/read.h"

#include <array>
#include <fstream>
#include <system_error>

namespace piewright::book {

namespace {

// The rule book that house.toml names, of those that come with the program.
void takeShippedRules(const Checking& checking, Book& book) {
    std::vector<std::string> names;
    for (const ShippedRules& shipped : shippedRules()) {
        names.emplace_back(shipped.name);
        if (shipped.name != book.house.ruleBook) continue;
        Reading reading{checking.report, "data/rules/" + names.back() + ".toml", {}};
        if (const auto root = toml::read(std::string(shipped.text), reading.file))
            book.rules = readRuleBook(reading, *root);
        else
            checking.report.take(root.problems());
        return;
    }
    names.emplace_back(kOwnRules);
    std::string known;
    for (const std::string& name : names) known += (known.empty() ? "one of \"" : ", \"") + name + '"';
    checking.error("house.toml", "house.rules", "no rule book \"" + book.house.ruleBook + "\" comes with the program",
                   known, didYouMean(book.house.ruleBook, names));
}

void takeRules(const Checking& checking, Book& book) {
    const Sources& sources = checking.sources;
    const Node* house = sources.root("house.toml");
    if (house == nullptr || book.house.ruleBook.empty()) return;
    if (book.house.ruleBook != kOwnRules) {
        if (sources.root("rules.toml") != nullptr)
            checking.warning("rules.toml", {}, "not in force: house.toml names another rule book",
                             "rules = \"own\" in [house], or no rules.toml");
        book.rules = {};
        takeShippedRules(checking, book);
    } else if (sources.root("rules.toml") == nullptr) {
        if (!sources.known("rules.toml")) return;
        checking.error("house.toml", "house.rules", "\"own\", and there is no rules.toml",
                       "the house's rule book in rules.toml, or the name of one that comes with the program");
        return;
    }
    Reading reading{checking.report, "house.toml", {}};
    applyHouseRules(reading, *house, book.rules);
}

// What is portioned by volume is weighed from here on.
void weighVolumes(Book& book) {
    for (auto& [id, good] : book.goods) {
        for (Deposit& deposit : good.deposits) {
            const auto formula = book.formulas.find(deposit.formula);
            if (deposit.volume && formula != book.formulas.end() && formula->second.density)
                deposit.weight = *deposit.volume * *formula->second.density;
        }
    }
}

struct Gathered {
    Texts texts;
    std::vector<Finding> troubles;
};

void gather(const std::filesystem::path& path, Gathered& into) {
    const std::string name = path.filename().string();
    const auto trouble = [&](std::string saw, std::string want) {
        into.troubles.push_back({{name, 0, 0, {}}, std::move(saw), std::move(want), {}});
    };
    std::error_code error;
    const auto status = std::filesystem::status(path, error);
    if (error || !std::filesystem::is_regular_file(status)) {
        trouble(std::filesystem::is_directory(status) ? "a folder" : "not a file that can be read",
                "a plain file of text");
        return;
    }
    const auto size = std::filesystem::file_size(path, error);
    if (!error && size > kMostFileBytes) {
        trouble(std::to_string(size) + " bytes", "at most 4 MiB");
        return;
    }
    std::ifstream in(path, std::ios::binary);
    std::string text;
    std::array<char, 65'536> part{};
    while (in && text.size() <= kMostFileBytes) { // it may have grown since
        in.read(part.data(), part.size());
        text.append(part.data(), static_cast<std::size_t>(in.gcount()));
    }
    if (error || !in.is_open() || in.bad()) {
        trouble("cannot be read", "a file that this user may read");
        return;
    }
    into.texts.emplace(name, std::move(text));
}

} // namespace

Result<ReadBook> readTexts(const Texts& texts) {
    Report report;
    Book book;
    const Sources sources(texts, report);
    const Checking checking{book, sources, report};
    std::optional<Currency> currency;
    for (const BookFile& file : bookFiles()) {
        const Node* root = sources.root(file.name);
        if (root == nullptr) continue;
        Reading reading{report, std::string(file.name), currency};
        file.read(reading, *root, book);
        currency = reading.currency;
    }
    weighVolumes(book);
    takeRules(checking, book);
    for (const Check check : allChecks()) check(checking);
    const bool refused = report.errors() > 0;
    std::vector<Finding> findings = report.take();
    if (refused) return Problems{Fault::Input, std::move(findings)};
    return ReadBook{std::move(book), std::move(findings)};
}

Result<ReadBook> readFolder(const std::filesystem::path& folder) {
    std::error_code error;
    std::filesystem::directory_iterator entries(folder, error);
    Gathered gathered;
    std::size_t count = 0;
    for (; !error && entries != std::filesystem::directory_iterator(); entries.increment(error)) {
        const std::filesystem::path& path = entries->path();
        if (path.extension() != ".toml" || path.filename().string().starts_with('.')) continue;
        if (++count > kMostFiles)
            return Problems::one(Fault::Input, "more than 64 files ending in .toml", "the ten files of one book",
                                 {folder.string(), 0, 0, {}});
        gather(path, gathered);
    }
    if (error)
        return Problems::one(Fault::World, "the folder cannot be read: " + error.message(),
                             "a folder with a book in it", {folder.string(), 0, 0, {}});
    if (!gathered.troubles.empty()) return Problems{Fault::World, std::move(gathered.troubles)};
    if (gathered.texts.empty())
        return Problems::one(Fault::Input, "no book here: no file ends in .toml",
                             "a folder with house.toml and the others", {folder.string(), 0, 0, {}});
    return readTexts(gathered.texts);
}

} // namespace piewright::book
