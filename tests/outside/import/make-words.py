#!/usr/bin/python3
"""Writes words.dxf and what ezdxf makes of it: the boundaries of its hatches, and its words.

From the top folder:  /usr/bin/python3 tests/outside/import/make-words.py
"""

import json
import pathlib
import platform

import ezdxf
from ezdxf import path, units
from ezdxf.enums import TextEntityAlignment

here = pathlib.Path(__file__).parent
doc = ezdxf.new("R2010")
doc.units = units.FT
space = doc.modelspace()

polyline = space.add_hatch(dxfattribs={"layer": "POLY"})
polyline.paths.add_polyline_path([(0, 0, 0.5), (10, 0), (10, 8, -0.3)], is_closed=True)
polyline.paths.add_polyline_path([(3, 2), (5, 2), (5, 4)], is_closed=True)
edges = space.add_hatch(dxfattribs={"layer": "EDGES"})
way = edges.paths.add_edge_path()
way.add_line((20, 0), (30, 0))
way.add_arc((30, 4), 4, 270, 90, ccw=True)
way.add_line((30, 8), (24, 8))
way.add_arc((24, 4), 4, 90, 200, ccw=True)
way.add_line((24 - 3.7587704831436333, 4 - 1.3680805733026749), (20, 0))
clockwise = space.add_hatch(dxfattribs={"layer": "CLOCKWISE"})
way = clockwise.paths.add_edge_path()
way.add_line((40, 0), (48, 0))
way.add_arc((44, 0), 4, 180, 0, ccw=False)
oval = space.add_hatch(dxfattribs={"layer": "OVAL"})
oval.paths.add_edge_path().add_ellipse((60, 5), major_axis=(4, 3), ratio=0.4, start_angle=0, end_angle=360)
bent = space.add_hatch(dxfattribs={"layer": "SPLINE"})
way = bent.paths.add_edge_path()
way.add_spline(control_points=[(70, 0), (74, 8), (79, -2), (84, 6), (90, 0)], degree=3, knot_values=[0, 0, 0, 0, 1, 2, 2, 2, 2])
way.add_line((90, 0), (70, 0))
below = space.add_hatch(dxfattribs={"layer": "BELOW", "extrusion": (0, 0, -1)})
below.paths.add_polyline_path([(0, 20), (6, 20), (6, 25), (0, 27)], is_closed=True)

texts = [
    space.add_text("left", height=2, rotation=30).set_placement((0, 40)),
    space.add_text("middle", height=1.5).set_placement((20, 40), align=TextEntityAlignment.CENTER),
    space.add_text("right %%d", height=1, rotation=90).set_placement((30, 40), align=TextEntityAlignment.RIGHT),
]
space.add_mtext("{\\fArial|b1;Two} lines\\Pof \\H0.5x;it \\S1/2;", dxfattribs={"insert": (0, 60), "char_height": 2, "rotation": 45})
space.add_mtext("\\{kept\\} as is", dxfattribs={"insert": (20, 60), "char_height": 1, "attachment_point": 8})
block = doc.blocks.new("TAG")
block.add_text("in a block", height=1).set_placement((1, 2))
insert = space.add_blockref("TAG", (50, 50), dxfattribs={"rotation": 90, "xscale": 2, "yscale": 2})
insert.add_attrib("N", "P-17", (52, 51), dxfattribs={"height": 0.5})
doc.saveas(here / "words.dxf")

hatches = {}
for hatch in space.query("HATCH"):
    found = []
    for one in path.from_hatch(hatch):
        points = list(one.flattening(0.0005, 64))
        if not points[0].isclose(points[-1]):
            points.append(points[0])
        found.append({
            "length": sum((b - a).magnitude for a, b in zip(points, points[1:])),
            "area": abs(sum(a.x * b.y - b.x * a.y for a, b in zip(points, points[1:])) / 2),
            "box": [min(p.x for p in points), min(p.y for p in points), max(p.x for p in points), max(p.y for p in points)],
        })
    hatches[hatch.dxf.layer] = found
words = []
for text in texts:
    align, at, _ = text.get_placement()
    words.append({"words": text.plain_text(), "at": [at.x, at.y], "height": text.dxf.height, "turn": text.dxf.rotation})
for text in space.query("MTEXT"):
    words.append({"lines": [line.strip() for line in text.plain_text(split=True)]})
for one in insert.virtual_entities():
    words.append({"words": one.plain_text(), "at": [one.dxf.insert.x, one.dxf.insert.y], "height": one.dxf.height, "turn": one.dxf.rotation})
out = {"ezdxf": ezdxf.__version__, "python": platform.python_version(), "hatches": hatches, "words": words}
(here / "words-dxf.json").write_text(json.dumps(out, indent=1) + "\n")
