// How many of each good for which date, and why.
#pragma once

#include "book/book.h"
#include "demand/amounts.h"
#include "demand/forecast.h"

#include <memory>
#include <vector>

namespace piewright::day {

/// One good's amount for one date, or for the dates until its perishable comes in again.
struct Chosen {
    GoodId good;
    demand::Amount amount;
    Money price, cost, leftover;
    int low = 0, middle = 0, high = 0; ///< 10, 50 and 90 % quantiles of what people may want
    demand::Profile profile{};         ///< of the first of its dates
    std::vector<Date> dates;           ///< the dates it is for
    std::vector<std::string> because;
};

/// Amounts of every good sold on `date`, in the order of their ids. Empty when the house is shut.
[[nodiscard]] std::vector<Chosen> amountsOn(const book::Book& book, const demand::Forecaster& forecaster, Date date);

/// The good's whole amount over several dates together: one making serves them all. `dates` is not empty.
[[nodiscard]] Chosen amountOver(const book::Book& book, const demand::Forecaster& forecaster, const book::Good& good,
                                const std::vector<Date>& dates);

/// Whether what `date` needs of a formula was made before it: a formula of the day before that keeps from the last open
/// date to this one, or one that is made when its perishable comes in.
[[nodiscard]] bool madeBefore(const book::Book& book, const book::Formula& formula, Date date);

/// Whether a formula of this kind of making is started on `date` for others: the day its shortest-lived stuff comes in.
[[nodiscard]] bool comesInOn(const book::Book& book, const book::Formula& formula, Date date);

/// The open dates that a making on `date` is for: from when it has rested until the next making has, within what it
/// keeps, on which the good is sold. For Made::Delivery.
[[nodiscard]] std::vector<Date> datesServed(const book::Book& book, const book::Formula& formula,
                                            const book::Good& good, Date date);

/// The stuff of a formula that keeps least, if any of its stuffs has a life; ties by the order of the lines.
[[nodiscard]] const book::Stuff* mostPerishable(const book::Book& book, const book::Formula& formula);

/// The supplier of a stuff's first pack; none for tap water.
[[nodiscard]] const book::Supplier* supplierOf(const book::Book& book, const book::Stuff& stuff);

} // namespace piewright::day
