"""Run lengths of invented sites, worked out apart from the project, for tests/outside/network/runs.test.ts.

Networks are built here from the site file's section 3 with other means than the project's: plan crossings from shapely's
intersection of whole lines, a networkx graph whose nodes are (raceway, distance along it), nothing merged, and the taps
of every charger put in as nodes of their own. The fewest bends are found by listing all shortest paths. Sites on a
lattice (coordinates in eighths of a foot) have many equally short ways, overlapping raceways and legs under grade;
free ones have any angle, slopes and gaps.

    /usr/bin/python3 tests/outside/network/make.py > tests/outside/network/runs.json
"""
import json
import math
import random
import sys

import networkx as nx
import numpy as np
import shapely
from shapely.geometry import LineString, Point

JOIN = 0.25
TAP = 6.0
# A site in which some distance is this near to a limit, or two nearest things this near to equal, is not used.
MARGIN = 1e-4


class TooClose(Exception):
    pass


def dist(a, b):
    return float(np.linalg.norm(np.subtract(a, b)))


class Path3:
    """A polyline in space by distance along it."""

    def __init__(self, points):
        self.points = [tuple(map(float, p)) for p in points]
        self.cum = [0.0]
        for a, b in zip(self.points, self.points[1:]):
            self.cum.append(self.cum[-1] + dist(a, b))

    def at(self, s):
        for i in range(len(self.points) - 1):
            if s <= self.cum[i + 1] or i == len(self.points) - 2:
                leg = self.cum[i + 1] - self.cum[i]
                t = 0.0 if leg == 0 else (s - self.cum[i]) / leg
                return tuple(np.array(self.points[i]) + t * (np.array(self.points[i + 1]) - np.array(self.points[i])))

    def closest(self, p):
        """(distance, distance along) of the closest point; the first along the path of equals."""
        best = None
        for i, (a, b) in enumerate(zip(self.points, self.points[1:])):
            a, b, q = np.array(a), np.array(b), np.array(p, float)
            u = b - a
            t = min(1.0, max(0.0, float(np.dot(q - a, u) / np.dot(u, u))))
            d = float(np.linalg.norm(a + t * u - q))
            if best is None or d < best[0] - 1e-9:
                best = (d, self.cum[i] + t * (self.cum[i + 1] - self.cum[i]))
        return best


def within(d, limit):
    if abs(d - limit) < MARGIN and abs(d - limit) > 1e-12:
        raise TooClose
    return d <= limit + 1e-12


def upright(a, b):
    return math.hypot(b[0] - a[0], b[1] - a[1]) <= JOIN


def parallel_in_plan(a, b, c, d):
    cross = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
    return abs(cross) < 1e-7 * math.hypot(b[0] - a[0], b[1] - a[1]) * math.hypot(d[0] - c[0], d[1] - c[1])


def pass_in_space(a, b, c, d):
    """Where the insides of two legs come closest: (distance, share, share) or None. Normal equations by numpy."""
    a, b, c, d = map(lambda p: np.array(p, float), (a, b, c, d))
    m = np.stack([b - a, -(d - c)], axis=1)
    if np.linalg.matrix_rank(m, tol=1e-7) < 2:
        return None
    (s, t), *_ = np.linalg.lstsq(m, c - a, rcond=None)
    if not (0 <= s <= 1 and 0 <= t <= 1):
        return None
    return float(np.linalg.norm(a + s * (b - a) - c - t * (d - c))), float(s), float(t)


