"""Most energy under a sum limit as a maximum flow, car -> step -> limit, by networkx; its time in milliseconds.

In, on standard input: {"cars": [{"first", "end", "need", "most"}], "room": [kWh of each step]}.
"""
import json
import sys
import time

import networkx as nx
from networkx.algorithms.flow import preflow_push

SCALE = 10**6  # whole millionths of a kilowatt-hour

day = json.load(sys.stdin)
graph = nx.DiGraph()
for i, car in enumerate(day["cars"]):
    graph.add_edge("s", ("car", i), capacity=round(car["need"] * SCALE))
    for step in range(car["first"], car["end"]):
        graph.add_edge(("car", i), ("step", step), capacity=round(car["most"] * SCALE))
for step, room in enumerate(day["room"]):
    graph.add_edge(("step", step), "t", capacity=round(room * SCALE))
began = time.perf_counter()
value = nx.maximum_flow_value(graph, "s", "t", flow_func=preflow_push)
print(json.dumps({"ms": 1000 * (time.perf_counter() - began), "kwh": value / SCALE}))
