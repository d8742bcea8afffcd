// SPDX-License-Identifier: GPL-3.0-or-later
// A disk that fails on request: a layer under the database library, for all books opened while it lives.
#pragma once

namespace staveline::book {

class FailingDisk {
public:
    FailingDisk();
    ~FailingDisk();
    FailingDisk(const FailingDisk&) = delete;
    FailingDisk& operator=(const FailingDisk&) = delete;

    /// The n-th call from now on fails (1 is the next), and with `lasting` every one after it.
    void failAt(int n, bool lasting);
    /// Whole again. True when a call has failed since failAt().
    bool mend();
};

} // namespace staveline::book
