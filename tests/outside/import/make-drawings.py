#!/usr/bin/python3
"""Writes ten drawings into drawings/ and what ezdxf shows of each: the lines of every layer that is seen, its words, its
points, and how much ink lies in each cell of a grid over the whole.

From the top folder:  /usr/bin/python3 tests/outside/import/make-drawings.py
"""

import json
import math
import pathlib
import platform
from collections import defaultdict

import ezdxf
from ezdxf import units
from ezdxf.addons.drawing import Frontend, RenderContext
from ezdxf.addons.drawing.backend import Backend
from ezdxf.enums import TextEntityAlignment
from ezdxf.lldxf.encoding import decode_dxf_unicode
from ezdxf.math import Vec2
from ezdxf.render import mleader

here = pathlib.Path(__file__).parent / "drawings"
CELLS = 24


class Ink(Backend):
    """Takes lines and points as ezdxf draws them."""

    def __init__(self):
        super().__init__()
        self.lines, self.points = [], []

    def set_background(self, color):
        pass

    def draw_point(self, pos, properties):
        self.points.append((properties.layer.lower(), (pos.x, pos.y)))

    def draw_line(self, start, end, properties):
        self.lines.append((properties.layer.lower(), [start, end]))

    def draw_filled_polygon(self, points, properties):
        around = list(points)
        self.lines.append((properties.layer.lower(), around + around[:1]))

    def draw_path(self, path, properties):
        self.lines.append((properties.layer.lower(), list(path.flattening(0.0005, 64))))

    def draw_text(self, *args, **kwargs):
        pass

    def get_font_measurements(self, *args, **kwargs):
        raise NotImplementedError

    def get_text_line_width(self, *args, **kwargs):
        raise NotImplementedError

    def clear(self):
        pass


class Shown(Frontend):
    """Words are taken as they are, not drawn as letters."""

    def __init__(self, ctx, ink):
        super().__init__(ctx, ink)
        self.words = []

    def draw_text_entity(self, entity, properties):
        if entity.dxftype() == "MTEXT":
            x, y, _ = entity.dxf.insert
            words = [line.strip() for line in entity.plain_text(split=True)]
        else:
            _, at, _ = entity.get_placement()
            at = at or entity.get_placement()[1]
            x, y, _ = entity.ocs().to_wcs(at)
            words = [entity.plain_text()]
        for line in words:
            if line:
                self.words.append([properties.layer.lower(), decode_dxf_unicode(line)])

    draw_mtext_entity = draw_text_entity


def told(doc):
    ink = Ink()
    shown = Shown(RenderContext(doc), ink)
    shown.draw_layout(doc.modelspace())
    layers = defaultdict(lambda: {"length": 0.0, "box": [1e12, 1e12, -1e12, -1e12]})
    segments = []
    seen = set()
    for layer, points in ink.lines:
        found = layers[layer]
        for a, b in zip(points, points[1:]):
            # Edges that two faces share are drawn twice.
            ends = (layer, *sorted([(round(a.x, 4), round(a.y, 4)), (round(b.x, 4), round(b.y, 4))]))
            if ends in seen:
                continue
            seen.add(ends)
            found["length"] += math.hypot(b.x - a.x, b.y - a.y)
            segments.append((a.x, a.y, b.x, b.y))
        box = found["box"]
        for p in points:
            box[:] = min(box[0], p.x), min(box[1], p.y), max(box[2], p.x), max(box[3], p.y)
    whole = [
        min(f["box"][0] for f in layers.values()),
        min(f["box"][1] for f in layers.values()),
        max(f["box"][2] for f in layers.values()),
        max(f["box"][3] for f in layers.values()),
    ]
    size = max(whole[2] - whole[0], whole[3] - whole[1]) * 1.0001
    cells = defaultdict(float)
    for ax, ay, bx, by in segments:
        length = math.hypot(bx - ax, by - ay)
        steps = max(1, math.ceil(length / size * 1000))
        for i in range(steps):
            t = (i + 0.5) / steps
            x, y = ax + (bx - ax) * t - whole[0], ay + (by - ay) * t - whole[1]
            cells[int(x / size * CELLS) + CELLS * int(y / size * CELLS)] += length / steps
    return {
        "layers": layers,
        "points": sorted([layer, round(x, 6), round(y, 6)] for layer, (x, y) in ink.points),
        "words": sorted(shown.words),
        "cells": {str(at): round(length, 4) for at, length in sorted(cells.items())},
    }


