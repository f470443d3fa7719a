#include "book/fields.h"

#include "book/kinds.h"

#include <cassert>

namespace piewright::book {

namespace {

std::string listed(Keys keys) {
    std::string text;
    for (const std::string_view key : keys) text += (text.empty() ? "" : ", ") + std::string(key);
    return text;
}

// A table that stands in the wrong file.
std::string homeOf(std::string_view table) {
    for (const BookFile& file : bookFiles())
        if (std::find(file.tables.begin(), file.tables.end(), table) != file.tables.end())
            return "it stands in " + std::string(file.name);
    return {};
}

} // namespace

Fields::Fields(Reading& reading, const Node& table, std::string path, Keys known)
    : reading_(reading), table_(table), path_(std::move(path)), known_(known) {
    if (table.kind != Node::Kind::Table) {
        refuse(table, path_, wrongKind(table, "a table with the keys " + listed(known)));
        return;
    }
    const std::vector<std::string> names(known.begin(), known.end());
    for (const Member& member : table.members) {
        if (std::find(known.begin(), known.end(), member.key) != known.end()) continue;
        std::string hint = path_.empty() ? homeOf(member.key) : std::string{};
        if (hint.empty()) hint = reading_.report.suggest(member.key, names);
        reading_.report.error({reading_.file, member.line, member.column, path_},
                              inQuotes(member.key) + " is no key here", listed(known), std::move(hint));
    }
}

const Node* Fields::find(std::string_view key) const {
    assert(std::find(known_.begin(), known_.end(), key) != known_.end());
    return table_.find(key);
}

std::string Fields::path(std::string_view key) const {
    return path_.empty() ? std::string(key) : path_ + '.' + std::string(key);
}

bool Fields::needMoney(std::string_view key, Money& into, MoneyBounds bounds) {
    if (has(key)) return takeMoney(key, into, bounds);
    missing(key, wantOf<Money>());
    return false;
}

bool Fields::takeMoney(std::string_view key, Money& into, MoneyBounds bounds) {
    constexpr std::int64_t kUnit = 10'000;
    const Node* node = find(key);
    Money money;
    if (node == nullptr || !value(*node, path(key), money)) return false;
    const std::optional<Currency>& currency = reading_.currency;
    if (currency && money.currency() != *currency) {
        error(key, seen(*node) + " is in another currency", currency->code() + ", as the house's currency");
        return false;
    }
    const Money least(bounds.least * kUnit, money.currency());
    const Money most(bounds.most * kUnit, money.currency());
    if (money < least || money > most) {
        error(key, seen(*node) + (money < least ? " is too little" : " is too much"),
              writeValue(least) + " to " + writeValue(most));
        return false;
    }
    into = money;
    return true;
}

void Fields::missing(std::string_view key, std::string want) {
    if (table_.kind != Node::Kind::Table) return; // said already
    reading_.report.error({reading_.file, table_.line, table_.column, path(key)}, "is missing", std::move(want));
}

void Fields::error(std::string_view key, std::string saw, std::string want, std::string hint) {
    const Node* node = find(key);
    error(node == nullptr ? table_ : *node, path(key), std::move(saw), std::move(want), std::move(hint));
}

void Fields::error(const Node& node, const std::string& at, std::string saw, std::string want, std::string hint) {
    reading_.report.error({reading_.file, node.line, node.column, at}, std::move(saw), std::move(want),
                          std::move(hint));
}

void Fields::refuse(const Node& node, const std::string& at, const Problems& problems) {
    const Finding& finding = problems.findings.front();
    error(node, at, finding.saw, finding.want, finding.hint);
}

bool Fields::isList(const Node& node, std::string_view key, std::size_t most) {
    if (node.kind != Node::Kind::List) {
        refuse(node, path(key), wrongKind(node, "a list in [ ]"));
        return false;
    }
    if (node.items.size() > most) {
        error(key, "a list of " + std::to_string(node.items.size()), "at most " + std::to_string(most));
        return false;
    }
    return true;
}

bool Fields::isTable(const Node& node, std::string_view key) {
    if (node.kind != Node::Kind::Table) {
        refuse(node, path(key), wrongKind(node, "tables such as [" + path(key) + ".some-name]"));
        return false;
    }
    if (node.members.size() > kMostOfAKind) {
        error(key, std::to_string(node.members.size()) + " entries", "at most " + std::to_string(kMostOfAKind));
        return false;
    }
    return true;
}

bool Fields::isNamed(const Member& member, std::string_view key) {
    if (isName(member.key)) return true;
    reading_.report.error({reading_.file, member.line, member.column, path(key)},
                          inQuotes(member.key) + " is not a name", std::string(kNameWant));
    return false;
}

} // namespace piewright::book
