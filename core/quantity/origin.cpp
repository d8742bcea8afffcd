// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/origin.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <fmt/core.h>

namespace staveline {
namespace {

constexpr std::string_view parameterStem = "parameter/", moveStem = "moves/", moveEnd = "/next";

struct LinkRow {
    OriginKind kind;
    std::string_view text;
    bool ofDimension = true; ///< the dimension follows the text
};
constexpr std::array linkRows = {LinkRow{OriginKind::now, "now"},
                                 LinkRow{OriginKind::window, "window"},
                                 LinkRow{OriginKind::share, "share"},
                                 LinkRow{OriginKind::cycles, "cycles"},
                                 LinkRow{OriginKind::threshold, "threshold"},
                                 LinkRow{OriginKind::verdictGap, "verdict/gap"},
                                 LinkRow{OriginKind::verdictHalf, "verdict/half"},
                                 LinkRow{OriginKind::predictionNext, "prediction/next"},
                                 LinkRow{OriginKind::predictionSettled, "prediction/settled"},
                                 LinkRow{OriginKind::aloneNext, "alone/next"},
                                 LinkRow{OriginKind::aloneSettled, "alone/settled"},
                                 LinkRow{OriginKind::changeNext, "change/next"},
                                 LinkRow{OriginKind::changeSettled, "change/settled"},
                                 LinkRow{OriginKind::modelNow, "model/now"},
                                 LinkRow{OriginKind::modelNext, "model/next"},
                                 LinkRow{OriginKind::modelAlone, "model/alone"},
                                 LinkRow{OriginKind::moveFrom, "move/from", false},
                                 LinkRow{OriginKind::moveTo, "move/to", false},
                                 LinkRow{OriginKind::vesselBitterness, "vessel/bitterness", false},
                                 LinkRow{OriginKind::aloneBitterness, "alone/bitterness", false}};

std::optional<OriginKind> kindOf(std::string_view text, bool ofDimension) {
    const auto row = std::find_if(linkRows.begin(), linkRows.end(), [&](const LinkRow& each) {
        return each.text == text && each.ofDimension == ofDimension;
    });
    return row == linkRows.end() ? std::nullopt : std::optional(row->kind);
}

/// "moves/1/next": the 1.
std::optional<std::size_t> moveIn(std::string_view text) {
    if (!text.starts_with(moveStem) || !text.ends_with(moveEnd) || text.size() < moveStem.size() + moveEnd.size())
        return {};
    text.remove_prefix(moveStem.size());
    text.remove_suffix(moveEnd.size());
    std::size_t index = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), index);
    const bool whole = read.ec == std::errc{} && read.ptr == text.data() + text.size();
    return whole ? std::optional(index) : std::nullopt;
}

/// What stands before "/acidity".
std::optional<Origin> originOfDimension(std::string_view text, Dimension d) {
    if (const auto move = moveIn(text))
        return Origin::ofMove(*move, d);
    if (const auto kind = kindOf(text, true))
        return Origin(*kind, d);
    return {};
}

} // namespace

Origin::Origin() = default;
Origin::Origin(OriginKind what, Dimension of) : kind(what), dimension(of) {}
Origin::Origin(const Origin& other) = default;
Origin::Origin(Origin&& other) noexcept = default;
Origin& Origin::operator=(const Origin& other) = default;
Origin& Origin::operator=(Origin&& other) noexcept = default;
Origin::~Origin() = default;
bool Origin::operator==(const Origin& other) const = default;

Origin Origin::ofMove(std::size_t index, Dimension d) {
    Origin origin(OriginKind::moveEffect, d);
    origin.move = index;
    return origin;
}

Origin Origin::ofParameter(std::string_view name) {
    Origin origin(OriginKind::parameter);
    origin.parameter = name;
    return origin;
}

std::string linkOf(const Origin& origin) {
    if (origin.kind == OriginKind::parameter)
        return fmt::format("{}{}", parameterStem, origin.parameter);
    if (origin.kind == OriginKind::moveEffect)
        return fmt::format("{}{}{}/{}", moveStem, origin.move, moveEnd, name(origin.dimension));
    for (const auto& row : linkRows)
        if (row.kind == origin.kind)
            return row.ofDimension ? fmt::format("{}/{}", row.text, name(origin.dimension)) : std::string(row.text);
    return {};
}

std::optional<Origin> originFrom(std::string_view link) {
    if (link.starts_with(parameterStem))
        return Origin::ofParameter(link.substr(parameterStem.size()));
    if (const auto kind = kindOf(link, false))
        return Origin(*kind);
    const auto slash = link.rfind('/');
    if (slash == std::string_view::npos)
        return {};
    for (auto d : allDimensions)
        if (link.substr(slash + 1) == name(d))
            return originOfDimension(link.substr(0, slash), d);
    return {};
}

} // namespace staveline