def joints(paths):
    """(raceway, along, raceway, along, gap) of every touch and crossing between different raceways."""
    found = []
    ids = sorted(paths)
    for i in ids:
        for v, p in enumerate(paths[i].points):
            for j in ids:
                if i == j:
                    continue
                d, s = paths[j].closest(p)
                if within(d, JOIN):
                    found.append((i, paths[i].cum[v], j, s, d))
    for n, i in enumerate(ids):
        for j in ids[n + 1:]:
            for k, (a, b) in enumerate(zip(paths[i].points, paths[i].points[1:])):
                for m, (c, d) in enumerate(zip(paths[j].points, paths[j].points[1:])):
                    lk, lm = dist(a, b), dist(c, d)
                    if upright(a, b) or upright(c, d) or parallel_in_plan(a, b, c, d):
                        met = pass_in_space(a, b, c, d)
                        if met and within(met[0], JOIN):
                            found.append((i, paths[i].cum[k] + met[1] * lk, j, paths[j].cum[m] + met[2] * lm, met[0]))
                        continue
                    first, second = LineString([a[:2], b[:2]]), LineString([c[:2], d[:2]])
                    cross = first.intersection(second)
                    if cross.is_empty:
                        continue
                    assert isinstance(cross, Point)
                    s = first.project(cross) / first.length
                    t = second.project(cross) / second.length
                    gap = abs(a[2] + s * (b[2] - a[2]) - c[2] - t * (d[2] - c[2]))
                    if within(gap, JOIN):
                        found.append((i, paths[i].cum[k] + s * lk, j, paths[j].cum[m] + t * lm, gap))
    return found


def solve(site):
    paths = {r["id"]: Path3(r["path"]) for r in site["raceways"]}
    links = joints(paths)
    together = nx.Graph()
    together.add_nodes_from(paths)
    together.add_edges_from((i, j) for i, _, j, _, _ in links)
    equipment = {e["id"]: e for e in site["equipment"]}
    drops = {d["id"]: d for d in site["drops"]}
    answers = []
    for charger in site["chargers"]:
        entry = tuple(map(float, equipment[charger["from"]]["entry"]))
        box = tuple(map(float, drops[charger["drop"]]["box"]))
        taps = []
        for i, path in paths.items():
            d, s = path.closest(entry)
            if within(d, TAP):
                taps.append((i, s, d))
        connected = set()
        for i, _, _ in taps:
            connected |= nx.node_connected_component(together, i)
        if not connected:
            answers.append({"charger": charger["id"], "length": None, "why": "equipment",
                            "nearest": min(path.closest(entry)[0] for path in paths.values())})
            continue
        near = sorted((paths[i].closest(box)[0], i) for i in connected)
        if len(near) > 1 and 1e-9 < near[1][0] - near[0][0] < MARGIN:
            raise TooClose
        least = near[0][0]
        to = min(i for d, i in near if d <= least + 1e-9)
        if not within(least, TAP):
            answers.append({"charger": charger["id"], "length": None, "why": "box", "nearest": least})
            continue
        box_at = paths[to].closest(box)[1]
        graph, places = graph_of(paths, links, taps, entry, (to, box_at, least), box)
        length = nx.dijkstra_path_length(graph, "entry", "box")
        found = {"charger": charger["id"], "length": length, "boxTap": least, "raceway": to}
        found["bends"] = min(bends_of([places[n] for n in way])
                             for way in nx.all_shortest_paths(graph, "entry", "box", weight="whole"))
        answers.append(found)
    return answers


def graph_of(paths, links, taps, entry, box_tap, box):
    stops = {i: {round(s, 9) for s in path.cum} for i, path in paths.items()}
    links = [(i, round(s, 9), j, round(t, 9), gap) for i, s, j, t, gap in links]
    taps = [(i, round(s, 9), d) for i, s, d in taps]
    box_tap = (box_tap[0], round(box_tap[1], 9), box_tap[2])
    for i, s, j, t, _ in links:
        stops[i].add(s)
        stops[j].add(t)
    for i, s, _ in taps:
        stops[i].add(s)
    stops[box_tap[0]].add(box_tap[1])
    graph = nx.Graph()
    places = {"entry": entry, "box": box}
    for i, all_stops in stops.items():
        ordered = sorted(all_stops)
        for s in ordered:
            places[(i, s)] = paths[i].at(s)
        for s, t in zip(ordered, ordered[1:]):
            graph.add_edge((i, s), (i, t), weight=t - s)
    for i, s, j, t, gap in links:
        graph.add_edge((i, s), (j, t), weight=gap)
    for i, s, d in taps:
        graph.add_edge("entry", (i, s), weight=d)
    graph.add_edge((box_tap[0], box_tap[1]), "box", weight=box_tap[2])
    for _, _, edge in graph.edges(data=True):
        # Whole millionths, so that equal sums are equal in whatever order they were added up.
        edge["whole"] = round(edge["weight"] * 1e6)
    return graph, places


