// suppliers.toml: whom the house buys from.
#include "book/kinds.h"
#include "book/writer.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 1> kTop{"supplier"};
constexpr std::array<std::string_view, 7> kSupplier{"name",     "delivers",    "arrives", "lead",
                                                    "order-by", "least-order", "phone"};
constexpr std::size_t kMostDays = 7;
constexpr Bounds<Days> kLeads{Days(0), Days(60)};

Supplier readSupplier(Reading& reading, const Node& table, const std::string& path) {
    Fields fields(reading, table, path, kSupplier);
    Supplier supplier;
    fields.need("name", supplier.name);
    if (!fields.has("delivers")) fields.missing("delivers", "a list of the days it delivers, as in [\"tue\", \"fri\"]");
    if (fields.takeList("delivers", supplier.delivers, kMostDays, true) && fields.find("delivers")->items.empty())
        fields.error("delivers", "no day of delivery", "at least one, as in [\"tue\", \"fri\"]");
    fields.need("arrives", supplier.arrives);
    fields.take("lead", supplier.lead, kLeads);
    fields.need("order-by", supplier.orderBy);
    Money least;
    if (fields.takeMoney("least-order", least)) supplier.leastOrder = least;
    fields.take("phone", supplier.phone);
    return supplier;
}

} // namespace

void readSuppliers(Reading& reading, const Node& file, Book& book) {
    Fields top(reading, file, {}, kTop);
    top.eachNamed("supplier", [&](const std::string& name, const Node& node, const std::string& path) {
        const std::size_t before = reading.report.errors();
        const SupplierId id(name);
        Supplier supplier = readSupplier(reading, node, path);
        supplier.id = id;
        book.suppliers.emplace(id, std::move(supplier));
        if (reading.report.errors() != before) reading.report.flaw(path);
    });
}

std::string printSuppliers(const Book& book) {
    Writer writer;
    const Supplier plain;
    for (const auto& [id, supplier] : book.suppliers) {
        Entries entries;
        entries.put("name", supplier.name);
        entries.putList("delivers", supplier.delivers);
        entries.put("arrives", supplier.arrives);
        entries.putUnless("lead", supplier.lead, plain.lead);
        entries.put("order-by", supplier.orderBy);
        entries.put("least-order", supplier.leastOrder);
        entries.putText("phone", supplier.phone);
        writer.table("supplier." + id.name(), entries);
    }
    return writer.take();
}

std::span<const KnownTable> supplierTables() {
    static constexpr std::array<KnownTable, 1> kTables{{{"supplier.NAME", kSupplier}}};
    return kTables;
}

} // namespace piewright::book
