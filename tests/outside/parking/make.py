"""Stored check values for rows of stalls: shapely turns and shifts a box, and measures what comes of it.

Run with Debian 12's python3 (3.11) and python3-shapely (2.0):
    /usr/bin/python3 tests/outside/parking/make.py > tests/outside/parking/shapely-rows.json
A stall is a box of width x depth, turned until its stripes meet the aisle (the x axis) at the angle and lean to +x,
then shifted until its lowest corner is on the aisle and its right stripe meets the aisle where the next one begins.
"""
import json
import math
import sys

import shapely
from shapely.affinity import rotate, translate
from shapely.geometry import box
from shapely.ops import unary_union


def stall(width, depth, angle, foot):
    turned = rotate(box(0, 0, width, depth), angle - 90, origin=(0, 0))
    # The right stripe's own end is the lowest corner of a stall that leans to +x.
    corner = min(turned.exterior.coords, key=lambda c: (round(c[1], 9), -c[0]))
    return translate(turned, foot - corner[0], -corner[1])


def row(count, width, depth, angle):
    pitch = width / math.sin(math.radians(angle))
    return [stall(width, depth, angle, (i + 1) * pitch) for i in range(count)]


def measured(stalls):
    union = unary_union(stalls)
    min_x, min_y, max_x, max_y = union.bounds
    overlap = sum(a.intersection(b).area for i, a in enumerate(stalls) for b in stalls[:i])
    return {"across": max_y - min_y, "maxX": max_x, "area": union.area, "overlap": round(overlap, 9)}


def case(count, width, depth, angle):
    single = row(count, width, depth, angle)
    # The second row of two that interlock: the first turned half round about the middle of its heads.
    h = (math.cos(math.radians(angle)) * depth, math.sin(math.radians(angle)) * depth)
    second = [translate(s, h[0], h[1]) for s in single]
    corners = [[list(c) for c in s.exterior.coords[:-1]] for s in single]
    return {
        "count": count, "width": width, "depth": depth, "angle": angle,
        "corners": corners, "single": measured(single), "interlocked": measured(single + second),
    }


cases = [case(n, w, d, a) for n, w, d, a in ((6, 9, 18, 45), (5, 8.5, 19, 60), (7, 9.5, 18, 75), (4, 9, 18, 90))]
json.dump({"python": sys.version.split()[0], "shapely": shapely.__version__, "cases": cases}, sys.stdout, indent=1)