def bends_of(points):
    kept = [points[0]]
    for p in points[1:]:
        if dist(kept[-1], p) > 1e-7:
            kept.append(p)
    bends = 0
    for a, b, c in zip(kept, kept[1:], kept[2:]):
        u, v = np.subtract(b, a), np.subtract(c, b)
        angle = math.degrees(math.atan2(np.linalg.norm(np.cross(u, v)), np.dot(u, v)))
        if 1e-6 < abs(angle - 1) < MARGIN:
            raise TooClose
        bends += angle > 1
    return int(bends)


def eighth(x):
    return round(x * 8) / 8


def lattice_site(rnd):
    """Rows, crosses at the same and at other elevations, risers, legs under grade, gaps of an eighth; square."""
    raceways = []
    xs = sorted(rnd.sample(range(0, 120, 4), rnd.randint(3, 5)))
    ys = sorted(rnd.sample(range(0, 120, 4), rnd.randint(3, 5)))
    for y in ys:
        z = rnd.choice([11, 11, 11, 13, -2])
        gap = rnd.choice([0, 0, 0.125])
        raceways.append([[xs[0], y + gap, z], [xs[-1], y + gap, z]])
    for x in xs:
        z = rnd.choice([11, 11, 11.125, 13])
        a, b = ys[0] - rnd.choice([0, 0.125, 4]), ys[-1] + rnd.choice([0, 4])
        if rnd.random() < 0.3:
            m = rnd.randint(1, 9) * (b - a) / 10
            m = eighth(m)
            raceways.append([[x, a, z], [x, a + m, z], [x + 2, a + m, z], [x + 2, b, z]])
        else:
            raceways.append([[x, a, z], [x, b, z]])
    for _ in range(rnd.randint(1, 3)):
        x, y = rnd.choice(xs), rnd.choice(ys)
        raceways.append([[x, y + rnd.choice([0, 0.125]), -2], [x, y, rnd.choice([11, 13, 14])]])
    if rnd.random() < 0.5:  # one that lies along part of another
        a, b = raceways[0]
        raceways.append([[a[0] + 1, a[1], a[2]], [b[0] - 1, b[1], b[2]]])
    entries = [[rnd.choice(xs) + rnd.randint(-2, 2), rnd.choice(ys) + rnd.randint(-2, 2), rnd.choice([0, 6, 9, 11])]
               for _ in range(2)]
    boxes = [[rnd.randint(0, 120), rnd.choice(ys) + rnd.randint(-5, 5), rnd.choice([10, 11, 12])] for _ in range(10)]
    return shape(rnd, raceways, entries, boxes)


