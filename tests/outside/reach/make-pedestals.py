"""Stored check values for cords of pedestals, which lie along the ground from the pedestal's foot.

Run with Debian 12's python3 (3.11), python3-shapely and python3-networkx:
    /usr/bin/python3 tests/outside/reach/make-pedestals.py > tests/outside/reach/pedestals.json
The way in the plan is that of make.py (shapely says what sees what, networkx finds the shortest way); the cord is the
longer of the straight one and the way down the pedestal, along the ground and up to the inlet.
"""
import json
import math
import random
import sys

import networkx
import shapely

from make import free, length

HEAD = 2  # ft from the leading bumper to the head of the stall


def place(stall, along, left):
    c, s = math.cos(math.radians(stall["heading"])), math.sin(math.radians(stall["heading"]))
    return [stall["at"][0] + along * c - left * s, stall["at"][1] + along * s + left * c]


def parked(stall, car):
    lead, half = stall["depth"] - HEAD, car["width"] / 2
    tail = lead - car["length"]
    return [place(stall, *p) for p in ((tail, -half), (lead, -half), (lead, half), (tail, half))]


def inlet(stall, car, direction, along, side):
    part = along if direction == "nose-in" else 1 - along
    own = car["width"] / 2 * (1 if side == "left" else -1) * (1 if direction == "nose-in" else -1)
    return place(stall, stall["depth"] - HEAD - part * car["length"], own)


def main():
    rng = random.Random(20251129)
    cases = []
    while len(cases) < 24:
        turn = rng.uniform(0, 360)
        c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
        car = {"length": rng.uniform(14, 19), "width": rng.uniform(5.8, 7), "height": 5}
        stalls = []
        for k in range(4):
            for row in (0, 1):
                x, y = 9.0 * k, (0.0 if row == 0 else 36.0)
                stalls.append(
                    {
                        "at": [c * x - s * y, s * x + c * y],
                        "width": 9,
                        "depth": 18,
                        "heading": turn + (90 if row == 0 else 270),
                    }
                )
        polygons = [parked(stall, car) for stall in stalls]
        x, y = rng.uniform(-4, 31), rng.uniform(14, 22)
        foot = [c * x - s * y, s * x + c * y]
        if not free(foot, polygons):
            continue
        box = rng.choice([rng.uniform(1.5, 4), rng.uniform(0.2, 1)])
        rise = rng.uniform(1, 4)
        cord = rng.uniform(18, 27)
        own = rng.randrange(len(stalls))
        along, side = rng.uniform(0.05, 0.95), rng.choice(["left", "right"])
        available = cord - 2
        rows = []
        for direction in ("nose-in", "back-in"):
            plan = length(foot, inlet(stalls[own], car, direction, along, side), polygons)
            needed = max(math.hypot(plan, box - rise), box + plan + rise)
            rows.append({"direction": direction, "plan": plan, "needed": needed, "margin": available - needed})
        cases.append(
            {
                "car": {**car, "along": along, "side": side, "inletHeight": rise},
                "stalls": stalls,
                "own": own,
                "box": [*foot, box],
                "cord": cord,
                "rows": rows,
                "coverage": sum(0.5 for row in rows if row["margin"] >= 0),
            }
        )
    source = f"make-pedestals.py: shapely {shapely.__version__}, networkx {networkx.__version__}, Python {sys.version.split()[0]}"
    print("{\n  \"source\": " + json.dumps(source) + ",\n  \"cases\": [")
    print(",\n".join("    " + json.dumps(case) for case in cases))
    print("  ]\n}")


main()
