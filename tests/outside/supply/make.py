#!/usr/bin/python3
"""Twenty invented supply trees, solved by nodal analysis: check values for the sweeps of calc/supply.

Every conductor is a node of its own, the neutral too; series elements are admittances; transformers are windings with
unknown currents; loads are current injections that depend on the voltages. The linear part is factored once (LU) and
the injections are repeated until no voltage moves (the implicit Z-bus method): no sweep, no line-to-neutral matrices.

Run: /usr/bin/python3 make.py   (rewrites nodal.json)
"""
import cmath
import json
import math
import random
import sys

import numpy as np
import scipy
from scipy.sparse import lil_matrix
from scipy.sparse.linalg import splu

# Ohm to neutral per 1000 ft, NEC Chapter 9 Table 9: resistance and reactance in PVC and in steel.
TABLE_9 = {
    ("1/0", "copper"): {"PVC": (0.12, 0.044), "steel": (0.12, 0.055)},
    ("3/0", "copper"): {"PVC": (0.077, 0.042), "steel": (0.079, 0.052)},
    ("250", "copper"): {"PVC": (0.052, 0.041), "steel": (0.054, 0.052)},
    ("500", "copper"): {"PVC": (0.027, 0.039), "steel": (0.029, 0.048)},
    ("4/0", "aluminum"): {"PVC": (0.1, 0.041), "steel": (0.1, 0.051)},
    ("350", "aluminum"): {"PVC": (0.061, 0.04), "steel": (0.063, 0.05)},
}
KIND = {"PVC40": "PVC", "EMT": "steel", "RMC": "steel"}
POWER_FACTOR = 0.99
LINES = "ABC"
A = cmath.rect(1, 2 * math.pi / 3)


def neutral_of(volts, phases):
    """'wye', 'halfway' or None: where the neutral of a nominal system lies."""
    if volts in (208, 480):
        return "wye"
    return "halfway" if phases == 1 else None


# ---------------------------------------------------------------- inventing a site