def new(version, unit, *layers):
    doc = ezdxf.new(version)
    doc.units = unit
    for name in layers:
        doc.layers.add(name)
    return doc, doc.modelspace()


def survey():
    doc, space = new("R2018", units.FT, "SPOT", "NOTE", "ROAD")
    for i in range(12):
        space.add_point((20 * i, 7 * (i % 4)), dxfattribs={"layer": "SPOT"})
    space.add_lwpolyline([(0, -10), (120, -14, 0.2), (240, -10)], format="xyb", dxfattribs={"layer": "ROAD"})
    space.add_leader([(30, 5), (45, 20), (60, 20)], dxfattribs={"layer": "NOTE", "has_arrowhead": 0})
    note = space.add_multileader_mtext("Standard", dxfattribs={"layer": "NOTE"})
    note.set_content("edge of pavement\\Psaw cut", char_height=2)
    note.add_leader_line(mleader.ConnectionSide.left, [Vec2(100, -13), Vec2(110, 10)])
    note.add_leader_line(mleader.ConnectionSide.left, [Vec2(120, -14)])
    note.build(insert=Vec2(130, 30))
    tag = doc.blocks.new("TAG")
    tag.add_circle((0, 0), 3, dxfattribs={"layer": "0"})
    tag.add_attdef("N", (-1, -1), dxfattribs={"height": 2, "layer": "0"})
    bubble = space.add_multileader_block("Standard", dxfattribs={"layer": "0"})
    bubble.set_content("TAG")
    bubble.set_attribute("N", "7")
    bubble.add_leader_line(mleader.ConnectionSide.right, [Vec2(200, 10)])
    bubble.build(insert=Vec2(180, 40))
    columns = space.add_mtext_static_columns(
        ["first of two", "second of two"], width=40, gutter_width=5, height=20,
        dxfattribs={"layer": "NOTE", "insert": (20, 80), "char_height": 2},
    )
    assert columns.has_columns
    return doc


def lot():
    doc, space = new("R2010", units.M, "STALL", "NUMBER", "KERB")
    stall = doc.blocks.new("Stall")
    stall.add_lwpolyline([(0, 0), (2.7, 0), (2.7, 5.5), (0, 5.5)], close=True, dxfattribs={"layer": "0"})
    for i in range(4):
        put = space.add_blockref("STALL", (2.7 * i, 0), dxfattribs={"layer": "STALL"})
        put.add_attrib("N", str(i + 1), (2.7 * i + 1, 1), dxfattribs={"layer": "NUMBER", "height": 0.4})
    many = space.add_blockref(
        "Stall", (0, 12),
        dxfattribs={"layer": "STALL", "column_count": 5, "column_spacing": 2.7, "row_count": 2, "row_spacing": 14, "rotation": 10},
    )
    many.add_attrib("N", "EV", (1, 13), dxfattribs={"layer": "NUMBER", "height": 0.4})
    space.add_lwpolyline([(-3, -3), (20, -3), (20, 40, 0.4), (-3, 40)], format="xyb", close=True, dxfattribs={"layer": "KERB"})
    return doc


def walls():
    doc, space = new("R2010", units.IN, "WALL", "ROOM")
    space.add_mline([(0, 0), (200, 0), (200, 120), (90, 150)], dxfattribs={"layer": "WALL", "scale_factor": 8})
    space.add_mline([(300, 0), (400, 0), (380, 100)], close=True, dxfattribs={"layer": "ROOM", "scale_factor": 5})
    return doc


