"""Blocks as a military oblique view shows them, worked out apart from the project, for raised.test.ts beside this file.

Each corner goes through the matrix of the projection in numpy; what the block covers is shapely's convex hull of its eight
corners. Which edges are hidden is asked of shapely as well: one is where its middle lies inside the hull and the eye's ray
through it meets the block nearer by.

    /usr/bin/python3 tests/outside/space/make-raised.py > tests/outside/space/raised.json
"""

import json
import math
import platform
import random

import numpy as np
import shapely
from shapely.affinity import rotate
from shapely.geometry import MultiPoint, Point, box

PROJECT = np.array([[1.0, 0.0, 0.0], [0.0, 1.0, 1.0]])
# Towards the eye: this direction is one point of the drawing.
TO_EYE = np.array([0.0, -1.0, 1.0])


def inside(point, plan, high):
    x, y, z = point
    return 0 < z < high and plan.buffer(-1e-6).contains(Point(x, y))


def main():
    random.seed(11)
    cases = []
    for _ in range(24):
        wide, deep, high = random.uniform(0.5, 9), random.uniform(0.5, 19), random.uniform(1, 14)
        plan = rotate(box(-wide / 2, -deep / 2, wide / 2, deep / 2), random.uniform(0, 360), origin=(0, 0))
        plan = shapely.affinity.translate(plan, random.uniform(-50, 50), random.uniform(-50, 50))
        ring = list(shapely.geometry.polygon.orient(plan).exterior.coords)[:-1]
        foot = [np.array([x, y, 0.0]) for x, y in ring]
        top = [np.array([x, y, high]) for x, y in ring]
        edges = [(a[i], a[(i + 1) % 4]) for a in (foot, top) for i in range(4)] + list(zip(foot, top))
        hull = MultiPoint([tuple(PROJECT @ p) for p in foot + top]).convex_hull
        seen = []
        for a, b in edges:
            middle = (a + b) / 2
            # A step towards the eye from a hidden edge is inside the block.
            if not any(inside(middle + TO_EYE * t, plan, high) for t in np.linspace(1e-3, high + 30, 4000)):
                seen.append(float(np.linalg.norm(PROJECT @ b - PROJECT @ a)))
        cases.append(
            {
                "outline": [[float(x), float(y)] for x, y in ring],
                "high": high,
                "area": hull.area,
                "bounds": list(hull.bounds),
                "seen": len(seen),
                "drawn": math.fsum(seen),
            }
        )
    versions = {"python": platform.python_version(), "shapely": shapely.__version__, "numpy": np.__version__}
    print(json.dumps({"madeBy": "make-raised.py", "versions": versions, "cases": cases}, indent=1))


main()