def invent(seed):
    r = random.Random(seed)
    single = seed in (6, 13)
    volts = 240 if single else r.choice([208, 208, 480, 480, 240])
    site = {"equipment": [], "feeders": [], "loads": [], "chargers": []}
    site["equipment"].append({"id": "SVC", "kind": "source", "volts": volts, "phases": 1 if single else 3})
    count = 0

    def feeder(frm, to, metal_ok=True):
        size, metal = r.choice(list(TABLE_9))
        site["feeders"].append({
            "id": f"F-{to}", "from": frm, "to": to, "breakerAmps": 400,
            "conductor": {"size": size, "metal": metal, "sets": r.choice([1, 1, 2]), "insulation": "XHHW-2"},
            "raceway": r.choice(list(KIND)), "length": r.randrange(10, 220)})

    def hang(panel, volts, phases, pair):
        neutral = neutral_of(volts, phases)
        pairs = ["AB", "BC", "CA"] if phases == 3 else [pair]
        for i in range(r.randrange(2, 8)):
            three = phases == 3 and r.random() < 0.15
            site["chargers"].append({
                "id": f"EV-{panel}-{i}", "from": panel, "amps": r.choice([16, 24, 32, 40, 48]), "volts": volts,
                "phases": 3 if three else 1, "lines": "ABC" if three else r.choice(pairs),
                "branch": {"r": round(r.uniform(0.02, 0.15), 6), "x": round(r.uniform(0.003, 0.02), 6)},
                "hasRun": r.random() > 0.1})
        for i in range(r.randrange(0, 4)):
            kinds = (["LL", "3"] if phases == 3 else ["LL"]) + (["LN", "LN"] if neutral else [])
            kind = r.choice(kinds)
            low = volts / 2 if neutral == "halfway" else {208: 120, 480: 277}.get(volts)
            lines = {"LL": r.choice(pairs), "3": "ABC", "LN": r.choice("ABC" if phases == 3 else pair)}[kind]
            site["loads"].append({
                "id": f"L-{panel}-{i}", "from": panel, "name": "load", "volts": low if kind == "LN" else volts,
                "phases": 3 if kind == "3" else 1, "va": r.randrange(500, 6000), "continuous": r.random() < 0.5,
                "lines": lines})
        if r.random() < 0.35:
            site["loads"].append({
                "id": f"G-{panel}", "from": panel, "name": "inverter", "volts": volts, "phases": 3 if phases == 3 else 1,
                "va": r.randrange(2000, 15000), "continuous": True, "generation": True,
                "lines": "ABC" if phases == 3 else pair})

    def grow(parent, volts, phases, depth):
        nonlocal count
        for _ in range(r.randrange(1, 4 if depth == 0 else 3)):
            count += 1
            kind = "panelboard"
            if phases == 3 and volts != 208 and r.random() < 0.6:
                kind = "transformer"
            if kind == "transformer":
                name = f"T{count}"
                one = seed in (9, 16) and volts == 480 and r.random() < 0.5
                secondary = 240 if one else r.choice([208, 208, 240])
                item = {"id": name, "kind": kind, "kva": r.choice([37.5, 50] if one else [75, 112.5, 150]),
                        "primaryVolts": volts, "secondaryVolts": secondary, "phases": 1 if one else 3,
                        "impedancePercent": round(r.uniform(2.5, 6), 2), "xr": round(r.uniform(0.5, 3), 2)}
                if one:
                    item["lines"] = r.choice(["AB", "BC", "CA"])
                if r.random() < 0.2:
                    item["managedAmps"] = r.randrange(60, 140)
                site["equipment"].append(item)
                feeder(parent, name)
                hang(name, secondary, item["phases"], "AB") if r.random() < 0.2 else None
                if depth < 2:
                    grow(name, secondary, item["phases"], depth + 1)
                continue
            name = f"P{count}"
            item = {"id": name, "kind": kind, "volts": volts, "phases": phases}
            pair = "AB"
            if phases == 3 and r.random() < 0.15:
                item["phases"] = 1
                pair = item["lines"] = r.choice(["AB", "BC", "CA"])
            if r.random() < 0.35:
                item["managedAmps"] = r.randrange(40, 120)
            site["equipment"].append(item)
            feeder(parent, name)
            neutral = neutral_of(volts, 3) if item["phases"] == 1 and phases == 3 else neutral_of(volts, phases)
            hang_with(name, volts, item["phases"], pair, neutral, hang)
            if depth < 2 and item["phases"] == phases and r.random() < 0.5:
                grow(name, volts, phases, depth + 1)

    def hang_with(name, volts, phases, pair, neutral, hang):
        hang(name, volts, phases, pair)
        if neutral is None:
            # Two lines of a three-wire delta have no neutral to hang a load on.
            site["loads"][:] = [l for l in site["loads"] if not (l["from"] == name and len(l["lines"]) == 1)]

    grow("SVC", volts, 1 if single else 3, 0)
    return site


# ---------------------------------------------------------------- solving it


class Net:
    def __init__(self):
        self.count = 0
        self.entries = []  # (row, column, value)
        self.fixed = []  # (row, value)

    def unknown(self):
        self.count += 1
        return self.count - 1

    def add(self, i, j, value):
        if i is not None and j is not None:
            self.entries.append((i, j, value))

    def series(self, a, b, z):
        y = 1 / z
        for i, j, s in ((a, a, 1), (b, b, 1), (a, b, -1), (b, a, -1)):
            self.add(i, j, s * y)

    def hold(self, node, value):
        """An ideal source to ground: its current is an unknown of its own."""
        row = self.unknown()
        self.add(node, row, 1)
        self.add(row, node, 1)
        self.fixed.append((row, value))

    def winding(self, p, q, a, b, turns, z):
        """Ideal pair of windings, secondary a-b over primary p-q = turns, z in series with the secondary; returns the
        unknown of the current out of a."""
        current = self.unknown()
        for node, value in ((a, -1), (b, 1), (p, turns), (q, -turns)):
            self.add(node, current, value)
        for node, value in ((a, 1), (b, -1), (p, -turns), (q, turns)):
            self.add(current, node, value)
        self.add(current, current, z)
        return current


