#include "thermal/hold_table.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace piewright::thermal {

namespace {

constexpr double fahrenheit(double degF) { return (degF - 32) / 1.8; }

constexpr std::array<HoldPair, 5> kFsa{{{60, 2700, Read::Quoted},
                                        {65, 600, Read::Quoted},
                                        {70, 120, Read::Quoted},
                                        {75, 30, Read::Quoted},
                                        {80, 6, Read::Quoted}}};
// The line at 70 degC is the FSA list's own.
constexpr std::array<HoldPair, 3> kEcoli{{{60, 5580, Read::Quoted}, {65, 840, Read::Quoted}, {70, 120, Read::Quoted}}};
constexpr std::array<HoldPair, 1> kListeria{{{70, 120, Read::InSource}}};
constexpr std::array<HoldPair, 1> kCodeWhole{{{63, 15, Read::InSource}}};
constexpr std::array<HoldPair, 3> kCodeGround{
    {{63, 180, Read::InSource}, {66, 60, Read::InSource}, {68, 15, Read::InSource}}};
constexpr std::array<HoldPair, 1> kCodeStuffed{{{74, 15, Read::InSource}}};
// A time of 0 is printed so: reached is enough.
constexpr std::array<HoldPair, 31> kAppendixA65{{
    {fahrenheit(130), 6720, Read::InSource},   {fahrenheit(131), 5340, Read::FromMemory},
    {fahrenheit(132), 4260, Read::FromMemory}, {fahrenheit(133), 3360, Read::InSource},
    {fahrenheit(134), 2700, Read::InSource},   {fahrenheit(135), 2160, Read::InSource},
    {fahrenheit(136), 1680, Read::InSource},   {fahrenheit(137), 1380, Read::InSource},
    {fahrenheit(138), 1080, Read::InSource},   {fahrenheit(139), 900, Read::FromMemory},
    {fahrenheit(140), 720, Read::FromMemory},  {fahrenheit(141), 540, Read::FromMemory},
    {fahrenheit(142), 480, Read::InSource},    {fahrenheit(143), 360, Read::InSource},
    {fahrenheit(144), 300, Read::InSource},    {fahrenheit(145), 240, Read::FromMemory},
    {fahrenheit(146), 169, Read::InSource},    {fahrenheit(147), 134, Read::FromMemory},
    {fahrenheit(148), 107, Read::FromMemory},  {fahrenheit(149), 85, Read::FromMemory},
    {fahrenheit(150), 67, Read::InSource},     {fahrenheit(151), 54, Read::FromMemory},
    {fahrenheit(152), 43, Read::InSource},     {fahrenheit(153), 34, Read::FromMemory},
    {fahrenheit(154), 27, Read::FromMemory},   {fahrenheit(155), 22, Read::FromMemory},
    {fahrenheit(156), 17, Read::FromMemory},   {fahrenheit(157), 14, Read::InSource},
    {fahrenheit(158), 0, Read::InSource},      {fahrenheit(159), 0, Read::InSource},
    {fahrenheit(160), 0, Read::FromMemory},
}};
constexpr std::array<HoldPair, 31> kAppendixA7{{
    {fahrenheit(130), 7260, Read::FromMemory}, {fahrenheit(131), 5820, Read::FromMemory},
    {fahrenheit(132), 4620, Read::InSource},   {fahrenheit(133), 3720, Read::InSource},
    {fahrenheit(134), 2820, Read::InSource},   {fahrenheit(135), 2220, Read::FromMemory},
    {fahrenheit(136), 1920, Read::FromMemory}, {fahrenheit(137), 1440, Read::InSource},
    {fahrenheit(138), 1140, Read::InSource},   {fahrenheit(139), 900, Read::FromMemory},
    {fahrenheit(140), 720, Read::InSource},    {fahrenheit(141), 600, Read::InSource},
    {fahrenheit(142), 480, Read::InSource},    {fahrenheit(143), 360, Read::InSource},
    {fahrenheit(144), 300, Read::FromMemory},  {fahrenheit(145), 240, Read::FromMemory},
    {fahrenheit(146), 182, Read::FromMemory},  {fahrenheit(147), 144, Read::FromMemory},
    {fahrenheit(148), 115, Read::InSource},    {fahrenheit(149), 91, Read::FromMemory},
    {fahrenheit(150), 72, Read::InSource},     {fahrenheit(151), 58, Read::FromMemory},
    {fahrenheit(152), 46, Read::FromMemory},   {fahrenheit(153), 37, Read::InSource},
    {fahrenheit(154), 29, Read::InSource},     {fahrenheit(155), 23, Read::InSource},
    {fahrenheit(156), 19, Read::InSource},     {fahrenheit(157), 15, Read::InSource},
    {fahrenheit(158), 0, Read::FromMemory},    {fahrenheit(159), 0, Read::InSource},
    {fahrenheit(160), 0, Read::InSource},
}};

constexpr std::string_view kFsis =
    "USDA FSIS Appendix A, Compliance Guidelines for Meeting Lethality Performance Standards (1999)";
constexpr std::string_view kCode = "US states after an older FDA Food Code 3-401.11: South Dakota ARSD 44:02:07:28";

constexpr std::array<HoldTable, 8> kTables{{
    {"fsa-combinations", "core of cooked food",
     "UK Food Standards Agency, cooking safely: time/temperature combinations", kFsa},
    {"ecoli-low-temperature", "burgers, E. coli O157: longer than the FSA list below 70 degC",
     "ACMSF, report on the safe cooking of burgers", kEcoli},
    {"appendix-a-6.5-log", "cooked, roast and corned beef, 6.5-log Salmonella; its humidity conditions apply", kFsis,
     kAppendixA65},
    {"appendix-a-7-log", "cooked, roast and corned beef, 7-log Salmonella; its humidity conditions apply", kFsis,
     kAppendixA7},
    {"food-code-whole", "fish, whole-muscle meat, eggs to be eaten at once", kCode, kCodeWhole},
    {"food-code-ground", "ground meat and fish, injected meat", kCode, kCodeGround},
    {"food-code-stuffed", "poultry, stuffed food", kCode, kCodeStuffed},
    {"listeria-6-log", "6-log Listeria monocytogenes; newer raw-meat data are said to ask for more",
     "NZ MPI Technical Paper 2016/05, Standardising D and z values for cooking raw meat", kListeria},
}};

constexpr std::string_view kJuneja = "Juneja et al. 2001, Thermal inactivation of Salmonella spp.";
constexpr std::string_view kBradshaw = "Bradshaw et al. 1985, J. Food Prot. 48:743";
constexpr std::string_view kSun = "Sun (ed.), Thermal Food Processing, table 7.1";
constexpr std::string_view kListeriaName = "Listeria monocytogenes";

constexpr std::array<DecimalTime, 15> kDecimalTimes{{
    {"Salmonella (8-strain mix)", "chicken broth", 55, 4.87 * 60, kJuneja},
    {"Salmonella (8-strain mix)", "chicken broth", 58, 2.72 * 60, kJuneja},
    {"Salmonella (8-strain mix)", "chicken broth", 60, 1.30 * 60, kJuneja},
    {"Salmonella (8-strain mix)", "chicken broth", 62, 0.41 * 60, kJuneja},
    {kListeriaName, "milk", 52.2, 1683.7, kBradshaw},
    {kListeriaName, "milk", 71.7, 0.9, kBradshaw},
    {kListeriaName, "milk", 74.4, 0.7, kBradshaw},
    {kListeriaName, "ground turkey", 51.7, 81.3 * 60, kSun},
    {kListeriaName, "ground turkey", 57.2, 2.6 * 60, kSun},
    {kListeriaName, "ground turkey", 62.8, 0.6 * 60, kSun},
    {kListeriaName, "turkey bologna", 61, 2.1 * 60, kSun},
    {kListeriaName, "turkey bologna", 65, 0.27 * 60, kSun},
    {"Salmonella Senftenberg", "ground turkey", 55, 211.35 * 60, kSun},
    {"Salmonella Senftenberg", "ground turkey", 60, 13.24 * 60, kSun},
    {"Salmonella Senftenberg", "ground turkey", 65, 3.43 * 60, kSun},
}};

// Printed temperatures come through unit changes: this much is the same line.
constexpr double kSame = 1e-6;

} // namespace

