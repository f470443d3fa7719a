// Published composition of foods, by source and code: `SR28:11352`.
#pragma once

#include "finding/result.h"

#include <filesystem>
#include <map>
#include <optional>
#include <string>

namespace piewright::outside {

/// Grams in 100 g of the edible part; nothing where the table gives nothing. A trace is zero.
struct Food {
    std::optional<double> water;
    std::optional<double> protein;
    std::optional<double> fat;
    std::optional<double> carbohydrate;
    std::optional<double> fibre;
    std::optional<double> ash;
    std::optional<double> refuse; ///< per cent of the bought weight
};

class Foods {
  public:
    /// The food of that key, if the table has it.
    [[nodiscard]] const Food* find(const std::string& key) const {
        const auto found = foods_.find(key);
        return found == foods_.end() ? nullptr : &found->second;
    }

  private:
    friend Result<Foods> readFoods(const std::filesystem::path& path);
    std::map<std::string, Food> foods_;
};

/// Columns source, code, water_g, protein_g, fat_g, carbohydrate_g, fibre_g, ash_g, refuse_pct. Problems as readTable,
/// and what is no number from -5 to 100, `Tr` or empty.
Result<Foods> readFoods(const std::filesystem::path& path);

} // namespace piewright::outside