def free_site(rnd):
    """Polylines at any angle, level, sloped and upright, some ended on one another with gaps."""
    def point(z=None):
        return [rnd.uniform(0, 90), rnd.uniform(0, 90), rnd.choice([10.0, 10.0, 10.1, 12.0]) if z is None else z]
    raceways = []
    for _ in range(rnd.randint(6, 10)):
        z = rnd.choice([10.0, 10.0, 10.0, 12.0])
        line = [point(z)]
        for _ in range(rnd.randint(1, 3)):
            x, y, _ = line[-1]
            a = rnd.uniform(0, 2 * math.pi)
            r = rnd.uniform(10, 60)
            dz = rnd.choice([0, 0, rnd.uniform(-1.5, 1.5)])
            line.append([x + r * math.cos(a), y + r * math.sin(a), line[-1][2] + dz])
        raceways.append(line)
    for _ in range(rnd.randint(4, 7)):  # branches that start within the tolerance of another
        path = Path3(rnd.choice(raceways))
        p = path.at(rnd.uniform(0, path.cum[-1]))
        v = np.array([rnd.gauss(0, 1) for _ in range(3)])
        v *= rnd.uniform(0, 0.24) / np.linalg.norm(v)
        p = [float(c) for c in np.array(p) + v]
        a = rnd.uniform(0, 2 * math.pi)
        end = [p[0] + 25 * math.cos(a), p[1] + 25 * math.sin(a), p[2]]
        raceways.append([p, end] if rnd.random() < 0.6 else [p, [p[0], p[1], -2.0], [end[0], end[1], -2.0]])
    entries, boxes = [], []
    for _ in range(2):
        path = Path3(rnd.choice(raceways))
        p = path.at(rnd.uniform(0, path.cum[-1]))
        entries.append([p[0] + rnd.uniform(-2, 2), p[1] + rnd.uniform(-2, 2), p[2] + rnd.uniform(-3, 3)])
    for _ in range(10):
        path = Path3(rnd.choice(raceways))
        p = path.at(rnd.uniform(0, path.cum[-1]))
        boxes.append([p[0] + rnd.uniform(-4, 4), p[1] + rnd.uniform(-4, 4), p[2] + rnd.uniform(-3, 3)])
    return shape(rnd, raceways, entries, boxes)


def shape(rnd, raceways, entries, boxes):
    names = [f"R{n:02d}" for n in range(len(raceways))]
    rnd.shuffle(names)
    for line in raceways:
        plan = LineString([p[:2] for p in line])
        if len(line) > 2 and (not plan.is_simple or any(plan.distance(Point(p[:2])) < 0 for p in line)):
            raise TooClose  # crossing itself: outside the rule
        for a, b, c in zip(line, line[1:], line[2:]):
            u, v = np.subtract(b, a), np.subtract(c, b)
            if np.dot(u, v) / np.linalg.norm(u) / np.linalg.norm(v) < -0.9:
                raise TooClose  # doubles back along itself
    return {
        "format": "overrow/site", "version": 1, "units": "ft", "name": "invented",
        "raceways": [{"id": i, "path": p, "method": "EMT", "place": "overhead"} for i, p in zip(names, raceways)],
        "equipment": [{"id": f"P{n + 1}", "kind": "panelboard", "at": e[:2], "size": [3, 1, 6], "entry": e, "volts": 208,
                       "phases": 3} for n, e in enumerate(entries)],
        "drops": [{"id": f"D{n:02d}", "box": b, "cord": 25} for n, b in enumerate(boxes)],
        "chargers": [{"id": f"C{n:02d}{p}", "drop": f"D{n:02d}", "stalls": [], "from": p, "amps": 32, "volts": 208,
                      "phases": 1} for n in range(len(boxes)) for p in ("P1", "P2")],
    }


def family(make, count, seed):
    rnd = random.Random(seed)
    sites = []
    while len(sites) < count:
        try:
            site = make(rnd)
            answers = solve(site)
        except TooClose:
            continue
        with_run = sum(a["length"] is not None for a in answers)
        if with_run < 8:
            continue
        sites.append({"site": site, "runs": answers})
    return sites


if __name__ == "__main__":
    json.dump({
        "made": "tests/outside/network/make.py",
        "versions": {"python": sys.version.split()[0], "networkx": nx.__version__, "shapely": shapely.__version__,
                     "numpy": np.__version__},
        "lattice": family(lattice_site, 20, 20251125),
        "free": family(free_site, 20, 7),
    }, sys.stdout, separators=(",", ":"))
    sys.stdout.write("\n")
