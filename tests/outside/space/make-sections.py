"""Cuts through blocks and paths, worked out apart from the project, for sections.test.ts beside this file.

What of a block a cut goes through is shapely's intersection of the line with its plan, measured along the line by shapely's
own linear referencing. Where a path in space crosses, shapely finds in plan; its elevation is interpolated by numpy on the
leg that holds the place.

    /usr/bin/python3 tests/outside/space/make-sections.py > tests/outside/space/sections.json
"""

import json
import platform
import random

import numpy as np
import shapely
from shapely.affinity import rotate, translate
from shapely.geometry import LineString, Point, box


def crossings(path, cut):
    found = []
    for a, b in zip(path, path[1:]):
        leg = LineString([a[:2], b[:2]])
        met = leg.intersection(cut)
        if met.is_empty or met.geom_type != "Point":
            continue
        share = leg.project(met, normalized=True)
        found.append({"across": cut.project(met), "z": float(np.interp(share, [0, 1], [a[2], b[2]]))})
    return sorted(found, key=lambda one: one["across"])


def main():
    random.seed(23)
    cases = []
    for _ in range(20):
        cut = [[random.uniform(-30, -10), random.uniform(-20, 20)], [random.uniform(10, 30), random.uniform(-20, 20)]]
        line = LineString(cut)
        blocks = []
        for k in range(5):
            wide, deep, high = random.uniform(1, 4), random.uniform(1, 9), random.uniform(1, 12)
            turn, at = random.uniform(0, 360), (-20 + 10 * k, random.uniform(-8, 8))
            plan = translate(rotate(box(-wide / 2, -deep / 2, wide / 2, deep / 2), turn, origin=(0, 0)), *at)
            part = plan.intersection(line)
            spans = []
            if not part.is_empty and part.length > 1e-6:
                ends = sorted(line.project(Point(p)) for p in part.coords)
                spans.append([ends[0], ends[-1]])
            blocks.append({"at": list(at), "size": [wide, deep, high], "rotation": turn, "spans": spans})
        paths = []
        for k in range(4):
            points = [
                [random.uniform(-25, 25), random.uniform(-25, 25), random.uniform(8, 15) + 8 * k]
                for _ in range(random.randint(2, 5))
            ]
            paths.append({"path": points, "met": crossings(points, line)})
        cases.append({"cut": cut, "length": line.length, "blocks": blocks, "paths": paths})
    versions = {"python": platform.python_version(), "shapely": shapely.__version__, "numpy": np.__version__}
    print(json.dumps({"madeBy": "make-sections.py", "versions": versions, "cases": cases}, indent=1))


main()