def meshes():
    doc, space = new("R2010", units.FT, "NET", "FACES", "MESH", "FACE")
    net = space.add_polymesh((4, 3), dxfattribs={"layer": "NET"})
    for i in range(4):
        for j in range(3):
            net.set_mesh_vertex((i, j), (10 * i, 8 * j + i, i * j))
    space.add_polyface(dxfattribs={"layer": "FACES"}).append_faces(
        [[(50, 0, 0), (60, 0, 2), (60, 10, 0), (50, 10, 3)], [(60, 0, 2), (70, 5, 0), (60, 10, 0)]]
    )
    with space.add_mesh(dxfattribs={"layer": "MESH"}).edit_data() as data:
        data.vertices = [(0, 40, 0), (10, 40, 0), (10, 50, 3), (0, 50, 3), (20, 45, 1)]
        data.faces = [[0, 1, 2, 3], [1, 4, 2]]
    face = space.add_3dface([(50, 40), (70, 40), (70, 55), (50, 55)], dxfattribs={"layer": "FACE"})
    face.set_edge_visibility(1, False)
    return doc


def turned():
    doc, space = new("R2010", units.FT, "BELOW", "TILT", "BLOCK", "RATIO")
    down = {"layer": "BELOW", "extrusion": (0, 0, -1)}
    space.add_ellipse((10, 5), major_axis=(8, 2), ratio=0.5, start_param=0.3, end_param=2.4, dxfattribs=down)
    space.add_arc((-30, 5), 6, 10, 130, dxfattribs=down)
    space.add_lwpolyline([(-50, 0, 0.5), (-60, 0), (-60, 12)], format="xyb", dxfattribs=down)
    space.add_text("behind", height=2, dxfattribs=down).set_placement((-40, 20))
    tilt = {"layer": "TILT", "extrusion": (1, 2, 3)}
    space.add_lwpolyline([(0, 0), (20, 0), (20, 15)], close=True, dxfattribs={**tilt, "elevation": 6})
    space.add_circle((30, 10, 4), 5, dxfattribs=tilt)
    space.add_polyline2d([(0, 30), (10, 34), (20, 30)], dxfattribs={"layer": "TILT", "extrusion": (0.3, -0.2, 0.8), "elevation": (0, 0, 5)})
    block = doc.blocks.new("B")
    block.add_lwpolyline([(0, 0), (6, 0), (6, 3)], close=True)
    block.add_circle((2, 1), 1)
    space.add_blockref("B", (10, -20), dxfattribs={"layer": "BLOCK", "extrusion": (0, 0, -1), "rotation": 25, "xscale": 2})
    space.add_blockref("B", (5, -30, 2), dxfattribs={"layer": "BLOCK", "extrusion": (0, 1, 2), "rotation": 40})
    space.add_blockref("B", (60, -30), dxfattribs={"layer": "BLOCK", "xscale": -1, "yscale": 3, "rotation": 200})
    wide = space.add_ellipse((90, 0), major_axis=(4, 0), ratio=1, start_param=0, end_param=2, dxfattribs={"layer": "RATIO"})
    wide.dxf.ratio = 1
    return doc


def curves():
    doc, space = new("R2010", units.FT, "KERB", "BULGE", "LONG", "SPLINE")
    space.add_arc((0, -1000), 1000, 60, 120, dxfattribs={"layer": "KERB"})
    space.add_arc((0, -1000), 1024, 60, 120, dxfattribs={"layer": "KERB"})
    space.add_lwpolyline([(-400, 0, 0.1), (400, 0)], format="xyb", dxfattribs={"layer": "BULGE"})
    space.add_ellipse((0, 200), major_axis=(600, 0), ratio=0.02, dxfattribs={"layer": "LONG"})
    space.add_spline(dxfattribs={"layer": "SPLINE"}).set_open_uniform([(-500, 300), (-200, 700), (200, 300), (500, 500), (600, 300)])
    return doc


