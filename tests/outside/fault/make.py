#!/usr/bin/python3
"""Invented supply trees with bolted faults at every place, solved by nodal analysis: check values for calc/supply/fault.

Every conductor is a node of its own, neutral and grounding conductor too; series elements are impedances, transformers
windings with unknown currents, a fault is a pair of nodes held at one voltage. One dense system of equations (numpy) for
each fault: no loops added up, no sequence networks, no reference of ohms through a transformer.

Run: /usr/bin/python3 make.py   (rewrites trees.json)
"""
import cmath
import json
import math
import pathlib
import random
import sys

import numpy as np

here = pathlib.Path(__file__).parent
ROWS = json.loads((here / "../reference/conductors.json").read_text())["chapter9_table9"]
# Change of resistance a degree from 75 C, NEC Chapter 9 Table 8, note 2.
ALPHA = {"copper": 0.00323, "aluminum": 0.0033}
KIND = {"PVC40": "pvc", "RMC": "steel"}
LINES = "ABC"


def ohms(size, metal, raceway, length, sets, celsius):
    row = next(one for one in ROWS if one["size"] == size)
    r = row[f"r_{'cu' if metal == 'copper' else 'al'}_{KIND[raceway]}"]
    x = row["xl_steel" if KIND[raceway] == "steel" else "xl_pvc_al"]
    return complex(r * (1 + ALPHA[metal] * (celsius - 75)), x) * length / 1000 / sets


def split(z, xr):
    r = z / math.hypot(1, xr)
    return complex(r, xr * r)


def neutral_of(volts, phases):
    return "wye" if volts in (208, 480) else "halfway" if phases == 1 else None


def invent(seed):
    r = random.Random(seed)
    single = seed in (3, 8)
    volts = 240 if single else r.choice([208, 480, 480, 240])
    site = {"equipment": [], "feeders": [], "branches": []}
    site["equipment"].append({
        "id": "SVC", "kind": "source", "volts": volts, "phases": 1 if single else 3,
        "faultAmps": r.randrange(5000, 65000), "faultXr": round(r.uniform(0.5, 12), 2)})
    count = 0

    def feeder(frm, to):
        size, metal = r.choice([("1/0", "copper"), ("3/0", "copper"), ("500", "copper"), ("4/0", "aluminum"), ("350", "aluminum")])
        site["feeders"].append({
            "id": f"F-{to}", "from": frm, "to": to, "breakerAmps": 200,
            "conductor": {"size": size, "metal": metal, "sets": r.choice([1, 1, 2]), "insulation": "XHHW-2"},
            "raceway": r.choice(list(KIND)), "length": r.randrange(5, 300), "ground": r.choice(["6", "4", "2", "1/0"])})

    def grow(above, volts, phases, depth):
        nonlocal count
        for _ in range(r.randrange(1, 3)):
            count += 1
            name = f"P{count}"
            site["equipment"].append({"id": name, "kind": "panelboard", "volts": volts, "phases": phases})
            feeder(above, name)
            if r.random() < 0.7:
                metal = r.choice(["copper", "aluminum"])
                site["branches"].append({
                    "id": f"B-{name}", "from": name, "metal": metal, "raceway": r.choice(list(KIND)),
                    "size": r.choice(["8", "6"]), "ground": r.choice(["10", "8"]) if metal == "copper" else "8",
                    "length": r.randrange(10, 250), "phases": 3 if phases == 3 and r.random() < 0.4 else 1})
            if depth < 2 and r.random() < 0.7:
                count += 1
                one = phases == 1 or r.random() < 0.3
                secondary = 240 if one else r.choice([208, 480, 240])
                t = f"T{count}"
                site["equipment"].append({
                    "id": t, "kind": "transformer", "phases": 1 if one else 3, "kva": r.choice([45, 75, 150]),
                    "primaryVolts": volts, "secondaryVolts": secondary,
                    "impedancePercent": round(r.uniform(1.5, 6), 2), "xr": round(r.uniform(0.5, 4), 2)})
                feeder(name, t)
                grow(t, secondary, 1 if one else 3, depth + 1)

    grow("SVC", volts, 1 if single else 3, 0)
    return site


