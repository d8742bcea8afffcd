// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/mash_water.h"

#include "brewing/heat.h"
#include "quantity/constants.h"

namespace staveline::brewing {
namespace {

class Tun {
public:
    Tun(const Equipment& equipment, Kilograms malt) : equipment_(equipment), malt_(malt) {}

    MashStage strike(const MashStep& step, Litres water) {
        const auto& kit = equipment_;
        MashStage stage{step.temperature, step.minutes, MashStage::How::strike, water, {}, {}, {}};
        stage.waterTemperature = strikeTemperature(step.temperature, malt_, kit.grainTemperature, water,
                                                   kit.tunWaterEquivalent, kit.grainTemperature);
        water_ = water;
        return filled(stage);
    }
    MashStage infuse(Celsius from, const MashStep& step, Kilograms late) {
        const Celsius hot = hottestWater(equipment_);
        MashStage stage{step.temperature, step.minutes, MashStage::How::infusion, {}, hot, {}, {}};
        const double forLate = coldness(step.temperature, late) / (hot - step.temperature).c;
        stage.water =
            infusion(from, step.temperature, malt_, water_, equipment_.tunWaterEquivalent, hot) + Litres{forLate};
        water_ += stage.water;
        return takeIn(stage, late);
    }
    MashStage heat(Celsius from, const MashStep& step, Kilograms late) {
        MashStage stage{step.temperature, step.minutes, MashStage::How::heat, {}, {}, {}, {}};
        stage.heating = {(warmFor(step.temperature, late) - from).c / equipment_.heatingRate.cPerMin};
        return takeIn(stage, late);
    }
    /// How warm the mash must be before `late` goes in so that `target` remains.
    [[nodiscard]] Celsius warmFor(Celsius target, Kilograms late) const {
        return target + Celsius{coldness(target, late) / mashHeat(malt_, water_, equipment_.tunWaterEquivalent)};
    }
    [[nodiscard]] Litres water() const { return water_; }
    [[nodiscard]] Celsius beforeLate() const { return beforeLate_; }

private:
    /// Heat that cold grain takes to reach `target` [C kg of water].
    [[nodiscard]] double coldness(Celsius target, Kilograms grain) const {
        return constants::plan::maltHeat * grain.kg * (target - equipment_.grainTemperature).c;
    }
    [[nodiscard]] MashStage filled(MashStage stage) const {
        stage.mashVolume = water_ + Litres{constants::plan::maltDisplacement * malt_.kg};
        return stage;
    }
    MashStage takeIn(const MashStage& stage, Kilograms late) {
        beforeLate_ = warmFor(stage.temperature, late);
        malt_ += late;
        return filled(stage);
    }

    const Equipment& equipment_;
    Kilograms malt_;
    Litres water_{0};
    Celsius beforeLate_{};
};

} // namespace

MashWater mashWater(const Recipe& recipe, const Equipment& equipment, MashLoad load, LitresPerKilogram liquorToGrist) {
    MashWater out;
    if (recipe.mash.empty() || load.all() <= Kilograms{0})
        return out;
    const auto& rests = recipe.mash;
    Tun tun(equipment, rests.size() > 1 ? load.early : load.all());
    out.stages.push_back(tun.strike(rests.front(), {liquorToGrist.lPerKg * load.all().kg}));
    for (std::size_t i = 1; i < rests.size(); ++i) {
        const Kilograms late = i + 1 == rests.size() ? load.late : Kilograms{0};
        const Celsius from = rests[i - 1].temperature;
        const bool heats = recipe.path == MashPath::ramp && equipment.heatingRate.cPerMin > 0;
        out.stages.push_back(heats ? tun.heat(from, rests[i], late) : tun.infuse(from, rests[i], late));
    }
    out.water = tun.water();
    out.volume = out.stages.back().mashVolume;
    out.beforeLateGrain = tun.beforeLate();
    return out;
}

} // namespace staveline::brewing
