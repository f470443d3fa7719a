// The reader and the printer of each of the book's files, and the keys each table may have.
#pragma once

#include "book/book.h"
#include "book/fields.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::book {

/// Each reads the file's top table into the book. What can't be read is reported and left at its default; the entry
/// stands in the book all the same, so that references to it lead somewhere, and is marked as flawed.
void readHouse(Reading& reading, const Node& file, Book& book);
void readSuppliers(Reading& reading, const Node& file, Book& book);
void readStuffs(Reading& reading, const Node& file, Book& book);
void readFormulas(Reading& reading, const Node& file, Book& book);
void readTins(Reading& reading, const Node& file, Book& book);
void readGoods(Reading& reading, const Node& file, Book& book);
void readGear(Reading& reading, const Node& file, Book& book);
void readHands(Reading& reading, const Node& file, Book& book);
void readRoutes(Reading& reading, const Node& file, Book& book);
void readRules(Reading& reading, const Node& file, Book& book);

/// Each prints the file; empty text when there is nothing in it.
[[nodiscard]] std::string printHouse(const Book& book);
[[nodiscard]] std::string printSuppliers(const Book& book);
[[nodiscard]] std::string printStuffs(const Book& book);
[[nodiscard]] std::string printFormulas(const Book& book);
[[nodiscard]] std::string printTins(const Book& book);
[[nodiscard]] std::string printGoods(const Book& book);
[[nodiscard]] std::string printGear(const Book& book);
[[nodiscard]] std::string printHands(const Book& book);
[[nodiscard]] std::string printRoutes(const Book& book);
[[nodiscard]] std::string printRules(const Book& book);

/// What `[tighten]` and `[confirm]` of house.toml do to the rule book in force. Looser than the rule book is an error.
void applyHouseRules(Reading& reading, const Node& houseFile, RuleBook& rules);

/// A kind of table and its keys, for the documentation's test. A key `NAME` stands for any name.
struct KnownTable {
    std::string_view path; ///< `good.NAME.base`
    Keys keys;
};

/// One of the book's files.
struct BookFile {
    std::string_view name; ///< `goods.toml`
    void (*read)(Reading&, const Node&, Book&);
    std::string (*print)(const Book&);
    Keys tables;                            ///< at the top of the file
    std::span<const KnownTable> (*known)(); ///< all that may stand in it
    bool needed;                            ///< a book without it is no book
};

/// What may stand in each file.
[[nodiscard]] std::span<const KnownTable> houseTables();
[[nodiscard]] std::span<const KnownTable> supplierTables();
[[nodiscard]] std::span<const KnownTable> stuffTables();
[[nodiscard]] std::span<const KnownTable> formulaTables();
[[nodiscard]] std::span<const KnownTable> tinTables();
[[nodiscard]] std::span<const KnownTable> goodTables();
[[nodiscard]] std::span<const KnownTable> gearTables();
[[nodiscard]] std::span<const KnownTable> handTables();
[[nodiscard]] std::span<const KnownTable> routeTables();
[[nodiscard]] std::span<const KnownTable> ruleTables();

/// The order they are read in: house.toml first, for its currency.
[[nodiscard]] std::span<const BookFile> bookFiles();

} // namespace piewright::book
