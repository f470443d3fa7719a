// What must hold between the parts of a book. A list of small checks, each looking at the whole book.
#pragma once

#include "book/book.h"
#include "book/report.h"
#include "book/sources.h"
#include "book/words.h"
#include "units/text.h"

#include <span>
#include <string>
#include <string_view>

namespace piewright::book {

/// What a check looks at and reports to.
struct Checking {
    const Book& book;
    const Sources& sources;
    Report& report;

    void error(std::string_view file, const std::string& path, std::string saw, std::string want,
               std::string hint = {}) const {
        report.error(sources.place(file, path), std::move(saw), std::move(want), std::move(hint));
    }
    void warning(std::string_view file, const std::string& path, std::string saw, std::string want,
                 std::string hint = {}) const {
        report.warning(sources.place(file, path), std::move(saw), std::move(want), std::move(hint));
    }
    /// Everything that stands at the path could be read, so that what is missing there is missing.
    [[nodiscard]] bool sound(const std::string& path) const { return report.sound(path); }
};

using Check = void (*)(const Checking&);

/// Every name that one part of the book uses stands in the part it belongs to. What a file that could not be read might
/// hold is not reported.
void checkReferences(const Checking& checking);

void checkHours(const Checking& checking);       ///< in order, apart, and some
void checkSpecialDays(const Checking& checking); ///< each date once

void checkFormulaLoops(const Checking& checking);    ///< no formula is made from itself, by whatever way
void checkFlourIsWhole(const Checking& checking);    ///< the flours of a formula sum to exactly 100 %
void checkPastes(const Checking& checking);          ///< a paste has a density; nothing else has a paste's keys
void checkRework(const Checking& checking);          ///< surplus goes from paste to paste, within a limit
void checkMixTemperatures(const Checking& checking); ///< there is water to meet the temperature with
void checkKeeping(const Checking& checking);         ///< it keeps for at least its rest; a limit if not made on the day
void checkMadeOnDelivery(const Checking& checking);  ///< something in it is delivered fresh
void checkVessels(const Checking& checking);         ///< mixers, kettles and pans
void checkFormulaRoutes(const Checking& checking);   ///< no goods' steps; a vessel where a step takes one

void checkPiesAndPortions(const Checking& checking);  ///< a pie has all a pie needs, a portion is one formula
void checkSheets(const Checking& checking);           ///< base and lid are paste
void checkDepositDensities(const Checking& checking); ///< a volume needs a density
void checkGoodRoutes(const Checking& checking);       ///< a good's route takes and bakes just what the good has
void checkOvens(const Checking& checking);            ///< there is an oven if anything bakes
void checkSoldOn(const Checking& checking);           ///< sold on open days (warns)

void checkStepNames(const Checking& checking);      ///< some steps, each name once
void checkStepAttendance(const Checking& checking); ///< who stays with a step, and how long
void checkStepTimes(const Checking& checking);      ///< each takes time, and waits make sense
void checkSkilledHands(const Checking& checking);   ///< there are hands for every step

void checkShifts(const Checking& checking);      ///< 15 min to 16 h, one a day, breaks inside
void checkShiftsApart(const Checking& checking); ///< none runs into the next day's
void checkWorkTime(const Checking& checking);    ///< breaks, rests and longest times of the rule book

void checkLivesCoverDeliveries(const Checking& checking); ///< nothing is past its life when used (warns)

void warnOfUnused(const Checking& checking);
void warnOfUnverifiedRules(const Checking& checking);
void warnOfDaysWithoutHands(const Checking& checking);
void warnOfShortKeeping(const Checking& checking); ///< over the longest time the house is shut in a week

/// Every check, in the order they are made: references first, since the others walk along them.
[[nodiscard]] std::span<const Check> allChecks();

} // namespace piewright::book
