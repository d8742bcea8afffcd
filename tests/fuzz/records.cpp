// SPDX-License-Identifier: GPL-3.0-or-later
// Record files, read and tried against the sample cellar: what is read is written and read again the same; what is
// refused is refused in words; a trial stores nothing.
#include "facts/record_file.h"
#include "fuzz/cellar.h"

using namespace staveline;

namespace {

void told(const Fault& fault) {
    fuzz::hold(!render(fault.cause).empty() && !render(fault.remedy).empty(), "a fault has a cause and a remedy");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const testing::Scratch scratch;
    static const auto cellar = fuzz::sampleBook(scratch / "s.cellar");
    const auto facts = facts::parseRecords(fuzz::textOf(data, size));
    if (!facts) {
        told(facts.error());
        return 0;
    }
    const std::string written = facts::writeRecords(*facts);
    const auto again = facts::parseRecords(written);
    fuzz::hold(again.has_value(), "what was written can be read");
    fuzz::hold(facts::writeRecords(*again) == written, "what was written reads the same");
    const auto revision = cellar->revision();
    if (facts->size() > 40)
        return 0; // a ledger of thousands is the business of another test
    if (const auto tried = cellar->recordSome(*facts, {}, true); !tried)
        told(tried.error());
    else
        for (const auto& [place, fault] : tried->refused)
            told(fault);
    fuzz::hold(cellar->revision() == revision, "a trial stores nothing");
    return 0;
}
