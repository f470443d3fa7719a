// A value, or why there is none. Shaped like std::expected, which a later standard brings.
#pragma once

#include "finding/finding.h"

#include <cassert>
#include <utility>
#include <variant>

namespace piewright {

/// Why a value could not be had: whose fault, and every finding (at least one).
struct Problems {
    Fault fault = Fault::Input;
    std::vector<Finding> findings;

    /// One finding of a single sentence, for what has no place in a file.
    static Problems one(Fault fault, std::string saw, std::string want = {}, Place place = {}) {
        return {fault, {Finding{std::move(place), std::move(saw), std::move(want), {}}}};
    }
};

template <class T> class [[nodiscard]] Result {
  public:
    Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}              // NOLINT: implicit on purpose
    Result(Problems problems) : held_(std::in_place_index<1>, std::move(problems)) {} // NOLINT: implicit on purpose

    [[nodiscard]] bool ok() const { return held_.index() == 0; }
    explicit operator bool() const { return ok(); }

    /// The value. Asking a failed result for it is a bug.
    [[nodiscard]] const T& value() const& { return assert(ok()), std::get<0>(held_); }
    [[nodiscard]] T& value() & { return assert(ok()), std::get<0>(held_); }
    [[nodiscard]] T&& value() && { return assert(ok()), std::move(std::get<0>(held_)); }
    const T& operator*() const& { return value(); }
    T& operator*() & { return value(); }
    const T* operator->() const { return &value(); }
    T* operator->() { return &value(); }

    [[nodiscard]] const Problems& problems() const { return assert(!ok()), std::get<1>(held_); }

  private:
    std::variant<T, Problems> held_;
};

} // namespace piewright
