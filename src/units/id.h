// Names of things, one type per kind of thing: a tin's name can't be given where a good's is wanted.
#pragma once

#include <compare>
#include <functional>
#include <string>
#include <utility>

namespace piewright {

/// The short name by which the book's files speak of a thing: `beef-pie`. No arithmetic, no empty name once read.
template <class Kind> class Id {
  public:
    Id() = default;
    explicit Id(std::string name) : name_(std::move(name)) {}
    [[nodiscard]] const std::string& name() const { return name_; }
    [[nodiscard]] bool empty() const { return name_.empty(); }
    auto operator<=>(const Id&) const = default;

  private:
    std::string name_;
};

using StuffId = Id<struct StuffKind>;
using SupplierId = Id<struct SupplierKind>;
using FormulaId = Id<struct FormulaKind>;
using TinId = Id<struct TinKind>;
using GoodId = Id<struct GoodKind>;
using GearId = Id<struct GearKind>;
using HandId = Id<struct HandKind>;
using SkillId = Id<struct SkillKind>;
using StepId = Id<struct StepKind>;
using RouteId = Id<struct RouteKind>;
using FamilyId = Id<struct FamilyKind>;
using RuleId = Id<struct RuleKind>;

} // namespace piewright

template <class Kind> struct std::hash<piewright::Id<Kind>> {
    std::size_t operator()(const piewright::Id<Kind>& id) const noexcept { return std::hash<std::string>{}(id.name()); }
};
