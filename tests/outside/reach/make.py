"""Stored check values for taut cords: shapely says what sees what, networkx finds the shortest way.

Run with Debian 12's python3 (3.11), python3-shapely and python3-networkx:
    /usr/bin/python3 tests/outside/reach/make.py > tests/outside/reach/shapely-networkx.json
Every polygon is drawn in by 1e-8 before looking, so that touching it is allowed; its own corners are the nodes.
"""
import json
import math
import random
import sys

import networkx
import shapely
from shapely.geometry import LineString, Point, Polygon

IN = 1e-8


def rectangle(x, y, w, h, degrees):
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    corners = ((-w / 2, -h / 2), (w / 2, -h / 2), (w / 2, h / 2), (-w / 2, h / 2))
    return [[x + c * u - s * v, y + s * u + c * v] for u, v in corners]


def length(start, goal, polygons):
    cores = [Polygon(p).buffer(-IN, join_style=2) for p in polygons]
    nodes = [tuple(start), tuple(goal)] + [tuple(q) for p in polygons for q in p]
    graph = networkx.Graph()
    graph.add_nodes_from(nodes)
    for i, a in enumerate(nodes):
        for b in nodes[i + 1 :]:
            if a == b:
                continue
            line = LineString([a, b])
            if not any(line.intersects(core) for core in cores):
                graph.add_edge(a, b, weight=math.dist(a, b))
    try:
        return networkx.dijkstra_path_length(graph, nodes[0], nodes[1])
    except networkx.NetworkXNoPath:
        return None


def free(point, polygons):
    return not any(Polygon(p).buffer(-IN, join_style=2).intersects(Point(point)) for p in polygons)


def scatter(rng):
    """Rectangles of any size at any angle, overlapping as they fall."""
    polygons = [
        rectangle(rng.uniform(0, 60), rng.uniform(0, 60), rng.uniform(1, 20), rng.uniform(1, 20), rng.uniform(0, 90))
        for _ in range(rng.randint(3, 9))
    ]
    return polygons, [[rng.uniform(-5, 65), rng.uniform(-5, 65)] for _ in range(2)]


def lot(rng):
    """Two rows of vehicles head to head, turned by any angle, with columns; the goal on the outline of one vehicle."""
    turn = rng.uniform(0, 360)
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    place = lambda x, y: [c * x - s * y, s * x + c * y]
    polygons = []
    for row in (-1, 1):
        for k in range(5):
            w, l = rng.uniform(5.8, 9), rng.uniform(14, 19)
            polygons.append(rectangle(*place(9 * k, row * (2 + l / 2)), w, l, turn))
    polygons += [rectangle(*place(9 * k + 4.5, 0), 1, 1, turn) for k in (0, 2)]
    own = rng.choice(polygons[:10])
    side = rng.randrange(4)
    a, b = own[side], own[(side + 1) % 4]
    t = rng.uniform(0.05, 0.95)
    goal = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
    return polygons, [place(rng.uniform(0, 36), rng.uniform(-25, 25)), goal]


def shapes(rng):
    """Outlines that are not convex: an L, a U and a star, turned."""
    ell = [[0, 0], [12, 0], [12, 4], [4, 4], [4, 14], [0, 14]]
    you = [[0, 0], [16, 0], [16, 12], [12, 12], [12, 4], [4, 4], [4, 12], [0, 12]]
    star = [[r * math.cos(k * math.pi / 5), r * math.sin(k * math.pi / 5)] for k, r in enumerate([9, 4] * 5)]
    polygons = []
    for outline in (ell, you, star):
        turn, x, y = rng.uniform(0, 360), rng.uniform(0, 40), rng.uniform(0, 40)
        c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
        polygons.append([[x + c * u - s * v, y + s * u + c * v] for u, v in outline])
    return polygons, [[rng.uniform(-10, 50), rng.uniform(-10, 50)] for _ in range(2)]


def main():
    rng = random.Random(20251125)
    cases = []
    for kind, make, count in (("scatter", scatter, 40), ("lot", lot, 40), ("shapes", shapes, 40)):
        while sum(case["kind"] == kind for case in cases) < count:
            polygons, (start, goal) = make(rng)
            if not free(start, polygons):
                continue
            cases.append(
                {"kind": kind, "start": start, "goal": goal, "polygons": polygons, "length": length(start, goal, polygons)}
            )
    source = f"make.py: shapely {shapely.__version__}, networkx {networkx.__version__}, Python {sys.version.split()[0]}"
    print("{\n  \"source\": " + json.dumps(source) + ",\n  \"cases\": [")
    print(",\n".join("    " + json.dumps(case) for case in cases))
    print("  ]\n}")


if __name__ == "__main__":
    main()
