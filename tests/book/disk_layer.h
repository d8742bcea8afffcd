// SPDX-License-Identifier: GPL-3.0-or-later
// A layer under the database library, for all books opened while it lives: it can fail, and it can watch.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace staveline::book {

struct DiskCall {
    enum Kind { wrote, truncated, synced, removed, acknowledged } kind = wrote;
    std::string file;
    std::uint64_t at = 0; ///< offset written at, or length truncated to
    std::string bytes;
};

class DiskLayer {
public:
    DiskLayer();
    virtual ~DiskLayer();
    DiskLayer(const DiskLayer&) = delete;
    DiskLayer& operator=(const DiskLayer&) = delete;

    /// Asked before each call that may fail.
    virtual bool refuses() { return false; }
    /// Told of each call that has been done and changes what is on the disk.
    virtual void saw(DiskCall) {}
};

/// A disk that fails on request.
class FailingDisk final : public DiskLayer {
public:
    /// The n-th call from now on fails (1 is the next), and with `lasting` every one after it.
    void failAt(int n, bool lasting);
    /// Whole again. True when a call has failed since failAt().
    bool mend();
    bool refuses() override;

private:
    int left_ = 0; ///< calls until the failure; 0: none is due
    bool lasting_ = false, failed_ = false;
};

/// A disk that remembers in which order it was written and synced.
class RecordingDisk final : public DiskLayer {
public:
    void saw(DiskCall call) override { calls_.push_back(std::move(call)); }
    [[nodiscard]] const std::vector<DiskCall>& calls() const { return calls_; }

private:
    std::vector<DiskCall> calls_;
};

} // namespace staveline::book
