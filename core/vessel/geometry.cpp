// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/geometry.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>

namespace staveline::vessel {
namespace {

using std::numbers::pi;
constexpr double litresPerCubicCm = 1e-3;

/// Squared radius [cm2] at a distance x from the middle, 0 <= x <= length/2.
double radiusSquared(const Cask& cask, double x) {
    const double D = cask.bung.cm, d = cask.head.cm, u = 2 * x / cask.length.cm;
    switch (cask.stave) {
    case Stave::spheroid:
        return (D * D - (D * D - d * d) * u * u) / 4;
    case Stave::spindle:
        return std::pow(D - (D - d) * u * u, 2) / 4;
    case Stave::paraboloid:
        return (D * D - (D * D - d * d) * u) / 4;
    case Stave::cone:
        break;
    }
    return std::pow(D - (D - d) * u, 2) / 4;
}

/// Volume [L] between the middle and x, 0 <= x <= length/2: pi times the integral of the squared radius.
double slice(const Cask& cask, double x) {
    const double D = cask.bung.cm, d = cask.head.cm, u = 2 * x / cask.length.cm;
    double mean = 0; // of 4 r2 between 0 and x
    switch (cask.stave) {
    case Stave::spheroid:
        mean = D * D - (D * D - d * d) * u * u / 3;
        break;
    case Stave::spindle:
        mean = D * D - 2 * D * (D - d) * u * u / 3 + (D - d) * (D - d) * u * u * u * u / 5;
        break;
    case Stave::paraboloid:
        mean = D * D - (D * D - d * d) * u / 2;
        break;
    case Stave::cone:
        mean = D * D - D * (D - d) * u + (D - d) * (D - d) * u * u / 3;
        break;
    }
    return litresPerCubicCm * pi * x * mean / 4;
}

double standing(const Cask& cask, double dip) {
    const double fromMiddle = dip - cask.length.cm / 2;
    return slice(cask, cask.length.cm / 2) + std::copysign(slice(cask, std::abs(fromMiddle)), fromMiddle);
}

/// Wet area [cm2] of a circle of radius r filled to k above its lowest point.
double segment(double r, double k) {
    if (k <= 0)
        return 0;
    if (k >= 2 * r)
        return pi * r * r;
    return r * r * std::acos((r - k) / r) - (r - k) * std::sqrt(2 * r * k - k * k);
}

/// Simpson over half the length, twice. The area has a kink where the head begins to get wet: many panels.
double lying(const Cask& cask, double dip) {
    constexpr int panels = 512;
    const double half = cask.length.cm / 2, step = half / panels;
    const auto area = [&](double x) {
        const double r = std::sqrt(radiusSquared(cask, x));
        return segment(r, dip - (cask.bung.cm / 2 - r));
    };
    double sum = area(0) + area(half);
    for (int i = 1; i < panels; ++i)
        sum += (i % 2 == 0 ? 2 : 4) * area(i * step);
    return litresPerCubicCm * 2 * sum * step / 3;
}

std::optional<Fault> wrongSize(std::string_view path, const char* field, const char* key, Centimetres size,
                               double most) {
    if (size.cm > 0 && size.cm <= most)
        return std::nullopt;
    return Fault{FaultKind::input, std::string(path) + "/" + field, say(key).with("value", Number{size.cm, 1}),
                 say("vessel.cask_size_fix")};
}

} // namespace

Result<Cask> checked(const Cask& cask, std::string_view path) {
    constexpr double widest = 1000; // 10 m: larger is a slip of the pen
    for (const auto& fault : {wrongSize(path, "bung_cm", "vessel.bung_size", cask.bung, widest),
                              wrongSize(path, "head_cm", "vessel.head_size", cask.head, cask.bung.cm),
                              wrongSize(path, "length_cm", "vessel.length_size", cask.length, widest)})
        if (fault)
            return fail(*fault);
    return cask;
}

Litres caskVolume(const Cask& cask) {
    return {2 * slice(cask, cask.length.cm / 2)};
}

Centimetres wetHeight(const Cask& cask, Position position) {
    return position == Position::lying ? cask.bung : cask.length;
}

Litres volumeAt(const Cask& cask, Position position, Centimetres dip) {
    const double full = wetHeight(cask, position).cm;
    if (!(dip.cm > 0))
        return {0};
    if (dip.cm >= full)
        return caskVolume(cask);
    return {position == Position::lying ? lying(cask, dip.cm) : standing(cask, dip.cm)};
}

Centimetres dipAt(const Cask& cask, Position position, Litres volume) {
    const double full = wetHeight(cask, position).cm;
    if (!(volume.l > 0))
        return {0};
    if (volume >= caskVolume(cask))
        return {full};
    double low = 0, high = full;
    while (high - low > 1e-7) {
        const double middle = (low + high) / 2;
        (volumeAt(cask, position, {middle}) < volume ? low : high) = middle;
    }
    return {(low + high) / 2};
}

std::vector<DipRow> dipTable(const Cask& cask, Position position, Centimetres step) {
    const double full = wetHeight(cask, position).cm;
    std::vector<DipRow> rows;
    const int whole = static_cast<int>(std::min(std::ceil(full / step.cm - 1e-9), 1e5));
    for (int i = 0; i < whole; ++i)
        rows.push_back({{i * step.cm}, volumeAt(cask, position, {i * step.cm})});
    rows.push_back({{full}, caskVolume(cask)});
    return rows;
}

} // namespace staveline::vessel