std::span<const HoldTable> holdTables() { return kTables; }

const HoldTable* holdTable(std::string_view id) {
    const auto* found = std::find_if(kTables.begin(), kTables.end(), [&](const auto& table) { return table.id == id; });
    return found == kTables.end() ? nullptr : found;
}

std::optional<double> holdFor(const HoldTable& table, double degC) {
    std::optional<double> seconds;
    for (const HoldPair& pair : table.pairs)
        if (pair.degC <= degC + kSame) seconds = pair.seconds;
    return seconds;
}

std::optional<double> firstMeeting(const HoldTable& table, const Curve& curve) {
    const auto points = curve.points();
    std::optional<double> first;
    for (const HoldPair& pair : table.pairs) {
        std::optional<double> since; // when the stretch at or above the line began
        if (points.front().degC >= pair.degC) since = points.front().seconds;
        for (std::size_t i = 0; i < points.size(); ++i) {
            const CurvePoint& b = points[i];
            double until = b.seconds; // the end of the stretch within this line
            bool ends = false;
            if (i > 0) {
                const CurvePoint& a = points[i - 1];
                const auto crossing = [&] {
                    return a.seconds + (b.seconds - a.seconds) * (pair.degC - a.degC) / (b.degC - a.degC);
                };
                if (b.degC >= pair.degC && a.degC < pair.degC) since = crossing();
                if (b.degC < pair.degC && a.degC >= pair.degC) until = crossing(), ends = true;
            }
            if (since && until - *since >= pair.seconds) {
                const double met = *since + pair.seconds;
                if (!first || met < *first) first = met;
                break;
            }
            if (ends) since.reset();
        }
    }
    return first;
}

std::span<const DecimalTime> decimalTimes() { return kDecimalTimes; }

std::optional<double> decimalTime(std::string_view organism, std::string_view medium, double degC) {
    for (const DecimalTime& one : kDecimalTimes)
        if (one.organism == organism && one.medium == medium && std::abs(one.degC - degC) < kSame) return one.seconds;
    return std::nullopt;
}

} // namespace piewright::thermal
