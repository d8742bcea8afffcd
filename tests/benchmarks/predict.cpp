// SPDX-License-Identifier: GPL-3.0-or-later
// One prediction, recipe not cached: mash, precursors, glucan, primary and 180 days of culture; beside it the same
// equations in SciPy where python3-scipy is installed. `--once` makes one prediction only, for counting instructions.
#include "forward/predict.h"
#include "quantity/acid_base.h"
#include "support/bench.h"
#include "support/neutral_parameters.h"
#include "support/reference_beers.h"
#include "support/reference_pantry.h"
#include "support/settled.h"

#include <array>
#include <cstdio>
#include <memory>
#include <optional>
#include <string_view>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::forward;
using namespace staveline::tasting;

namespace {

const Plan plan{.toThisDraw = {0}, .refillShare = {.35}, .interval = {180}, .temperature = {16}};

Prediction predictOnce(const BrewInput& input, const Parameters& parameters = builtInParameters()) {
    return predict(parameters, reference::settledVessel, input, plan);
}

/// The peer's output line; nothing when it cannot run.
std::string peerOutput() {
    const std::string command =
        "/usr/bin/python3 " STAVELINE_SOURCE_DIR "/tests/benchmarks/peer_predict.py 2>/dev/null";
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    std::string text;
    std::array<char, 256> part{};
    while (pipe && std::fgets(part.data(), static_cast<int>(part.size()), pipe.get()))
        text += part.data();
    return text;
}

struct Peer {
    double ms = 0;
    Scores scores;
};
std::optional<Peer> scipy() {
    Peer peer;
    auto& s = peer.scores.values;
    const std::string text = peerOutput();
    if (std::sscanf(text.c_str(), "{\"ms\": %lf, \"scores\": [%lf, %lf, %lf]}", &peer.ms, &s[0], &s[1], &s[2]) != 4)
        return {};
    return peer;
}

std::string besidePeer(double ms, const Scores& own) {
    const auto peer = scipy();
    if (!peer)
        return {};
    double apart = 0;
    for (const Dimension d : allDimensions)
        apart = std::max(apart, std::abs(own[d] - peer->scores[d]));
    return fmt::format("\"peer\": \"scipy\", \"peer_ms\": {:.4g}, \"ratio\": {:.4g}, \"scores_apart\": {:.2g}",
                       peer->ms, peer->ms / ms, apart);
}

/// Median of batches [ms a call]; the sum keeps the calls from being left out.
template <class Work> double msPerCall(int repeats, int batch, Work&& work) {
    double sum = 0;
    const auto times = bench::timesMs(repeats, [&] {
        for (int i = 0; i < batch; ++i)
            sum += work();
    });
    return sum == 0 ? 0 : bench::quantile(times, .5) / batch;
}

} // namespace

int main(int argc, char** argv) {
    const BrewInput input = reference::inputFor(reference::baseRecipe());
    // Tables are made once a run, outside what is counted with --toggle-collect="staveline::predict(*BrewInput*)".
    [[maybe_unused]] const double table = newtonPh(4, 1, .1, 1, 16, 1);
    [[maybe_unused]] const Parameters& rows = builtInParameters();
    if (argc > 1 && std::string_view(argv[1]) == "--once")
        return predictOnce(input).nextDraw.scores[Dimension::acidity] > 0 ? 0 : 1;
    // The peer solves the equations of the reference.
    const Scores own = predictOnce(input, reference::neutralParameters()).nextDraw.scores;

    const double whole = msPerCall(200, 20, [&] { return predictOnce(input).nextDraw.ta.gPerL; });
    bench::print("predict", whole, "ms", 4000, besidePeer(whole, own));

    const RefillBeer beer = brew(input);
    const double cached = msPerCall(
        200, 20, [&] { return predict(builtInParameters(), reference::settledVessel, beer, plan).nextDraw.ta.gPerL; });
    bench::print("predict, recipe cached", cached, "ms", 4000);

    const double settled = msPerCall(20, 5, [&] {
        return reference::settledOutcome(builtInParameters(), reference::settledVessel, beer, plan).ta.gPerL;
    });
    bench::print("if kept up, recipe cached", settled, "ms", 100);

    const auto draws = parameterDraws(builtInParameters());
    const double drawn = msPerCall(20, 2, [&] {
        return scoresOver(draws, reference::settledVessel, input, plan).nextDraw.front()[Dimension::acidity];
    });
    bench::print("predict over 64 draws", drawn, "ms", 40);
}
