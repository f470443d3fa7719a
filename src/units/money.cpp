#include "units/money.h"

#include <cmath>

namespace piewright {

Money scaled(Money a, double factor) {
    return {std::llround(static_cast<double>(a.tenThousandths()) * factor), a.currency()};
}

std::string toText(Money money) {
    const bool negative = money.tenThousandths() < 0;
    const std::int64_t size = negative ? -money.tenThousandths() : money.tenThousandths();
    const std::int64_t hundredths = (size + 50) / 100;
    std::string text = negative && hundredths > 0 ? "-" : "";
    text += std::to_string(hundredths / 100) + '.';
    const std::int64_t rest = hundredths % 100;
    if (rest < 10) text += '0';
    return text + std::to_string(rest) + ' ' + money.currency().code();
}

} // namespace piewright