def solve(site, generation, alone=None):
    """`alone`: id of a charger that runs at its rating while the others keep the ceilings above it."""
    by_id = {e["id"]: e for e in site["equipment"]}
    into = {f["to"]: f for f in site["feeders"]}
    net = Net()
    nodes, systems = {}, {}  # id -> {line: node or None (ground)}, (volts, phases, neutral)
    primary_nodes = {}

    def wires(lines, neutral):
        made = {line: net.unknown() for line in lines}
        if neutral:
            made["N"] = net.unknown()
        return made

    order = []

    def visit(name):
        order.append(name)
        for f in site["feeders"]:
            if f["from"] == name:
                visit(f["to"])

    visit("SVC")
    for name in order:
        e = by_id[name]
        if e["kind"] == "source":
            neutral = neutral_of(e["volts"], e["phases"])
            lines = "AB" if e["phases"] == 1 else "ABC"
            here = {line: net.unknown() for line in lines}
            if neutral:
                here["N"] = None  # grounded
            volts = e["volts"] / 2 if neutral == "halfway" else e["volts"] / math.sqrt(3)
            for k, line in enumerate(lines):
                phasor = volts * (-1) ** k if neutral == "halfway" else cmath.rect(volts, -2 * math.pi * k / 3)
                net.hold(here[line], phasor)
            nodes[name], systems[name] = here, (e["volts"], e["phases"], neutral)
            continue
        f = into[name]
        up, (up_volts, up_phases, up_neutral) = nodes[f["from"]], systems[f["from"]]
        r, x = TABLE_9[(f["conductor"]["size"], f["conductor"]["metal"])][KIND[f["raceway"]]]
        z = complex(r, x) * f["length"] / 1000 / f["conductor"]["sets"]
        lines = e.get("lines", "AB" if up_phases == 1 else "ABC")
        here = wires(lines, up_neutral and e["kind"] != "transformer")
        for line, node in here.items():
            net.series(up[line], node, z)
        if e["kind"] != "transformer":
            nodes[name], systems[name] = here, (up_volts, e["phases"], up_neutral)
            continue
        primary_nodes[name] = here
        v1, v2 = e["primaryVolts"], e["secondaryVolts"]
        zt = e["impedancePercent"] / 100 * v2 * v2 / (e["kva"] * 1000)
        zt = complex(1, e["xr"]) * zt / abs(complex(1, e["xr"]))
        side = {}
        if e["phases"] == 3:
            for k, line in enumerate("ABC"):
                side[line] = net.unknown()
                net.winding(here[line], here["ABC"[(k + 1) % 3]], side[line], None, v2 / math.sqrt(3) / v1, zt)
            neutral = neutral_of(v2, 3)
        else:
            p, q = here[lines[0]], here[lines[1]]
            side["A"], side["B"] = net.unknown(), net.unknown()
            net.winding(p, q, side["A"], None, v2 / 2 / v1, zt / 2)
            net.winding(p, q, None, side["B"], v2 / 2 / v1, zt / 2)
            neutral = "halfway"
        side["N"] = None  # the star point is grounded, used by loads or not
        nodes[name], systems[name] = side, (v2, e["phases"], neutral)

    boxes = {}
    for c in site["chargers"]:
        if not c["hasRun"]:
            continue
        here = {line: net.unknown() for line in c["lines"]}
        for line, node in here.items():
            net.series(nodes[c["from"]][line], node, complex(c["branch"]["r"], c["branch"]["x"]))
        boxes[c["id"]] = here

    matrix = lil_matrix((net.count, net.count), dtype=complex)
    for i, j, value in net.entries:
        matrix[i, j] += value
    lu = splu(matrix.tocsc())
    held = np.zeros(net.count, dtype=complex)
    for row, value in net.fixed:
        held[row] = value

    def at(x, node):
        return 0 if node is None else x[node]

    def neutral_volts(x, name):
        """Voltage of the neutral; of a system without one, of the ground that its source or star point has."""
        return at(x, nodes[name].get("N"))

    lag = complex(POWER_FACTOR, -math.sqrt(1 - POWER_FACTOR**2))

    def charger_currents(x, c):
        v = {line: at(x, nodes[c["from"]][line]) for line in c["lines"]}
        if c["lines"] == "ABC":
            v1 = (v["A"] + A * v["B"] + A * A * v["C"]) / 3
            i = c["amps"] * lag * v1 / abs(v1)
            return {"A": i, "B": i * A * A, "C": i * A}
        one, other = c["lines"]
        across = v[one] - v[other]
        i = c["amps"] * lag * across / abs(across)
        return {one: i, other: -i}

    def load_currents(x, l):
        sign = -1 if l.get("generation") else 1
        if l.get("generation") and not generation:
            return {}
        here = nodes[l["from"]]
        currents = {}

        def between(one, other, va):
            v = at(x, here[one]) - (neutral_volts(x, l["from"]) if other == "N" else at(x, here[other]))
            i = sign * (va / v).conjugate()
            currents[one] = currents.get(one, 0) + i
            currents[other] = currents.get(other, 0) - i

        if l["lines"] == "ABC":
            for k in range(3):
                between(LINES[k], LINES[(k + 1) % 3], l["va"] / 3)
        elif len(l["lines"]) == 2:
            between(l["lines"][0], l["lines"][1], l["va"])
        else:
            between(l["lines"], "N", l["va"])
        return currents

    children = {}
    for f in site["feeders"]:
        children.setdefault(f["from"], []).append(f["to"])

    def to_primary(name, out):
        """Line currents at the primary of a transformer from those out of its secondary; as they are elsewhere."""
        e = by_id[name]
        if e["kind"] != "transformer":
            return out
        v1, v2 = e["primaryVolts"], e["secondaryVolts"]
        back = {}
        if e["phases"] == 3:
            for k in range(3):
                w = out.get(LINES[k], 0) * v2 / math.sqrt(3) / v1
                back[LINES[k]] = back.get(LINES[k], 0) + w
                nxt = LINES[(k + 1) % 3]
                back[nxt] = back.get(nxt, 0) - w
        else:
            w = (out.get("A", 0) - out.get("B", 0)) * v2 / 2 / v1
            back = {e["lines"][0]: w, e["lines"][1]: -w}
        return back

    def shares(x):
        """How load management scales the chargers of each piece of equipment: inner ceilings first."""
        factor = {}

        def total(name):
            """Line currents that the ceilings scale, and those of the charger that they leave alone."""
            sums, lone = {}, {}
            for c in site["chargers"]:
                if c["from"] == name and c["hasRun"]:
                    for line, i in charger_currents(x, c).items():
                        to = lone if c["id"] == alone else sums
                        to[line] = to.get(line, 0) + i
            for child in children.get(name, []):
                scaled, single = total(child)
                for line, i in to_primary(child, scaled).items():
                    sums[line] = sums.get(line, 0) + i
                for line, i in to_primary(child, single).items():
                    lone[line] = lone.get(line, 0) + i
            limit = by_id[name].get("managedAmps", math.inf)

            def largest(share):
                return max([abs(lone.get(l, 0) + share * sums.get(l, 0)) for l in LINES], default=0)

            most = largest(1)
            factor[name] = 1
            if alone is None and most > limit:
                factor[name] = limit / most
            elif most > limit:
                # By halves: no formula, so that none is shared with what is checked.
                low, high = 0.0, 1.0
                for _ in range(80):
                    middle = (low + high) / 2
                    low, high = (middle, high) if largest(middle) <= limit else (low, middle)
                factor[name] = low
            return {line: i * factor[name] for line, i in sums.items()}, lone

        total("SVC")

        def spread(name, outer):
            factor[name] *= outer
            for child in children.get(name, []):
                spread(child, factor[name])

        spread("SVC", 1)
        return factor

    x = lu.solve(held)
    for rounds in range(500):
        injected = held.copy()
        factor = shares(x)
        for c in site["chargers"]:
            if c["hasRun"]:
                for line, i in charger_currents(x, c).items():
                    injected[boxes[c["id"]][line]] -= i * (1 if c["id"] == alone else factor[c["from"]])
        for l in site["loads"]:
            for line, i in load_currents(x, l).items():
                node = nodes[l["from"]].get(line)
                if node is not None:
                    injected[node] -= i
        fresh = lu.solve(injected)
        moved = np.max(np.abs(fresh - x))
        x = fresh
        if moved < 1e-10:
            break
    else:
        sys.exit("a case did not settle")

    factor = shares(x)
    result = {"equipment": {}, "boxes": {}, "feeders": {}}
    for name in order:
        here, (volts, phases, neutral) = nodes[name], systems[name]
        row = {"volts": {}, "amps": {}}
        for one, other in ("AB", "BC", "CA"):
            if one in here and other in here:
                row["volts"][one + other] = abs(x[here[one]] - x[here[other]])
        if neutral:
            for line in LINES:
                if line in here:
                    row["volts"][line + "N"] = abs(x[here[line]] - neutral_volts(x, name))
        out = {}
        for c in site["chargers"]:
            if c["from"] == name and c["hasRun"]:
                for line, i in charger_currents(x, c).items():
                    out[line] = out.get(line, 0) + i * (1 if c["id"] == alone else factor[name])
        for l in site["loads"]:
            if l["from"] == name:
                for line, i in load_currents(x, l).items():
                    if line != "N":
                        out[line] = out.get(line, 0) + i
        for child in children.get(name, []):
            f = into[child]
            r, xx = TABLE_9[(f["conductor"]["size"], f["conductor"]["metal"])][KIND[f["raceway"]]]
            z = complex(r, xx) * f["length"] / 1000 / f["conductor"]["sets"]
            there = primary_nodes.get(child, nodes[child])
            flow = {line: (at(x, here[line]) - at(x, node)) / z for line, node in there.items()}
            result["feeders"][f["id"]] = {
                "amps": {line: abs(i) for line, i in flow.items()},
                "lossWatts": sum(abs(i) ** 2 for i in flow.values()) * z.real}
            for line, i in flow.items():
                if line != "N":
                    out[line] = out.get(line, 0) + i
        row["amps"] = {line: abs(out.get(line, 0)) for line in LINES if line in here}
        if neutral:
            row["amps"]["N"] = abs(sum(out.values()))
        row["share"] = factor[name]
        result["equipment"][name] = row
    for c in site["chargers"]:
        if c["hasRun"]:
            here = boxes[c["id"]]
            pairs = ["AB", "BC", "CA"] if c["lines"] == "ABC" else [c["lines"]]
            result["boxes"][c["id"]] = min(abs(x[here[p[0]]] - x[here[p[1]]]) for p in pairs)
    return result


