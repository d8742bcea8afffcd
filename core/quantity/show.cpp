// SPDX-License-Identifier: GPL-3.0-or-later
// One place decides in which unit and with how many decimals a quantity is shown.
#include "quantity/colour.h"
#include "quantity/density.h"
#include "quantity/shown_units.h"
#include "quantity/text.h"

#include <cmath>
#include <fmt/core.h>

namespace staveline {
namespace {

/// Fixed decimals, the same in every locale; never "-0.0".
std::string fixed(double value, int decimals) {
    if (!std::isfinite(value))
        return "?";
    auto text = fmt::format("{:.{}f}", value, decimals);
    if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos)
        text.erase(0, 1);
    return text;
}
/// At most one decimal, and none when it would be 0: "66", "66.5".
std::string upToOne(double value) {
    auto text = fixed(value, 1);
    if (text.ends_with(".0"))
        text.resize(text.size() - 2);
    return text;
}
/// Three figures or all whole ones: 0.45, 6.2, 88.0, 1250. `from` is the size at which the second decimal goes.
std::string scaled(double value, double from = 1) {
    const double size = std::abs(value);
    return fixed(value, size < from ? 2 : size < 999.95 ? 1 : 0);
}
std::string signedPoints(double points) {
    const auto text = fixed(points, 1);
    return points > 0 && text != "0.0" ? '+' + text : text;
}

/// How each kind of argument looks.
struct Show {
    const DisplayUnits& units;

    std::string operator()(const std::string& text) const { return text; }
    std::string operator()(std::int64_t count) const { return fmt::format("{}", count); }
    std::string operator()(Number n) const { return fixed(n.value, n.decimals); }
    std::string operator()(SignedPoints d) const { return signedPoints(d.points); }
    std::string operator()(Points p) const { return fixed(p.points, 1); }
    std::string operator()(Litres v) const {
        const auto [litres, word] = shownVolume(units.volume);
        const double shown = v.l / litres;
        const bool large = units.volume == DisplayUnits::Volume::hectolitre;
        return fmt::format("{} {}", large ? fixed(shown, 2) : scaled(shown), word);
    }
    std::string operator()(Kilograms m) const { return scaled(m.kg, 10) + " kg"; }
    std::string operator()(Grams m) const { return (std::abs(m.g) < 10 ? upToOne(m.g) : fixed(m.g, 0)) + " g"; }
    std::string operator()(Celsius t) const {
        const auto [step, zero, word] = shownTemperature(units.temperature);
        const double shown = t.c * step + zero;
        const bool fine = units.temperature == DisplayUnits::Temperature::celsius; // 1 °F is fine enough
        return fmt::format("{} {}", fine ? upToOne(shown) : fixed(shown, 0), word);
    }
    std::string operator()(CelsiusPerMinute r) const {
        const auto [step, zero, word] = shownTemperature(units.temperature);
        return fmt::format("{} {}/min", upToOne(r.cPerMin * step), word);
    }
    std::string operator()(Minutes t) const { return upToOne(t.min) + " min"; }
    std::string operator()(Days t) const {
        const auto text = fixed(t.d, 0);
        return text + (text == "1" ? " day" : " days");
    }
    std::string operator()(std::chrono::sys_days day) const { return dayInWords(day); }
    std::string operator()(Plato extract) const {
        if (units.gravity == DisplayUnits::Gravity::specific)
            return fixed(toGravity(extract).sg, 3);
        return fixed(extract.p, 1) + " °P";
    }
    std::string operator()(SpecificGravity gravity) const {
        if (units.gravity == DisplayUnits::Gravity::plato)
            return fixed(toPlato(gravity).p, 1) + " °P";
        return fixed(gravity.sg, 3);
    }
    std::string operator()(GramsPerLitre c) const { return scaled(c.gPerL) + " g/L"; }
    std::string operator()(MilligramsPerLitre c) const { return scaled(c.mgPerL) + " mg/L"; }
    std::string operator()(Ibu b) const { return (std::abs(b.ibu) < 10 ? upToOne(b.ibu) : fixed(b.ibu, 0)) + " IBU"; }
    std::string operator()(Ebc colour) const {
        if (units.colour == DisplayUnits::Colour::srm)
            return upToOne(toSrm(colour)) + " SRM";
        return upToOne(colour.ebc) + " EBC";
    }
    std::string operator()(Ph ph) const { return fixed(ph.ph, 2); }
    std::string operator()(PercentVol a) const { return fixed(a.pct, 1) + " % vol"; }
    std::string operator()(Share s) const { return upToOne(100 * s.of1) + " %"; }
    std::string operator()(LitresPerKilogram r) const { return fixed(r.lPerKg, 1) + " L/kg"; }
    std::string operator()(Co2Volumes c) const { return fixed(c.vol, 1) + " vol"; }
};

} // namespace

std::string show(const ArgumentValue& value, const DisplayUnits& units) {
    return std::visit(Show{units}, value);
}

} // namespace staveline
