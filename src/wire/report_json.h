// The JSON forms of what the other verbs answer; docs/formats/reports.md has every field.
#pragma once

#include "book/read.h"
#include "day/weigh_out.h"
#include "sales/import.h"

#include <string>
#include <string_view>
#include <vector>

namespace piewright::wire {

/// What a checked book holds, and what a person should look at in it.
[[nodiscard]] std::string bookReport(const book::Book& book, const std::vector<Finding>& warnings);

/// What a sales file gave.
[[nodiscard]] std::string toJson(const sales::Report& report);

/// What is weighed out: pieces, cards and needs as in a plan.
[[nodiscard]] std::string toJson(const day::WeighedOut& weighed);

/// That a file was written.
[[nodiscard]] std::string writtenReport(std::string_view file);

} // namespace piewright::wire