def hidden():
    doc, space = new("R2010", units.FT, "SEEN", "OFF", "FROZEN", "TAGS")
    doc.layers.get("OFF").off()
    doc.layers.get("FROZEN").freeze()
    block = doc.blocks.new("B")
    block.add_line((0, 0), (10, 0), dxfattribs={"layer": "0"})
    block.add_line((0, 2), (10, 2), dxfattribs={"layer": "SEEN"})
    block.add_line((0, 4), (10, 4), dxfattribs={"layer": "OFF"})
    block.add_line((0, 6), (10, 6), dxfattribs={"layer": "FROZEN"})
    for i, layer in enumerate(("SEEN", "OFF")):
        put = space.add_blockref("B", (20 * i, 0), dxfattribs={"layer": layer})
        put.add_attrib("A", f"zero {layer}", (20 * i, 8), dxfattribs={"layer": "0", "height": 1})
        put.add_attrib("B", f"own {layer}", (20 * i, 9), dxfattribs={"layer": "TAGS", "height": 1})
        space.add_line((20 * i, -5), (20 * i + 5, -5), dxfattribs={"layer": layer.lower()})
    space.add_line((0, -7), (5, -7), dxfattribs={"layer": "frozen"})
    space.add_line((0, -8), (5, -8), dxfattribs={"layer": "SEEN", "invisible": 1})
    return doc


def old():
    doc, space = new("R12", 0, "KERB", "TREES", "CURVE")
    tree = doc.blocks.new("TREE", base_point=(1, 1))
    tree.add_circle((1, 1), 2)
    tree.add_line((-1, 1), (3, 1))
    for at, name in (((0, 0), "TREE"), ((9, 2), "tree"), ((18, 0), "Tree")):
        space.add_blockref(name, at, dxfattribs={"layer": "Trees"})
    space.add_polyline2d([(0, 10, 0.4), (10, 10), (20, 14)], format="xyb", close=True, dxfattribs={"layer": "kerb"})
    space.add_polyline2d([(0, 20), (8, 26), (16, 20)], dxfattribs={"layer": "CURVE"})
    space.add_solid([(30, 0), (36, 0), (30, 4), (36, 4)], dxfattribs={"layer": "KERB"})
    space.add_text("\\U+00B0 of arc", dxfattribs={"layer": "KERB", "height": 1}).set_placement((2, 30))
    return doc


def sheet():
    doc, space = new("R2010", units.MM, "NOTE", "LINE")
    space.add_line((0, 0), (9000, 0), dxfattribs={"layer": "LINE"})
    space.add_linear_dim(base=(0, 1500), p1=(0, 0), p2=(9000, 0), dxfattribs={"layer": "0"}).render()
    space.add_mtext(
        "a general note that is far too long to stand on one line of a plan and has to be broken",
        dxfattribs={"layer": "NOTE", "insert": (0, -500), "char_height": 100, "width": 2500},
    )
    space.add_mtext("one^Jtwo^Itabs", dxfattribs={"layer": "NOTE", "insert": (4000, -500), "char_height": 100})
    for how, y in ((TextEntityAlignment.ALIGNED, -2000), (TextEntityAlignment.FIT, -2400)):
        space.add_text("between two points", height=100, dxfattribs={"layer": "NOTE"}).set_placement((0, y), (1500, y + 900), align=how)
    space.add_text("", dxfattribs={"layer": "NOTE"})
    return doc


def nested():
    doc, space = new("R2000", units.FT, "A", "B")
    inner = doc.blocks.new("IN")
    inner.add_lwpolyline([(0, 0), (4, 0), (4, 2, 0.6), (0, 2)], format="xyb", close=True)
    inner.add_arc((2, 1), 1.5, 200, 40, dxfattribs={"layer": "B"})
    outer = doc.blocks.new("OUT", base_point=(1, 1))
    outer.add_blockref("IN", (0, 0), dxfattribs={"rotation": 30})
    outer.add_blockref("IN", (10, 0), dxfattribs={"yscale": -2})
    for i in range(3):
        space.add_blockref("OUT", (30 * i, 5 * i), dxfattribs={"layer": "A", "rotation": 35 * i, "xscale": 1 + i, "yscale": 1 + i})
    return doc


here.mkdir(exist_ok=True)
out = {"ezdxf": ezdxf.__version__, "python": platform.python_version(), "cells": CELLS, "drawings": {}}
for make in (survey, lot, walls, meshes, turned, curves, hidden, old, sheet, nested):
    path = here / f"{make.__name__}.dxf"
    make().saveas(path)
    out["drawings"][make.__name__] = told(ezdxf.readfile(path))
(here.parent / "drawings.json").write_text(json.dumps(out) + "\n")