class Net:
    """Nodes, series impedances and ideal constraints, solved as one system; node 0 is the reference."""

    def __init__(self):
        self.count = 1
        self.impedances = []
        self.windings = []
        self.held = []

    def node(self):
        self.count += 1
        return self.count - 1

    def solve(self, fault):
        """Current through each of the pairs of nodes that are held together."""
        n, w, h, f = self.count - 1, len(self.windings), len(self.held), len(fault)
        a = np.zeros((n + w + h + f, n + w + h + f), complex)
        b = np.zeros(n + w + h + f, complex)

        def stamp(i, j, y):
            for p, q, sign in ((i, i, 1), (j, j, 1), (i, j, -1), (j, i, -1)):
                if p and q:
                    a[p - 1, q - 1] += sign * y

        def put(row, node, value):
            if node:
                a[row, node - 1] += value
                a[node - 1, row] += value

        for i, j, z in self.impedances:
            stamp(i, j, 1 / z)
        for k, (p, q, s, t, ratio) in enumerate(self.windings):
            # volts of s over t are ratio times those of p over q; what goes into one comes out of the other
            for node, value in ((s, 1), (t, -1), (p, -ratio), (q, ratio)):
                put(n + k, node, value)
        for k, (i, j, volts) in enumerate(self.held):
            put(n + w + k, i, 1)
            put(n + w + k, j, -1)
            b[n + w + k] = volts
        for k, (i, j) in enumerate(fault):
            put(n + w + h + k, i, 1)
            put(n + w + h + k, j, -1)
        # A net that hangs nowhere is given a hold that carries nothing.
        for i in range(n):
            a[i, i] += 1e-12
        x = np.linalg.solve(a, b)
        return x[n + w + h:]


def derived_from(site):
    """The source or transformer whose neutral each place has."""
    of = {}
    into = {f["to"]: f for f in site["feeders"]}
    for e in site["equipment"]:
        of[e["id"]] = e["id"] if e["kind"] in ("source", "transformer") else of[into[e["id"]]["from"]]
    for b in site["branches"]:
        of[b["id"]] = of[b["from"]]
    return of


