"""What ezdxf finds in the DXF files that this project wrote, and how near their sheets look to those of the drawing set:
    REMAKE=/tmp/ours npx vitest run --project rooms tests/outside/import/ours-out.test.ts
    /usr/bin/python3 tests/outside/import/read-ours.py /tmp/ours
"""
import json
import subprocess
import sys
from collections import Counter
from pathlib import Path

import ezdxf
import matplotlib
import numpy
from ezdxf.addons.drawing import Frontend, RenderContext
from ezdxf.addons.drawing.matplotlib import MatplotlibBackend
from ezdxf.lldxf.encoding import decode_dxf_unicode
from ezdxf.math import BoundingBox2d, Vec2
from ezdxf.units import decode
from PIL import Image

matplotlib.use("Agg")
import matplotlib.pyplot as plt  # noqa: E402

HERE = Path(__file__).parent
MADE = Path(sys.argv[1])
DPI = 60
NEAR = 2


def place(vector):
    return [round(vector.x, 6), round(vector.y, 6), round(vector.z, 6)]


def blocks(space):
    return [
        {
            "name": entity.dxf.name,
            "at": place(entity.dxf.insert),
            "attributes": {one.dxf.tag: one.plain_text() for one in entity.attribs},
            "seen": [one.dxf.tag for one in entity.attribs if not one.is_invisible],
        }
        for entity in space.query("INSERT")
    ]


def dimensions(space):
    return [
        {
            "layer": entity.dxf.layer,
            "measured": round(entity.get_measurement(), 6),
            "letters": [text.plain_text() for text in entity.get_geometry_block().query("TEXT")],
        }
        for entity in space.query("DIMENSION")
    ]


def wipeouts(space):
    found = []
    lettered = []
    for entity in space:
        if entity.dxftype() == "WIPEOUT":
            outline = [place(at) for at in entity.boundary_path_wcs()]
            box = BoundingBox2d(Vec2(at) for at in outline)
            found.append(
                {
                    "layer": entity.dxf.layer,
                    "outline": outline,
                    "hides": [words for words, middle in lettered if box.inside(middle)],
                }
            )
        elif entity.dxftype() == "TEXT":
            lettered.append((entity.plain_text(), middle_of(entity)))
        elif entity.dxftype() == "INSERT":
            lettered.extend((one.plain_text(), middle_of(one)) for one in entity.attribs if not one.is_invisible)
    return found


def middle_of(text):
    end = text.dxf.align_point if text.dxf.hasattr("align_point") else text.dxf.insert
    return Vec2((text.dxf.insert + end) / 2) + Vec2.from_deg_angle(text.dxf.rotation + 90) * text.dxf.height / 2


def view_of(layout):
    view = [one for one in layout.query("VIEWPORT") if one.dxf.id == 2][0].dxf
    return view


def sheets(document):
    found = []
    for name in document.layout_names()[1:]:
        layout = document.layout(name)
        view = view_of(layout)
        found.append(
            {
                "name": name,
                "scale": round(view.view_height / view.height, 6),
                "twist": round(view.view_twist_angle, 6),
                "counts": dict(Counter(entity.dxftype() for entity in layout)),
                "words": sorted({text.plain_text() for text in layout.query("TEXT")}),
            }
        )
    return found


def picture(document, space, window, skip):
    """A space within a window, as large as a sheet, black on white."""
    (x, y, width, height), (across, up) = window, (34, 22)
    # What hides is drawn pure white, for the drawing says that it lies on white; the paper itself is a shade darker.
    figure = plt.figure(figsize=(across, up), dpi=DPI, facecolor="#f8f8f8")
    axes = figure.add_axes([0, 0, 1, 1])
    context = RenderContext(document)
    context.set_current_layout(space)
    context.current_layout_properties.set_colors("#ffffff")
    frontend = Frontend(context, MatplotlibBackend(axes))
    frontend.draw_entities(entity for entity in space if not skip(entity))
    axes.set_xlim(x, x + width)
    axes.set_ylim(y, y + height)
    axes.set_aspect("auto")
    axes.axis("off")
    figure.canvas.draw()
    pixels = numpy.asarray(figure.canvas.buffer_rgba())[:, :, :3].min(axis=2)
    plt.close(figure)
    return pixels


