#include "book/checks.h"

#include <array>

namespace piewright::book {

std::span<const Check> allChecks() {
    static constexpr std::array<Check, 30> kChecks{checkReferences,
                                                   checkHours,
                                                   checkSpecialDays,
                                                   checkFormulaLoops,
                                                   checkFlourIsWhole,
                                                   checkPastes,
                                                   checkRework,
                                                   checkMixTemperatures,
                                                   checkKeeping,
                                                   checkMadeOnDelivery,
                                                   checkVessels,
                                                   checkFormulaRoutes,
                                                   checkPiesAndPortions,
                                                   checkSheets,
                                                   checkDepositDensities,
                                                   checkGoodRoutes,
                                                   checkOvens,
                                                   checkSoldOn,
                                                   checkStepNames,
                                                   checkStepAttendance,
                                                   checkStepTimes,
                                                   checkSkilledHands,
                                                   checkShifts,
                                                   checkShiftsApart,
                                                   checkWorkTime,
                                                   checkLivesCoverDeliveries,
                                                   warnOfUnused,
                                                   warnOfUnverifiedRules,
                                                   warnOfDaysWithoutHands,
                                                   warnOfShortKeeping};
    return kChecks;
}

} // namespace piewright::book