def worst_boxes(site, solved):
    """Least volts at the box of each charger that a ceiling holds back, it alone at its rating, in every solved case."""
    worst = {}
    for c in site["chargers"]:
        held = [generation for generation, case in solved.items() if case["equipment"][c["from"]]["share"] < 1]
        if c["hasRun"] and held:
            worst[c["id"]] = min(solve(site, generation, c["id"])["boxes"][c["id"]] for generation in held)
    return worst


cases = []
for seed in range(20):
    site = invent(seed)
    solved = {True: solve(site, True)}
    if any(l.get("generation") for l in site["loads"]):
        solved[False] = solve(site, False)
    cases.append({"seed": seed, "site": site, "full": solved[True], "withoutGeneration": solved.get(False),
                  "atRating": worst_boxes(site, solved)})

document = {
    "source": "make.py beside this file: nodal analysis with every conductor a node, injections repeated to 1e-10 V",
    "versions": {"python": sys.version.split()[0], "numpy": np.__version__, "scipy": scipy.__version__},
    "powerFactor": POWER_FACTOR,
    "cases": cases,
}
with open(__file__.replace("make.py", "nodal.json"), "w", encoding="utf8") as out:
    head = {k: v for k, v in document.items() if k != "cases"}
    out.write(json.dumps(head, indent=1)[:-2] + ',\n "cases": [\n')
    out.write(",\n".join("  " + json.dumps(case) for case in cases) + "\n ]\n}\n")
print(sum(len(c["site"]["equipment"]) for c in cases), "pieces of equipment,", sum(len(c["full"]["boxes"]) for c in cases), "boxes")
