// A house's sales file, by the options of the command line. Used by the verbs that need sales.
#pragma once

#include "book/read.h"
#include "cli/verbs.h"

namespace piewright::cli {

/// The sales file of the options, or the house's own; with the till's words from the mapping file, if there is one.
Result<sales::Imported> takeSales(const book::Book& book, const std::filesystem::path& house,
                                  const SalesOptions& options);

} // namespace piewright::cli
