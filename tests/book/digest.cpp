// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/digest.h"
#include "support/property.h"

namespace staveline::book {

namespace {

template <class Fill> std::int64_t digestOf(const char* table, std::int64_t id, Fill&& fill) {
    RowDigest digest;
    digest.start(table, id);
    fill(digest);
    return digest.value();
}

} // namespace

TEST_CASE("crc64 gives the published check value of CRC-64/XZ") {
    // Check value of "123456789": .xz File Format 1.0.4 (Tukaani, 2009), section 6, and the CRC catalogue of G. Cook.
    CHECK(crc64("123456789") == 0x995DC9BBDF1939FAULL);
    CHECK(crc64("") == 0);
}

TEST_CASE("A digest tells table, row, column, type and bits apart") {
    const auto text = [](std::size_t place, const char* value) {
        return digestOf("entry", 1, [=](RowDigest& d) { d.addText(place, value); });
    };
    const std::int64_t known = text(0, "7");
    CHECK(text(0, "7") == known);
    CHECK(text(0, "8") != known);
    CHECK(text(1, "7") != known);
    CHECK(digestOf("twin", 1, [](RowDigest& d) { d.addText(0, "7"); }) != known);
    CHECK(digestOf("entry", 2, [](RowDigest& d) { d.addText(0, "7"); }) != known);
    CHECK(digestOf("entry", 1, [](RowDigest& d) { d.addBlob(0, "7"); }) != known);
    CHECK(digestOf("entry", 1, [](RowDigest& d) { d.addInteger(0, 7); }) !=
          digestOf("entry", 1, [](RowDigest& d) { d.addReal(0, 7.0); }));
    CHECK(digestOf("entry", 1, [](RowDigest& d) { d.addReal(0, 0.0); }) !=
          digestOf("entry", 1, [](RowDigest& d) { d.addReal(0, -0.0); }));
}

TEST_CASE("A digest does not mistake where one text ends and the next begins") {
    const auto pair = [](const char* first, const char* second) {
        return digestOf("entry", 1, [=](RowDigest& d) {
            d.addText(0, first);
            d.addText(1, second);
        });
    };
    CHECK(pair("ab", "c") != pair("a", "bc"));
    CHECK(pair("", "abc") != pair("abc", ""));
}

TEST_CASE("A null leaves no trace in a digest, so a new column keeps old digests") {
    const auto old = digestOf("entry", 1, [](RowDigest& d) { d.addText(0, "a"); });
    CHECK(digestOf("entry", 1, [](RowDigest& d) { d.addText(0, "a"); }) == old);
    CHECK(digestOf("entry", 1, [](RowDigest& d) {
              d.addText(0, "a");
              d.addText(5, "");
          }) != old);
}

TEST_CASE("No single flipped bit leaves the checksum as it was") {
    CHECK_PROPERTY("one bit", [](const std::string& text) {
        RC_PRE(!text.empty());
        const auto at = *rc::gen::inRange<std::size_t>(0, text.size() * 8);
        std::string flipped = text;
        flipped[at / 8] = static_cast<char>(static_cast<unsigned char>(flipped[at / 8]) ^ (1U << at % 8));
        RC_ASSERT(crc64(flipped) != crc64(text));
    });
}

} // namespace staveline::book
