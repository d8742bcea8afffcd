// SPDX-License-Identifier: GPL-3.0-or-later
// CRC-64 of a row in a canonical typed encoding. The library's file format has no checksum of its own: a flipped bit
// in a value would otherwise pass every other check. Private to the book.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace staveline::book {

/// CRC-64 with the ECMA-182 polynomial, reflected (the variant of the XZ format).
[[nodiscard]] std::uint64_t crc64(std::string_view bytes);

/// Table, id, then for each value that is not null its column's place, a type tag and its bits (text and blobs with
/// their length). Nulls leave nothing, so a column added later does not change the digests of older rows.
class RowDigest {
public:
    void start(std::string_view table, std::int64_t id);
    void addInteger(std::size_t place, std::int64_t value);
    void addReal(std::size_t place, double value);
    void addText(std::size_t place, std::string_view value);
    void addBlob(std::size_t place, std::string_view value);
    /// As SQLite stores it: the same 64 bits, signed.
    [[nodiscard]] std::int64_t value() const { return static_cast<std::int64_t>(crc64(bytes_)); }

private:
    template <class Bits> void addBits(Bits bits);
    void addTag(std::size_t place, char tag);
    void addBytes(std::string_view value);

    std::string bytes_;
};

} // namespace staveline::book