def build(site, celsius, share, halved):
    """The net, and the nodes of every place by line, N and G. Of the single-phase winding `halved` one half is loaded."""
    net = Net()
    places, systems = {}, {}
    into = {f["to"]: f for f in site["feeders"]}
    for e in site["equipment"]:
        name = e["id"]
        if e["kind"] == "source":
            volts, phases = e["volts"], e["phases"]
            neutral = neutral_of(volts, phases)
            low = volts / 2 if neutral == "halfway" else volts / math.sqrt(3)
            z = split(low / e["faultAmps"], e["faultXr"])
            if neutral == "halfway" and halved == name:
                z /= 1.5
            nodes = {}
            for i, line in enumerate(LINES[: 2 if phases == 1 else 3]):
                inside, out = net.node(), net.node()
                angle = 180 * i if neutral == "halfway" else -120 * i
                net.held.append((inside, 0, cmath.rect(low, math.radians(angle))))
                net.impedances.append((inside, out, z))
                nodes[line] = out
            if neutral:
                nodes["N"] = nodes["G"] = 0
            places[name], systems[name] = nodes, (volts, phases, neutral)
            continue
        f = into[name]
        c = f["conductor"]
        above = places[f["from"]]
        volts, phases, neutral = systems[f["from"]]
        z = ohms(c["size"], c["metal"], f["raceway"], f["length"], c["sets"], celsius)
        g = ohms(f["ground"], c["metal"], f["raceway"], f["length"], c["sets"], celsius)
        arriving = {}
        for line, node in above.items():
            arriving[line] = net.node()
            net.impedances.append((node, arriving[line], g if line == "G" else z))
        if e["kind"] != "transformer":
            places[name], systems[name] = arriving, (volts, e["phases"], neutral)
            continue
        secondary = e["secondaryVolts"]
        star = net.node()
        net.impedances.append((star, 0, 1e-9))
        percent = e["impedancePercent"] * share / 100
        whole = split(percent * secondary**2 / (e["kva"] * 1000), e["xr"])
        nodes = {}
        if e["phases"] == 3:
            ratio = (secondary / math.sqrt(3)) / e["primaryVolts"]
            for i, line in enumerate(LINES):
                inside, nodes[line] = net.node(), net.node()
                net.windings.append((arriving[line], arriving[LINES[(i + 1) % 3]], inside, star, ratio))
                net.impedances.append((inside, nodes[line], whole))
            low = neutral_of(secondary, 3)
        else:
            ratio = secondary / 2 / e["primaryVolts"]
            # Half of a winding to its middle: 1.5 R and 1.2 X of a quarter of the whole; to both ends half of the whole in each.
            half = complex(1.5 * whole.real, 1.2 * whole.imag) / 4 if halved == name else whole / 2
            for line, sign in (("A", 1), ("B", -1)):
                inside, nodes[line] = net.node(), net.node()
                net.windings.append((arriving["A"], arriving["B"], inside, star, sign * ratio))
                net.impedances.append((inside, nodes[line], half))
            low = "halfway"
        if low:
            nodes["N"] = nodes["G"] = star
        places[name], systems[name] = nodes, (secondary, e["phases"], low)
    for b in site["branches"]:
        above = places[b["from"]]
        z = ohms(b["size"], b["metal"], b["raceway"], b["length"], 1, celsius)
        g = ohms(b["ground"], b["metal"], b["raceway"], b["length"], 1, celsius)
        nodes = {}
        for line, node in above.items():
            if line != "N":
                nodes[line] = net.node()
                net.impedances.append((node, nodes[line], g if line == "G" else z))
        places[b["id"]] = nodes
        systems[b["id"]] = (systems[b["from"]][0], b["phases"], systems[b["from"]][2])
    return net, places, systems


def faults(site, cold, tolerance):
    found = {}
    derived = derived_from(site)
    for which, celsius, share in (("most", cold, 1 - tolerance), ("least", 75, 1 + tolerance)):
        net, places, systems = build(site, celsius, share, None)
        for name, nodes in places.items():
            row = found.setdefault(name, {})
            pairs = [(nodes["A"], nodes["B"])]
            if which == "most":
                more = [(nodes["B"], nodes["C"])] if systems[name][1] == 3 else []
                row["most"] = float(abs(net.solve(pairs + more)[0]))
            else:
                row["lineToLine"] = float(abs(net.solve(pairs)[0]))
        for halved in sorted(set(derived.values())):
            net, places, systems = build(site, celsius, share, halved)
            for name, nodes in places.items():
                if derived[name] != halved:
                    continue
                if which == "most" and "N" in nodes:
                    found[name]["lineToNeutral"] = float(abs(net.solve([(nodes["A"], nodes["N"])])[0]))
                if which == "least" and "G" in nodes:
                    found[name]["lineToGround"] = float(abs(net.solve([(nodes["A"], nodes["G"])])[0]))
    return found


cases = []
for seed in range(14):
    site = invent(seed)
    rng = random.Random(1000 + seed)
    cold, tolerance = rng.choice([-10, 20, 25, 40]), rng.choice([0, 0.075, 0.1])
    cases.append({"seed": seed, "coldC": cold, "impedanceTolerance": tolerance, "site": site, "faults": faults(site, cold, tolerance)})

document = {
    "source": "make.py beside this file: nodal analysis with every conductor a node, a fault as two nodes held together",
    "versions": {"python": sys.version.split()[0], "numpy": np.__version__},
}
with open(here / "trees.json", "w", encoding="utf8") as out:
    out.write(json.dumps(document, indent=1)[:-2] + ',\n "cases": [\n')
    out.write(",\n".join("  " + json.dumps(case) for case in cases) + "\n ]\n}\n")
print(sum(len(c["faults"]) for c in cases), "places")
