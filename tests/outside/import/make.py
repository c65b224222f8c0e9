#!/usr/bin/python3
"""Writes site.dxf and what ezdxf makes of it: extents and lengths of each layer, blocks expanded.

From the top folder:  /usr/bin/python3 tests/outside/import/make.py
"""

import json
import pathlib
import platform
from collections import defaultdict

import ezdxf
from ezdxf import disassemble, path, units

here = pathlib.Path(__file__).parent
doc = ezdxf.new("R2010")
doc.units = units.M
for name in ("STALLS", "COLUMNS", "KERB", "WALK", "MIRRORED", "OFF", "TREE"):
    doc.layers.add(name)
doc.layers.get("OFF").off()
space = doc.modelspace()

stall = doc.blocks.new("STALL", base_point=(1, 0))
stall.add_lwpolyline([(0, 0), (2.7, 0), (2.7, 5.5), (0, 5.5)], close=True, dxfattribs={"layer": "STALLS"})
pair = doc.blocks.new("PAIR")
pair.add_blockref("STALL", (0, 0))
pair.add_blockref("STALL", (2.7, 0))

space.add_blockref("STALL", (10, 20), dxfattribs={"layer": "STALLS", "column_count": 6, "column_spacing": 2.7, "row_count": 2, "row_spacing": 12})
space.add_blockref("PAIR", (40, 5), dxfattribs={"rotation": 30, "xscale": 2, "yscale": -1})
space.add_lwpolyline([(0, 0, 0, 0, 0.5), (10, 0, 0, 0, -0.3), (10, 8)], format="xyseb", dxfattribs={"layer": "KERB"}, close=True)
space.add_arc((5, 5), 3, 20, 250, dxfattribs={"layer": "WALK"})
space.add_circle((-4, 2), 0.25, dxfattribs={"layer": "COLUMNS"})
space.add_ellipse((12, 12), major_axis=(4, 3), ratio=0.4, start_param=0.5, end_param=5, dxfattribs={"layer": "WALK"})
space.add_spline(fit_points=None, degree=3, dxfattribs={"layer": "TREE"}).set_open_uniform([(0, 30), (4, 38), (9, 28), (14, 36), (20, 30)])
space.add_arc((6, 3), 2, 0, 90, dxfattribs={"layer": "MIRRORED", "extrusion": (0, 0, -1)})
space.add_line((1, 1), (7, 9), dxfattribs={"layer": "KERB"})
space.add_polyline2d([(0, -5), (6, -5), (6, -9)], dxfattribs={"layer": "KERB"}, close=True)
space.add_solid([(20, 0), (22, 0), (20, 2), (22, 2)], dxfattribs={"layer": "COLUMNS"})
space.add_line((-500, -500), (500, 500), dxfattribs={"layer": "OFF"})
space.add_text("north lot", dxfattribs={"layer": "WALK"})
space.add_mtext("a note", dxfattribs={"layer": "WALK"})
space.add_point((3, 3), dxfattribs={"layer": "WALK"})
doc.saveas(here / "site.dxf")

layers = defaultdict(lambda: {"count": 0, "length": 0.0, "box": [1e9, 1e9, -1e9, -1e9]})
for entity in disassemble.recursive_decompose(space):
    if entity.dxf.layer == "OFF" or entity.dxftype() in ("TEXT", "MTEXT", "POINT"):
        continue
    points = [v for v in path.make_path(entity).flattening(0.0005, 64)]
    if entity.dxftype() == "SOLID" and points[0] != points[-1]:
        points.append(points[0])
    found = layers[entity.dxf.layer]
    found["count"] += 1
    found["length"] += sum((b - a).magnitude for a, b in zip(points, points[1:]))
    box = found["box"]
    for p in points:
        box[0], box[1], box[2], box[3] = min(box[0], p.x), min(box[1], p.y), max(box[2], p.x), max(box[3], p.y)
out = {"ezdxf": ezdxf.__version__, "python": platform.python_version(), "layers": layers}
(here / "site-dxf.json").write_text(json.dumps(out, indent=1) + "\n")
