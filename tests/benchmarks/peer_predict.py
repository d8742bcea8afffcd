#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Peer of bench_predict: the same equations, solved by SciPy. Pilsner 75, wheat malt 25, 60 min at 66 C, 12 P, clean
yeast, 10 IBU; 35 % into a settled vessel, 180 days at 16 C. Prints one JSON object: milliseconds a prediction (best of
a few) and the three scores, so that both sides can be seen to compute the same thing."""
import json
import math
import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.special import ndtr

GAS = 8.314462618
CELSIUS, HOURS, MASH_PH, LIQUOR, PLATO, IBU = 66.0, 1.0, 5.5, 3.0, 12.0, 10.0
WHEAT = 0.25
LN10 = math.log(10)


def mix(pilsner, wheat):
    return (1 - WHEAT) * pilsner + WHEAT * wheat


def arrhenius(energy, celsius, reference):
    return math.exp(-energy / GAS * (1 / (celsius + 273.15) - 1 / (reference + 273.15)))


def bell(optimum, width):
    return math.exp(-0.5 * ((MASH_PH - optimum) / width) ** 2 + 0.5 * ((5.5 - optimum) / width) ** 2)


def mash(power):
    """Starch, precursors and glucan in one system; returns (starch pools, FA, CA, glucan) per kg of grist."""
    thin = (LIQUOR / 2.5) ** 0.30
    shift = 0.4 * (76.5 / (LIQUOR + 0.81) - 76.5 / 3.81)
    closed = np.array([1 - ndtr((CELSIUS - 58.0 - shift) / 1.6), 1 - ndtr((CELSIUS - 63.0 - shift) / 2.5)])
    start = np.array([0.9, 0.1])
    swell = 3.2e-3 * arrhenius(108.3e3, CELSIUS, 60)
    alpha = bell(5.6, 0.9) * arrhenius(55e3, CELSIUS, 65)
    beta = bell(5.4, 0.8) * arrhenius(45e3, CELSIUS, 65)
    limit = bell(5.1, 0.7) * arrhenius(45e3, CELSIUS, 65)
    half = math.log(2) / 60
    death = half * np.array([arrhenius(224.2e3, CELSIUS, 65) / 75, thin * arrhenius(410.7e3, CELSIUS, 65) / 10,
                             thin * arrhenius(380e3, CELSIUS, 65) / 12])
    ph_of_release = (1 + 10 ** (5.4 - 5.7)) / (1 + 10 ** (5.4 - MASH_PH))
    release = 0.0091 / 60 * arrhenius(39e3, CELSIUS, 45) * ph_of_release
    esterase_death = 0.140 / 60 * arrhenius(187e3, CELSIUS, 60)
    dissolve = 0.15 / 60 * arrhenius(20e3, CELSIUS, 45)
    loose = min(0.85, max(0.10, 0.30 + 0.0175 * (CELSIUS - 45)))
    cut, attack = (k / 60 * arrhenius(45e3, CELSIUS, 45) for k in (0.060, 0.018))
    glucanase_death = 0.25 / 60 * arrhenius(230e3, CELSIUS, 60)

    def change(_, y):
        large, small, polymer, opened, branched, malt, tri, glucose, ea, eb, el = y[:11]
        gel = swell * np.maximum(0, np.array([large, small]) - closed * start)
        r1, r2 = 0.003977 * alpha * ea * polymer, 0.001062 * beta * eb * polymer
        r3, r4, r5 = 5e-2 * beta * eb * opened, 0.00113 * alpha * ea * opened, 0.0001351 * limit * el * branched
        esterase, fu, fb, cu, cb, bound, inside, soluble, glucanase = y[11:20]
        shaken = 0.06 / 60 * max(0.0, inside - (1 - loose) * bound)
        return [-gel[0], -gel[1], gel.sum() - r1 - r2, (1 - 0.316 - 0.06322 - 0.03557 - 0.02) * r1 - r3 - r4 + r5,
                0.316 * r1 + 0.10 * r4 - r5, 0.06322 * r1 + r2 + 0.72 * r3 + 0.9 * 0.45 * r4,
                0.03557 * r1 + 0.22 * r3 + 0.9 * 0.33 * r4, 0.02 * r1 + 0.06 * r3 + 0.9 * 0.22 * r4,
                -death[0] * ea, -death[1] * eb, -death[2] * el,
                -esterase_death * esterase, -dissolve * fu, -release * esterase * fb, -dissolve * cu,
                -release * esterase * cb, -attack * glucanase * inside, -shaken - attack * glucanase * inside,
                shaken - cut * glucanase * soluble, -glucanase_death * glucanase]

    acids = np.array([mix(4.0, 2.0), mix(50, 38), mix(3.0, 1.6), mix(46, 24)])
    y0 = [*start, 0, 0, 0, 0, 0, 0, power, power, power, mix(1, 0.6), *acids, 3500.0, 3500.0, 0.0, mix(1, 0.3)]
    y = solve_ivp(change, (0, 3600 * HOURS), y0, method="LSODA", rtol=1e-6, atol=1e-9).y[:, -1]
    return y, acids[0] + acids[1] - y[12] - y[13], acids[2] + acids[3] - y[14] - y[15], y[18]


def refill():
    y, ferulic, coumaric, glucan = mash(mix(280, 250) / 250)
    scale = 0.79 / 1.045
    malt, tri, glucose = (scale * p * h for p, h in zip(y[5:8], (342 / 324, 504 / 486, 180 / 162)))
    dextrin = scale * 1.012 * (y[2] + y[3] + y[4])
    total = malt + tri + glucose + dextrin + 0.21
    extract = PLATO / 100 * (1 + PLATO / (258.6 - 227.1 * PLATO / 258.2)) * 998.2
    grist_plato = PLATO / max(0.5, total)
    grist_extract = grist_plato / 100 * (1 + grist_plato / (258.6 - 227.1 * grist_plato / 258.2)) * 0.9982
    per_litre = grist_extract / mix(0.80, 0.83)
    malt, tri, glucose, sugar, dextrin = (x / total * extract for x in (malt, tri, glucose, 0.09, dextrin))
    taken = glucose + 1.03 * sugar + 1.0526 * malt + 0.75 * 1.0714 * tri
    tri_left, dextrin = 0.25 * 1.0714 * tri, 1.098 * dextrin
    fa, ca = ferulic * per_litre, coumaric * per_litre
    boiled = 1 - math.exp(-0.055)
    vg, vp, fa, ca = boiled * fa * 0.7734, boiled * ca * 0.7319, fa * (1 - boiled), ca * (1 - boiled)
    esters = 8.0 * mix(50, 38) / 50 * grist_plato / 12
    fa += 0.05 * esters
    vg, vp = vg + 0.05 * fa * 0.7734, vp + 0.05 * ca * 0.7319
    xylan = mix(0.35, 0.45) * grist_plato / 12
    dynamic = [0.2, 0.1, 0.1 * tri_left, 0.9 * tri_left + 0.5 * dextrin, 0.5 * dextrin, 0.461 * taken, 0.95 * fa,
               0.95 * ca, 0.95 * esters, vg, vp, 0.0, 0.0]
    return np.array(dynamic), dict(other=0.12 * extract, glycerol=2.0, glucan=glucan * per_litre / 1000, xylan=xylan,
                                   cis=0.68 * IBU, trans=0.32 * IBU)


BUFFERS = np.array([2.75 + 0.5 * i for i in range(12)])
AMOUNTS = np.array([4.0] * 6 + [2.0] * 6)


def charge(ph, lactic, acetic):
    hydrogen = 1e3 * 10 ** -ph
    pk = np.array([3.86, 4.76, *BUFFERS])
    mmol = np.array([lactic / 90.078 * 1e3, acetic / 60.052 * 1e3, *AMOUNTS])
    share = 1 / (1 + 10 ** (pk - ph))
    value = (mmol * share).sum() + 1e-8 / hydrogen - hydrogen
    return value, LN10 * ((mmol * share * (1 - share)).sum() + 1e-8 / hydrogen + hydrogen)


def solve_ph(lactic, acetic, sid, ph):
    for _ in range(20):
        value, slope = charge(ph, lactic, acetic)
        step = (value - sid) / slope
        ph -= min(0.5, max(-0.5, step))
        if abs(step) < 1e-8:
            break
    return ph


def culture(y0, hops, days, celsius):
    g20, g18 = 2.0 ** ((celsius - 20) / 10), 2.0 ** ((celsius - 18) / 10)
    month = 30.4375 * 3 ** ((20 - celsius) / 10)
    vinyl_loss = 0.0035 * arrhenius(85e3, celsius, 20)
    oxygen = 0.5 * 1.877 * 10 / 365e3
    sid = charge(4.3, 0.2, 0.1)[0]
    last = [3.8]

    def change(t, y):
        lac, ace, sug, dex, res, _, fa, ca, es, vg, vp, _, _, x, xb, tol = y
        sug = max(0.0, sug)
        last[0] = ph = solve_ph(lac, ace, sid, last[0])
        ibu = hops[0] * 2 ** (-t / (60 * month)) + hops[1] * 2 ** (-t / (12 * month))
        dose = ibu * ((1 + 10 ** 1.1) / (1 + 10 ** (ph - 3.1))) ** 0.5
        drive = sug / (1 + sug) / (1 + (dose / tol) ** 2) / (1 + math.exp((3.05 - ph) / 0.075))
        free = lac / (1 + 10 ** (ph - 3.86))
        made = 0.48 * g20 * x * drive * max(0.0, 1 - free / 13.4)
        hard, harder = 0.0143 * g20 * xb * dex, 0.0143 * 0.25 * g20 * xb * res
        eaten = 0.030 * g20 * xb * sug / (1 + sug)
        split = 0.0006 * g18 * 0.5 * (x + xb) * es
        to_vinyl, to_ethyl = 0.05 * g18 * xb, 0.04 * g18 * xb
        lost, gone = to_vinyl + 0.0125 * g18 * x, to_ethyl + vinyl_loss * min(4.0, 10 ** (0.5 * (4.3 - ph)))
        pull, food = ibu / (ibu + tol), sug + dex
        return [made, 0.016 * made + oxygen, 0.174 * (hard + harder) - made / 0.95 - eaten, -hard, -harder,
                0.45 * (eaten + 0.826 * (hard + harder)) - 0.767 * oxygen, split - lost * fa, -lost * ca, -split,
                0.7734 * to_vinyl * fa - gone * vg, 0.7319 * to_vinyl * ca - gone * vp, 1.0135 * 0.7 * to_ethyl * vg,
                1.0167 * 0.7 * to_ethyl * vp,
                0.067 * g20 * drive * max(0.0, 1 - free / 8.5) * x * (1 - x) - 0.0005 * g20 * x,
                0.05 * g20 * food / (1 + food) * xb * (1 - xb) - 0.0005 * g20 * xb,
                pull / 120 * (60 - tol) - (1 - pull) / 270 * (tol - 20)]

    y = solve_ivp(change, (0, days), y0, method="LSODA", rtol=1e-6, atol=1e-8).y[:, -1]
    return y, (charge(8.2, y[0], y[1])[0] - sid) * 0.090078


def scores(y, rest, ta):
    alcohol = y[5] / 7.89
    sour = min(10.0, 1.95 * max(0.0, ta + 0.45 * y[1] - 1.5) ** 0.65)
    sour *= (1 - 0.01 * max(0.0, alcohol - 5)) * (1 + 0.04 * 0.1)
    units = y[11] / 0.13 + y[12] / 0.30 + 0.5 * (y[9] / 0.30 + y[10] / 0.25)
    extract = (y[3] + y[4]) / 1.098 + y[2] / 1.05 + rest["other"]

    def viscosity(re, ethanol, glycerol, glucan, xylan):
        a, b = 0.25 * glucan, 0.10 * xylan
        return (1.002 + 0.0045 * ethanol + 0.0060 * re + 0.0026 * glycerol) * (1 + a + 0.4 * a * a) * (1 + b + 0.4 * b * b)

    eta = viscosity(extract, y[5], rest["glycerol"], rest["glucan"], rest["xylan"])
    body = 5 + 0.35 * math.log(eta / viscosity(40, 39.5, 2, 0.15, 0.5)) / math.log(1.093) + 0.030 * (extract - 40)
    body += 0.020 * (min(y[5], 79) - 39.5) + 0.05 * (rest["glycerol"] - 2)
    return [sour, 10 / (1 + (6 / units) ** 1.2), body]


def predict(days=180.0, share=0.35, celsius=16.0):
    remaining = np.array([4, 0.2, 0.03, 0.5, 4, 49.5, 0.1, 0, 5, 0.04, 0, 1.1, 0.26])
    remaining_rest = dict(other=15.0, glycerol=2.0, glucan=0.22, xylan=0.33, cis=6.0, trans=1.5)
    fresh, fresh_rest = refill()
    rest = {k: (1 - share) * remaining_rest[k] + share * fresh_rest[k] for k in remaining_rest}
    stay = 1 - share * 0.4
    y0 = [*((1 - share) * remaining + share * fresh), 0.45 * stay, 0.95 * stay, 30.0]
    y, ta = culture(y0, (rest["cis"], rest["trans"]), days, celsius)
    months = days / 30.4375
    rest["glucan"] *= math.exp(-0.024 * months)
    rest["xylan"] *= math.exp(-0.0116 * months)
    return scores(y, rest, ta)


def main():
    result, best = predict(), math.inf
    for _ in range(5):
        start = time.perf_counter()
        predict()
        best = min(best, time.perf_counter() - start)
    print(json.dumps({"ms": 1e3 * best, "scores": result}))


if __name__ == "__main__":
    main()
