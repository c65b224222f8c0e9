#!/usr/bin/env python3
"""Check values for voltage drop by phasors, worked with Python's complex numbers and scipy: make.py > circuits.json.

The current lags the voltage where the circuit is fed. Three phases are worked as three lines to neutral, each with its
own phasor, and the line-to-line volts at the load taken as the difference of two. longestFeet is the shortest length at
which the volts have fallen by limitPercent. Python 3.11, scipy 1.10.
"""
import cmath
import json
import math
import random

from scipy.optimize import brentq

# Ohm to neutral per 1000 ft: NEC Chapter 9 Table 9.
LINES = [
    ("8", "copper", "PVC", 0.78, 0.052),
    ("10", "copper", "steel", 1.2, 0.063),
    ("2", "aluminum", "aluminum", 0.32, 0.045),
    ("4/0", "aluminum", "steel", 0.1, 0.051),
    ("500", "copper", "steel", 0.029, 0.048),
    ("750", "aluminum", "PVC", 0.029, 0.038),
]


def volts_at_load(phases, volts, amps, r, x, pf):
    lag = -math.acos(pf)
    z = complex(r, x)
    if phases == 1:
        return abs(volts - 2 * cmath.rect(amps, lag) * z)
    ends = []
    for turn in (0, -2 * math.pi / 3):
        source = cmath.rect(volts / math.sqrt(3), turn)
        ends.append(source - cmath.rect(amps, turn + lag) * z)
    return abs(ends[0] - ends[1])


random.seed(310)
rows = []
for n in range(36):
    size, metal, raceway, r, x = LINES[n % len(LINES)]
    phases = random.choice([1, 3])
    volts = random.choice([208, 240, 480])
    amps = random.uniform(5, 80)
    pf = random.choice([1.0, 0.99, 0.9, 0.8, 0.6])
    sets = random.choice([1, 1, 2])
    length = random.uniform(10, 900)
    limit = random.choice([1.5, 3, 5])

    def left(feet):
        return volts_at_load(phases, volts, amps, r * feet / 1000 / sets, x * feet / 1000 / sets, pf)

    far = 1.0
    while left(far) > volts * (1 - limit / 100):
        far *= 1.5
    rows.append({
        "phases": phases, "volts": volts, "amps": amps, "length": length,
        "conductor": {"size": size, "metal": metal, "sets": sets}, "raceway": raceway, "powerFactor": pf,
        "limitPercent": limit, "voltsAtLoad": left(length),
        "longestFeet": brentq(lambda feet: left(feet) - volts * (1 - limit / 100), 0, far, xtol=1e-11, rtol=1e-14),
    })
print("[\n" + ",\n".join("  " + json.dumps(row) for row in rows) + "\n]")
