// SPDX-License-Identifier: GPL-3.0-or-later
// A small sound book, damaged as the input says, opened, read and checked: it is refused or named as damaged, or it
// says what it said before; and damage that was seen is never written to. An input is a list of seven bytes each: three
// of place, one of length, one of how, two of value.
#include "fuzz/cellar.h"

#include "desk/cellar.h"
#include "desk/history.h"
#include "desk/json.h"
#include "desk/ledger.h"
#include "facts/record_file.h"

#include <cstring>
#include <unistd.h>

using namespace staveline;

namespace {

std::string seenIn(const desk::Desk& desk) {
    std::string seen;
    if (const auto cellar = desk.cellar())
        seen = desk::toJson(*cellar);
    if (const auto history = desk.history("Plover"))
        seen += desk::toJson(*history);
    return seen + desk.undoText() + desk.redoText();
}

struct Good {
    testing::Scratch scratch;
    std::filesystem::path file = scratch / "good.cellar", bad = scratch / "bad.cellar";
    std::string bytes, seen;

    Good() {
        const auto cellar = fuzz::sampleBook(file, 24);
        seen = seenIn(*cellar);
        bytes = testing::readAll(file);
    }
};

/// Three bytes of place at a unit of the file: any byte, any 16th, any page.
void spoil(std::string& bytes, const std::uint8_t* how) {
    constexpr std::size_t units[] = {1, 16, 512, 4096};
    const std::size_t unit = units[how[4] >> 6];
    const std::size_t place = (how[0] + 256U * how[1] + 65536U * how[2]) * unit % bytes.size();
    const std::size_t length = std::min<std::size_t>(how[3] % 64 + 1, bytes.size() - place);
    switch (how[4] % 4) {
    case 0: // one byte
        bytes[place] = static_cast<char>(how[5]);
        return;
    case 1: // a few bits
        bytes[place] = static_cast<char>(static_cast<unsigned char>(bytes[place]) ^ how[5]);
        return;
    case 2: // a run of one byte
        std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(place), length, static_cast<char>(how[5]));
        return;
    default: // another place written here, as long as a cell or as a page
        const std::size_t from = (how[5] + 256U * how[6]) * unit % bytes.size();
        const std::size_t all = std::min({length * unit, bytes.size() - place, bytes.size() - from});
        std::memmove(bytes.data() + place, bytes.data() + from, all);
    }
}

void examine(const Good& good, const std::string& bytes) {
    const auto opened = desk::Desk::open(good.bad, [] { return fuzz::today; });
    if (!opened) {
        fuzz::hold(!render(opened.error().cause).empty(), "a book that is refused is refused in words");
        return;
    }
    const std::string seen = seenIn(**opened);
    const bool told = (*opened)->readOnly() || !(*opened)->damages().empty();
    const auto report = (*opened)->check();
    fuzz::hold(told || !report || !report->sound() || seen == good.seen, "what changed is named");
    if (!(*opened)->readOnly())
        return;
    const auto refused = (*opened)->record(facts::Fact{facts::DipFact{"Plover", fuzz::today, Litres{170}, ""}});
    fuzz::hold(!refused, "a damaged book takes no edit");
    fuzz::hold(testing::readAll(good.bad) == bytes, "a damaged book is not written to");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const Good good;
    std::string bytes = good.bytes;
    for (std::size_t at = 0; at + 7 <= size && at < 7 * 32; at += 7)
        spoil(bytes, data + at);
    if (size % 7 >= 3) // what is left over cuts the file short
        bytes.resize((data[size - 1] + 256U * data[size - 2] + 65536U * data[size - 3]) % bytes.size());
    for (const auto& entry : std::filesystem::directory_iterator(good.scratch.path()))
        if (entry.path() != good.file)
            std::filesystem::remove_all(entry.path());
    testing::writeAll(good.bad, bytes);
    examine(good, bytes);
    return 0;
}
