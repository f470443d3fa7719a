// The amounts the trade counts in, each its own type: a weight never adds to a length, and a number is neither.
// Stored as whole small units, so that sums are exact and the same on every machine.
#pragma once

#include <cassert>
#include <cmath>
#include <compare>
#include <cstdint>

namespace piewright {

/// One kind of amount, counted in a whole small unit named by the kind. Only the sums that mean something compile:
/// amount ± amount, amount × count, amount ÷ amount (a plain ratio).
/// Adding past ±9.2e18 small units (nine billion tonnes) is a bug, not an input: the readers bound what comes in.
template <class Kind> class Quantity {
  public:
    constexpr Quantity() = default;
    static constexpr Quantity ofRaw(std::int64_t count) { return Quantity(count); }

    /// Nearest whole small unit, halves away from zero.
    static Quantity nearest(double count) { return Quantity(std::llround(count)); }

    /// The count of small units: for storing, printing and the physics at the edge.
    [[nodiscard]] constexpr std::int64_t raw() const { return count_; }

    constexpr auto operator<=>(const Quantity&) const = default;

    constexpr Quantity operator-() const { return Quantity(-count_); }
    constexpr Quantity& operator+=(Quantity other) { return count_ += other.count_, *this; }
    constexpr Quantity& operator-=(Quantity other) { return count_ -= other.count_, *this; }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.count_ + b.count_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.count_ - b.count_); }
    friend constexpr Quantity operator*(Quantity a, std::int64_t times) { return Quantity(a.count_ * times); }
    friend constexpr Quantity operator*(std::int64_t times, Quantity a) { return Quantity(a.count_ * times); }

    /// How many of `b` make `a`; `b` must not be zero.
    friend double ratio(Quantity a, Quantity b) {
        assert(b.count_ != 0);
        return static_cast<double>(a.count_) / static_cast<double>(b.count_);
    }

    /// `a` times a plain factor, to the nearest small unit.
    friend Quantity scaled(Quantity a, double factor) { return nearest(static_cast<double>(a.count_) * factor); }

    /// The least whole number of `lot` that holds `a`; 0 for nothing. `lot` must be positive.
    friend constexpr std::int64_t wholeLots(Quantity a, Quantity lot) {
        assert(lot.count_ > 0);
        return a.count_ <= 0 ? 0 : (a.count_ + lot.count_ - 1) / lot.count_;
    }

    /// `a` to the nearest multiple of `step` (halves up); `step` must be positive, `a` not negative.
    friend constexpr Quantity roundedTo(Quantity a, Quantity step) {
        assert(step.count_ > 0 && a.count_ >= 0);
        return Quantity((a.count_ + step.count_ / 2) / step.count_ * step.count_);
    }

  private:
    constexpr explicit Quantity(std::int64_t count) : count_(count) {}
    std::int64_t count_ = 0;
};

struct MassKind {};    // counted in milligrams
struct VolumeKind {};  // counted in microlitres
struct LengthKind {};  // counted in micrometres
struct KelvinKind {};  // a temperature *difference*, counted in millikelvin
struct DensityKind {}; // counted in micrograms per millilitre (= g/m3)
struct ShareKind {};   // part of a whole, counted in millionths
struct BakersKind {};  // part of the flour, counted in millionths: flour is 100 %
struct PowerKind {};   // counted in watts

using Mass = Quantity<MassKind>;
using Volume = Quantity<VolumeKind>;
using Length = Quantity<LengthKind>;
using Kelvin = Quantity<KelvinKind>;
using Density = Quantity<DensityKind>;
using Share = Quantity<ShareKind>;
using BakersPercent = Quantity<BakersKind>;
using Power = Quantity<PowerKind>;

constexpr Mass milligrams(std::int64_t n) { return Mass::ofRaw(n); }
constexpr Mass grams(std::int64_t n) { return Mass::ofRaw(n * 1'000); }
constexpr Mass kilograms(std::int64_t n) { return Mass::ofRaw(n * 1'000'000); }
constexpr Volume microlitres(std::int64_t n) { return Volume::ofRaw(n); }
constexpr Volume millilitres(std::int64_t n) { return Volume::ofRaw(n * 1'000); }
constexpr Volume litres(std::int64_t n) { return Volume::ofRaw(n * 1'000'000); }
constexpr Length micrometres(std::int64_t n) { return Length::ofRaw(n); }
constexpr Length millimetres(std::int64_t n) { return Length::ofRaw(n * 1'000); }
constexpr Kelvin kelvins(std::int64_t n) { return Kelvin::ofRaw(n * 1'000); }
constexpr Share percent(std::int64_t n) { return Share::ofRaw(n * 10'000); }
constexpr BakersPercent ofFlour(std::int64_t pct) { return BakersPercent::ofRaw(pct * 10'000); }
constexpr Density gramsPerMillilitre(std::int64_t n) { return Density::ofRaw(n * 1'000'000); }

constexpr Share kWhole = percent(100);
constexpr BakersPercent kAllFlour = ofFlour(100);

/// As plain numbers in SI or the named unit, for the physics and for printing.
inline double inKilograms(Mass m) { return static_cast<double>(m.raw()) / 1e6; }
inline double inGrams(Mass m) { return static_cast<double>(m.raw()) / 1e3; }
inline double inMetres(Length l) { return static_cast<double>(l.raw()) / 1e6; }
inline double inMillimetres(Length l) { return static_cast<double>(l.raw()) / 1e3; }
inline double inLitres(Volume v) { return static_cast<double>(v.raw()) / 1e6; }
inline double inKelvins(Kelvin k) { return static_cast<double>(k.raw()) / 1e3; }
inline double inKilogramsPerCubicMetre(Density d) { return static_cast<double>(d.raw()) / 1e3; }
inline double asFraction(Share s) { return static_cast<double>(s.raw()) / 1e6; }
inline double asFraction(BakersPercent p) { return static_cast<double>(p.raw()) / 1e6; }

/// Weight of a volume, and room taken by a weight, to the nearest small unit.
inline Mass operator*(Volume v, Density d) {
    return Mass::nearest(static_cast<double>(v.raw()) * static_cast<double>(d.raw()) / 1e6);
}
inline Volume operator/(Mass m, Density d) {
    assert(d.raw() > 0);
    return Volume::nearest(static_cast<double>(m.raw()) * 1e6 / static_cast<double>(d.raw()));
}

/// A temperature: a point on the scale. Points subtract to a difference and never add.
class Celsius {
  public:
    constexpr Celsius() = default;
    static constexpr Celsius ofMilli(std::int64_t m) { return Celsius(m); }
    static Celsius nearest(double degC) { return Celsius(std::llround(degC * 1e3)); }
    [[nodiscard]] constexpr std::int64_t milli() const { return milli_; }
    [[nodiscard]] double degC() const { return static_cast<double>(milli_) / 1e3; }
    constexpr auto operator<=>(const Celsius&) const = default;
    friend constexpr Kelvin operator-(Celsius a, Celsius b) { return Kelvin::ofRaw(a.milli_ - b.milli_); }
    friend constexpr Celsius operator+(Celsius a, Kelvin d) { return Celsius(a.milli_ + d.raw()); }
    friend constexpr Celsius operator-(Celsius a, Kelvin d) { return Celsius(a.milli_ - d.raw()); }

  private:
    constexpr explicit Celsius(std::int64_t m) : milli_(m) {}
    std::int64_t milli_ = 0;
};
constexpr Celsius celsius(std::int64_t n) { return Celsius::ofMilli(n * 1'000); }

} // namespace piewright
