// SPDX-License-Identifier: GPL-3.0-or-later
// Where a number comes from, by which its explanation is found. One kind with what that kind needs beside it is simpler
// than a variant here: explanations are one switch and the links of the face one table.
#pragma once

#include "quantity/dimension.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace staveline {

enum class OriginKind : std::uint8_t {
    nowhere,
    now, ///< this and all up to moveEffect are of a dimension
    window,
    share,
    cycles,
    threshold,
    verdictGap,
    verdictHalf,
    predictionNext,
    predictionSettled,
    aloneNext,
    aloneSettled,
    changeNext,
    changeSettled,
    modelNow,
    modelNext,
    modelAlone,
    moveEffect, ///< also of one move of the proposal
    moveFrom,
    moveTo,
    vesselBitterness,
    aloneBitterness,
    parameter ///< of the model, by its name
};

/// What copies, moves and ends it stands in origin.cpp, as that of the messages which carry it.
struct Origin {
    OriginKind kind = OriginKind::nowhere;
    Dimension dimension = Dimension::acidity;
    std::size_t move = 0; ///< among the moves of the proposal, from 0
    std::string parameter;

    Origin();
    Origin(OriginKind what, Dimension of = Dimension::acidity);
    static Origin ofMove(std::size_t index, Dimension d);
    static Origin ofParameter(std::string_view name);
    Origin(const Origin& other);
    Origin(Origin&& other) noexcept;
    Origin& operator=(const Origin& other);
    Origin& operator=(Origin&& other) noexcept;
    ~Origin();
    bool operator==(const Origin& other) const;

    explicit operator bool() const { return kind != OriginKind::nowhere; } ///< there is something to follow
};

/// For the face, which has to put an origin into a link: "prediction/next/acidity". Empty for nowhere.
[[nodiscard]] std::string linkOf(const Origin& origin);
/// What such a link leads to; none for any other text.
[[nodiscard]] std::optional<Origin> originFrom(std::string_view link);

} // namespace staveline
