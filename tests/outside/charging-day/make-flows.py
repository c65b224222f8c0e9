"""Most energy of random days under one sum limit, by networkx: a flow car -> step -> limit. Debian's python3-networkx.

Run: /usr/bin/python3 tests/outside/charging-day/make-flows.py
"""
import json
import math
import random
from pathlib import Path

import networkx as nx

SCALE = 10**6  # the flow is worked in whole millionths of a kilowatt-hour


def clock(minutes):
    return f"{minutes // 60 % 24:02d}:{minutes % 60:02d}"


def day(rng):
    chargers = [
        {"id": f"C{i}", "lines": rng.choice(["AB", "BC", "CA"]), "amps": rng.choice([16, 24, 32, 40, 48]), "volts": 240}
        for i in range(rng.randint(2, 9))
    ]
    cars = []
    for charger in chargers:
        arrive = rng.randint(6 * 60, 15 * 60)
        stay = rng.randint(20, 240)
        cars.append({"arrive": clock(arrive), "leave": clock(arrive + stay), "kwh": round(rng.uniform(1, 25), 1),
                     "charger": charger["id"]})
    amps = rng.randint(10, 90)
    return {"from": "06:00", "to": "20:00", "step": 15, "chargers": chargers, "cars": cars,
            "limits": [{"id": "L", "kind": "sum", "amps": amps}]}


def minutes(text):
    return int(text[:2]) * 60 + int(text[3:])


def most(one):
    start, step = minutes(one["from"]), one["step"]
    graph = nx.DiGraph()
    kwh_of = lambda amps: amps * 240 / 1000 * step / 60
    volts = {c["id"]: c for c in one["chargers"]}
    for i, car in enumerate(one["cars"]):
        graph.add_edge("s", f"car{i}", capacity=round(car["kwh"] * SCALE))
        first = math.ceil((minutes(car["arrive"]) - start) / step)
        end = math.floor((minutes(car["leave"]) - start) / step)
        for k in range(first, end):
            graph.add_edge(f"car{i}", f"step{k}", capacity=round(kwh_of(volts[car["charger"]]["amps"]) * SCALE))
            graph.add_edge(f"step{k}", "t", capacity=round(kwh_of(one["limits"][0]["amps"]) * SCALE))
    graph.add_node("t")
    return nx.maximum_flow_value(graph, "s", "t") / SCALE


rng = random.Random(20)
days = [{"input": one, "most": most(one)} for one in (day(rng) for _ in range(30))]
out = {"made": f"make-flows.py, networkx {nx.__version__}", "days": days}
Path(__file__).with_name("flows.json").write_text(json.dumps(out, indent=1) + "\n")
