// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/digest.h"

#include <bit>
#include <boost/crc.hpp>

namespace staveline::book {

std::uint64_t crc64(std::string_view bytes) {
    boost::crc_optimal<64, 0x42F0E1EBA9EA3693ULL, ~0ULL, ~0ULL, true, true> crc;
    crc.process_bytes(bytes.data(), bytes.size());
    return crc.checksum();
}

/// Lowest byte first on every machine.
template <class Bits> void RowDigest::addBits(Bits bits) {
    char little[sizeof bits];
    for (char& byte : little) {
        byte = static_cast<char>(bits & 0xff);
        bits >>= 8;
    }
    bytes_.append(little, sizeof little);
}

void RowDigest::start(std::string_view table, std::int64_t id) {
    bytes_.clear();
    addBytes(table);
    addBits(static_cast<std::uint64_t>(id));
}

void RowDigest::addInteger(std::size_t place, std::int64_t value) {
    addTag(place, 'i');
    addBits(static_cast<std::uint64_t>(value));
}

void RowDigest::addReal(std::size_t place, double value) {
    addTag(place, 'r');
    addBits(std::bit_cast<std::uint64_t>(value));
}

void RowDigest::addText(std::size_t place, std::string_view value) {
    addTag(place, 't');
    addBytes(value);
}

void RowDigest::addBlob(std::size_t place, std::string_view value) {
    addTag(place, 'b');
    addBytes(value);
}

void RowDigest::addTag(std::size_t place, char tag) {
    addBits(static_cast<std::uint32_t>(place << 8 | static_cast<unsigned char>(tag)));
}

void RowDigest::addBytes(std::string_view value) {
    addBits(static_cast<std::uint32_t>(value.size()));
    bytes_.append(value);
}

} // namespace staveline::book
