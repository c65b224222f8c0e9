"""Stretches of raceways that no member holds, worked out apart from the project, for unheld.test.ts beside this file.

A member is a shapely line in the plane; how far a sample is from it, and where on it the nearest point lies, shapely
tells. It holds the sample where that is within the reach and the member is no more than 1.5 ft lower there. The raceway
is sampled every 0.02 ft; a stretch is a row of samples that nothing holds. Upright legs end a stretch.

    /usr/bin/python3 tests/outside/support/make.py > tests/outside/support/unheld.json
"""

import json
import platform
import random

import numpy as np
import shapely
from shapely.geometry import LineString, Point

BESIDE = 1.5
STEP = 0.02


def held(points, member, reach):
    """Which points a member holds: by shapely's own distance and by where the nearest point projects on the member."""
    (ax, ay, az), (bx, by, bz) = member
    line = LineString([(ax, ay), (bx, by)])
    at = [Point(x, y) for x, y in points[:, :2]]
    near = np.array([line.distance(one) <= reach for one in at])
    share = np.array([line.project(one, normalized=True) for one in at])
    level = az + share * (bz - az)
    return near & (level >= points[:, 2] - BESIDE)


def stretches(path, members, reach):
    found, open_length = [], 0.0

    def close():
        nonlocal open_length
        if open_length > 0:
            found.append(open_length)
        open_length = 0.0

    for a, b in zip(path, path[1:]):
        a, b = np.array(a), np.array(b)
        if np.hypot(*(b - a)[:2]) < 1e-9:
            close()
            continue
        length = float(np.linalg.norm(b - a))
        count = int(round(length / STEP))
        shares = (np.arange(count) + 0.5) / count
        points = a + shares[:, None] * (b - a)
        by_any = np.zeros(count, dtype=bool)
        for member in members:
            by_any |= held(points, member, reach)
        for one in by_any:
            if one:
                close()
            else:
                open_length += length / count
    close()
    return found


def case(rng):
    members = []
    for _ in range(rng.randint(1, 7)):
        x, y, z = rng.uniform(0, 60), rng.uniform(0, 40), rng.uniform(9, 14)
        angle, length = rng.choice([0, 90, rng.uniform(0, 180)]), rng.uniform(5, 50)
        dx, dy = length * np.cos(np.radians(angle)), length * np.sin(np.radians(angle))
        members.append([[x, y, z], [x + dx, y + dy, z + rng.choice([0, 0, rng.uniform(-3, 3)])]])
    path = [[rng.uniform(0, 60), rng.uniform(0, 40), 4.0]]
    path.append([path[0][0], path[0][1], rng.uniform(10, 12)])
    for _ in range(rng.randint(1, 4)):
        path.append([rng.uniform(0, 60), rng.uniform(0, 40), rng.choice([path[-1][2], rng.uniform(10, 13)])])
    reach = rng.choice([1.0, 3.0, 3.0, 5.0])
    rounded = lambda points: [[round(float(part), 3) for part in point] for point in points]
    members, path = [rounded(one) for one in members], rounded(path)
    return {
        "members": members,
        "path": path,
        "reach": reach,
        # Shorter than this the samples may miss.
        "stretches": [round(one, 2) for one in stretches(path, members, reach) if one > 0.2],
    }


rng = random.Random(41)
print(
    json.dumps(
        {
            "made": f"shapely {shapely.__version__}, numpy {np.__version__}, python {platform.python_version()}",
            "cases": [case(rng) for _ in range(40)],
        }
    )
)
