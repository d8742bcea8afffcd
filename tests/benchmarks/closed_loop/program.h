// SPDX-License-Identifier: GPL-3.0-or-later
// The program as a brewer uses it: a book, sittings and titrations recorded, advice asked, the first proposal chosen,
// brewed and filled in. It sees of the vessel what is written into the book.
#pragma once

#include "advice/advise.h"
#include "benchmarks/closed_loop/steering.h"
#include "desk/desk.h"

#include <filesystem>
#include <memory>

namespace staveline::loop {

struct Freedom {
    bool stepCaps = false; ///< steps as the program advises them of itself, draw and interval its owner's
};

class Program : public Steering {
public:
    /// A vessel taken over full after years on its usual recipe, and filled once more. `folder` must be there.
    Program(const std::filesystem::path& folder, const Handling& usual, const Freedom& freedom);

    /// What the model expects at the first tasting of a vessel that it knows nothing of.
    struct Expected {
        Scores scores;
        double ta = 6; ///< [g/L]
    };
    [[nodiscard]] Expected expected();
    void setTarget(const Scores& wanted, const std::string& setBy);
    Decision decide(const Occasion& occasion) override;

private:
    void record(const std::vector<facts::Fact>& facts);
    void record(const Occasion& occasion);
    void takeOver(const Handling& usual, const Freedom& freedom);
    void fill(const brewing::Recipe& recipe, Litres draw, Day brewed, Day filled);
    [[nodiscard]] Handling handlingOf(const advice::Setting& setting) const;

    Day now_;
    Day filled_;
    Days interval_{240};
    int brews_ = 0;
    Freedom freedom_;
    std::unique_ptr<desk::Desk> desk_;
};

} // namespace staveline::loop
