#include "finding/finding.h"

#include <algorithm>

namespace piewright {

std::string toText(const Finding& finding) {
    std::string line = finding.place.file;
    if (finding.place.line > 0) {
        line += ':' + std::to_string(finding.place.line);
        if (finding.place.column > 0) line += ':' + std::to_string(finding.place.column);
    }
    if (!line.empty()) line += ": ";
    if (finding.severity == Severity::Warning) line += "warning: ";
    if (!finding.place.key.empty()) line += finding.place.key + ": ";
    line += finding.saw;
    if (!finding.want.empty()) line += "; want " + finding.want;
    if (!finding.hint.empty()) line += " (" + finding.hint + ")";
    return line;
}

std::string toText(std::vector<Finding> findings) {
    std::stable_sort(findings.begin(), findings.end(),
                     [](const Finding& a, const Finding& b) { return a.place < b.place; });
    std::string text;
    for (const Finding& finding : findings) text += toText(finding) + '\n';
    return text;
}

} // namespace piewright
