#!/usr/bin/python3
"""Designs branch circuits by hand-book steps, apart from the planner, and stores the answers.

Run from anywhere:  /usr/bin/python3 tests/outside/branch-design/design.py
Writes cases.json beside it. Tables typed here from NEC 2023 (310.16, 310.15(B)(1)(1), 310.15(C)(1), 240.4(D), 240.6(A),
250.122, Chapter 9 Tables 1, 4, 5, 8 and 9), copper THWN-2 in EMT, 75 C terminals, nothing shared with the planner.
"""

import cmath
import json
import math
import pathlib
import platform
import random

SIZES = "14 12 10 8 6 4 3 2 1 1/0 2/0 3/0 4/0 250 300 350 400 500".split()
AMPS_75 = dict(zip(SIZES, [20, 25, 35, 50, 65, 85, 100, 115, 130, 150, 175, 200, 230, 255, 285, 310, 335, 380]))
AMPS_90 = dict(zip(SIZES, [25, 30, 40, 55, 75, 95, 115, 130, 145, 170, 195, 225, 260, 290, 320, 350, 380, 430]))
MILS = dict(zip(SIZES, [4110, 6530, 10380, 16510, 26240, 41740, 52620, 66360, 83690, 105600, 133100, 167800, 211600,
                        250000, 300000, 350000, 400000, 500000]))
# Ohm to neutral per 1000 ft in steel conduit.
R_STEEL = dict(zip(SIZES, [3.1, 2.0, 1.2, 0.78, 0.49, 0.31, 0.25, 0.20, 0.16, 0.12, 0.10, 0.079, 0.063, 0.054, 0.045,
                           0.039, 0.035, 0.029]))
X_STEEL = dict(zip(SIZES, [0.073, 0.068, 0.063, 0.065, 0.064, 0.060, 0.059, 0.057, 0.057, 0.055, 0.054, 0.052, 0.051,
                           0.052, 0.051, 0.050, 0.049, 0.048]))
AREA = dict(zip(SIZES, [0.0097, 0.0133, 0.0211, 0.0366, 0.0507, 0.0824, 0.0973, 0.1158, 0.1562, 0.1855, 0.2223, 0.2679,
                        0.3237, 0.3970, 0.4608, 0.5242, 0.5863, 0.7073]))
EMT = {"1/2": 0.304, "3/4": 0.533, "1": 0.864, "1-1/4": 1.496, "1-1/2": 2.036, "2": 3.356, "2-1/2": 5.858, "3": 8.846}
RATINGS = [15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400]
GROUND = [(15, "14"), (20, "12"), (60, "10"), (100, "8"), (200, "6"), (300, "4"), (400, "3")]
SMALL = {"14": 15, "12": 20, "10": 30}
AMBIENT_90 = [(30, 1.0), (35, 0.96), (40, 0.91), (45, 0.87), (50, 0.82)]


def bundling(count):
    return 1.0 if count <= 3 else 0.8 if count <= 6 else 0.7 if count <= 9 else 0.5


def next_rating(amps):
    return next(rating for rating in RATINGS if rating >= amps - 1e-9)


def drop_percent(size, feet, amps, volts, phases, power_factor):
    line = complex(R_STEEL[size], X_STEEL[size]) * feet / 1000
    current = cmath.rect(amps, -math.acos(power_factor))
    factor = math.sqrt(3) if phases == 3 else 2
    return 100 * (volts - abs(volts - factor * current * line)) / volts


def design(amps, phases, volts, feet, together, ambient, power_factor, limit):
    """One of `together` alike circuits that share a conduit all the way; `feet` of conductor."""
    breaker = next_rating(1.25 * amps)
    lines = 3 if phases == 3 else 2
    factor = next(k for upper, k in AMBIENT_90 if ambient <= upper) * bundling(lines * together)
    needed = next(
        size for size in SIZES
        if AMPS_75[size] >= 1.25 * amps - 1e-9
        and min(AMPS_75[size], AMPS_90[size] * factor) >= amps - 1e-9
        and breaker <= next_rating(AMPS_90[size] * factor)
        and breaker <= SMALL.get(size, 1e9)
    )
    size = next(s for s in SIZES[SIZES.index(needed):] if drop_percent(s, feet, amps, volts, phases, power_factor) <= limit)
    listed = next(ground for rating, ground in GROUND if breaker <= rating)
    mils = MILS[listed] * (MILS[size] / MILS[needed])
    # Within 0.5% is enough: whole sizes of one ratio miss one another by rounding.
    ground = next(s for s in SIZES if MILS[s] >= 0.995 * mils)
    if SIZES.index(ground) > SIZES.index(size):
        ground = size
    count = lines * together + 1
    area = lines * together * AREA[size] + AREA[ground]
    fill = 53 if count == 1 else 31 if count == 2 else 40
    trade = next(name for name, inside in EMT.items() if 100 * area / inside <= fill + 1e-9)
    return {
        "breakerAmps": breaker,
        "conductor": size,
        "grounding": ground,
        "tradeSize": trade,
        "fillPercent": 100 * area / EMT[trade],
        "dropPercent": drop_percent(size, feet, amps, volts, phases, power_factor),
        "ampacity": min(AMPS_75[size], AMPS_90[size] * factor),
    }


def main():
    chance = random.Random(20231)
    cases = []
    while len(cases) < 120:
        asked = {
            "amps": chance.choice([12, 16, 24, 32, 40, 48, 64, 80]),
            "phases": chance.choice([1, 1, 1, 3]),
            "volts": chance.choice([208, 240, 480]),
            "feet": chance.randint(15, 320),
            "together": chance.choice([1, 1, 2, 3, 4]),
            "ambient": chance.choice([30, 35, 40, 45, 50]),
            "powerFactor": chance.choice([1.0, 0.99, 0.95, 0.9]),
            "limit": chance.choice([1.5, 2, 3, 5]),
        }
        if asked["phases"] == 3 and asked["volts"] == 240:
            continue
        try:
            answer = design(asked["amps"], asked["phases"], asked["volts"], asked["feet"], asked["together"],
                            asked["ambient"], asked["powerFactor"], asked["limit"])
        except StopIteration:
            continue
        cases.append({**asked, "answer": answer})
    out = {"madeBy": "design.py", "python": platform.python_version(), "cases": cases}
    (pathlib.Path(__file__).parent / "cases.json").write_text(json.dumps(out, indent=1) + "\n")


main()
