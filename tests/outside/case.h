// One outside case: a published or exactly computed value, and what it follows from.
#pragma once

#include "finding/result.h"
#include "outside/inputs.h"
#include "outside/tolerance.h"

#include <filesystem>
#include <string>
#include <vector>

namespace piewright::outside {

struct Case {
    std::string id;
    std::string topic;
    std::string quantity; ///< what is wanted, in words
    Inputs inputs;
    std::string expected; ///< a number or a text
    std::string unit;     ///< of the expected number
    Tolerance tolerance;
    std::string source;
};

/// The cases of one file, in its order. Columns in any order: case_id, topic, quantity, inputs, expected, unit,
/// tolerance, source; others are left to people. Problems: as readTable, and every line that is no case.
Result<std::vector<Case>> readCases(const std::filesystem::path& path);

} // namespace piewright::outside
