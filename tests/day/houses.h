// Houses and histories for the day's tests.
#pragma once

#include "book/read.h"
#include "day/make.h"
#include "demand/forecast.h"

#include <map>
#include <string>

namespace piewright::test {

/// The demo house. Fails the test when it does not read.
book::Book ropewalk();

/// Sixteen weeks of invented sales up to the day before `until`: each good sells `perDay` on an open day, half as much
/// again on Saturdays, give or take a tenth by the week's number, with a midday peak.
demand::History history(const book::Book& book, Date until, const std::map<std::string, int>& perDay);

/// The demo house's usual numbers for `history`.
const std::map<std::string, int>& usualSales();

Date date(int year, unsigned month, unsigned day);

/// A plan of the house, or a failed test with every reason.
day::Plan planFor(const book::Book& book, Date date, const std::map<std::string, int>& perDay = usualSales());

} // namespace piewright::test