def looks(document, name, page):
    layout = document.layout(name)
    view = view_of(layout)
    hidden = frozen(layout)
    paper = picture(document, layout, (0, 0, 34, 22), lambda one: one.dxftype() == "VIEWPORT")
    scale = view.view_height / view.height
    left = view.view_center_point.x - view.center.x * scale
    low = view.view_center_point.y - view.center.y * scale

    def skip(entity):
        return entity.dxf.layer in hidden

    for insert in document.modelspace().query("INSERT"):
        for one in insert.attribs:
            one.is_invisible = True
    model = picture(document, document.modelspace(), (left, low, 34 * scale, 22 * scale), skip)
    rows = [round((22 - view.center.y - s * view.height / 2) * DPI) for s in (1, -1)]
    columns = [round((view.center.x + s * view.width / 2) * DPI) for s in (-1, 1)]
    ink = paper < 220
    seen = numpy.zeros_like(ink)
    seen[rows[0] : rows[1], columns[0] : columns[1]] = (model < 220)[rows[0] : rows[1], columns[0] : columns[1]]
    white = paper >= 252
    hidden_ink = seen & white & ~ink
    seen &= ~white
    ours = ink | seen
    theirs = numpy.asarray(Image.open(page).convert("L")) < 220
    Image.fromarray((~ours * 255).astype("uint8")).save(MADE / "dxf.png")
    Image.fromarray((~theirs * 255).astype("uint8")).save(MADE / "pdf.png")
    return {
        "ink": [int(ours.sum()), int(theirs.sum())],
        "pdfInDxf": round(share(theirs, ours), 4),
        "dxfInPdf": round(share(ours, theirs), 4),
        # Of the model, under white of the sheet: none of it is seen in the PDF.
        "hidden": int(hidden_ink.sum()),
        "hiddenInPdf": round(float((hidden_ink & theirs).sum() / max(1, hidden_ink.sum())), 4),
        "shifted": round(share(numpy.roll(theirs, (9, 9), (0, 1)), ours), 4),
    }


def frozen(layout):
    """Names of the layers that the view of a sheet hides."""
    document = layout.doc
    view = [one for one in layout.query("VIEWPORT") if one.dxf.id == 2][0]
    handles = getattr(view, "_frozen_layers", None) or getattr(view, "frozen_layers", [])
    names = set()
    for one in handles:
        layer = document.entitydb.get(one)
        names.add(layer.dxf.name if layer is not None else one)
    return names


def share(of, within):
    wide = within.copy()
    for dy in range(-NEAR, NEAR + 1):
        for dx in range(-NEAR, NEAR + 1):
            wide |= numpy.roll(within, (dy, dx), (0, 1))
    return float((of & wide).sum() / of.sum())


def told(unit):
    document = ezdxf.readfile(HERE / f"ours-{unit}.dxf")
    auditor = document.audit()
    space = document.modelspace()
    own = {
        "errors": [error.message for error in auditor.errors],
        "fixes": [fix.message for fix in auditor.fixes],
        "version": document.dxfversion,
        "unit": decode(document.units),
        "extent": [list(document.header["$EXTMIN"]), list(document.header["$EXTMAX"])],
        "layers": {
            layer.dxf.name: {
                "color": layer.dxf.color,
                "dashed": layer.dxf.linetype != "Continuous",
                "weight": layer.dxf.lineweight,
            }
            for layer in document.layers
            if layer.dxf.name not in ("0", "Defpoints")
        },
        "counts": dict(Counter(entity.dxftype() for entity in space)),
        "words": [decode_dxf_unicode(text.plain_text()) for text in space.query("TEXT")],
        "blocks": blocks(space),
        "dimensions": dimensions(space),
        "lines": [
            {
                "layer": entity.dxf.layer,
                "closed": entity.closed if entity.dxftype() == "LWPOLYLINE" else entity.is_closed,
                "points": [place(p) for p in (entity.vertices_in_wcs() if entity.dxftype() == "LWPOLYLINE" else entity.points())],
            }
            for entity in space.query("LWPOLYLINE POLYLINE")
        ],
        # Outlines of what hides, and how many entities with letters come before each: those must lie elsewhere.
        "wipeouts": wipeouts(space),
        "sheets": [sheet | {"hidden": sorted(frozen(document.layout(sheet["name"])))} for sheet in sheets(document)],
    }
    if unit == "ft":
        page = MADE / "page"
        subprocess.run(["pdftoppm", "-r", str(DPI), "-png", "-singlefile", str(MADE / "sheet.pdf"), str(page)], check=True)
        own["looks"] = looks(document, document.layout_names()[1], f"{page}.png")
    return own


units = {unit: told(unit) for unit in ("ft", "m")}
(HERE / "ours.json").write_text(
    json.dumps({"ezdxf": ezdxf.__version__, "python": sys.version.split()[0], **units}) + "\n"
)
