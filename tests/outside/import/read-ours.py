"""What ezdxf finds in the DXF files that this project wrote: made by
    REMAKE=1 npx vitest run --project rooms tests/outside/import/ours-out.test.ts
    /usr/bin/python3 tests/outside/import/read-ours.py
"""
import json
import sys
from pathlib import Path

import ezdxf
from ezdxf.disassemble import recursive_decompose
from ezdxf.units import decode

HERE = Path(__file__).parent


def place(vector):
    return [round(vector.x, 6), round(vector.y, 6), round(vector.z, 6)]


def found(entity):
    own = {"kind": entity.dxftype(), "layer": entity.dxf.layer}
    if own["kind"] == "LWPOLYLINE":
        return own | {"closed": entity.closed, "points": [place(p) for p in entity.vertices_in_wcs()]}
    if own["kind"] == "POLYLINE":
        return own | {"closed": entity.is_closed, "mode": entity.get_mode(), "points": [place(p) for p in entity.points()]}
    if own["kind"] == "CIRCLE":
        return own | {"at": place(entity.dxf.center), "radius": round(entity.dxf.radius, 6)}
    if own["kind"] == "TEXT":
        alignment, at, _ = entity.get_placement()
        return own | {
            "at": place(at),
            "words": entity.plain_text(),
            "height": round(entity.dxf.height, 6),
            "turn": round(entity.dxf.rotation, 6),
            "anchor": alignment.name,
        }
    if own["kind"] == "INSERT":
        return own | {"name": entity.dxf.name, "at": place(entity.dxf.insert)}
    raise SystemExit(f"a kind that we do not write: {own['kind']}")


def told(path):
    document = ezdxf.readfile(path)
    auditor = document.audit()
    space = document.modelspace()
    lines = [p for e in recursive_decompose(space) if e.dxftype() != "TEXT" for p in [e.dxftype()]]
    return {
        "errors": [error.message for error in auditor.errors],
        "fixes": [fix.message for fix in auditor.fixes],
        "version": document.dxfversion,
        "unit": decode(document.units),
        "layers": sorted(
            [layer.dxf.name, layer.dxf.color, layer.dxf.linetype != "Continuous"]
            for layer in document.layers
            if layer.dxf.name not in ("0", "Defpoints")
        ),
        "entities": [found(entity) for entity in space],
        "strokes": {kind: lines.count(kind) for kind in sorted(set(lines))},
    }


units = {unit: told(HERE / f"ours-{unit}.dxf") for unit in ("ft", "m")}
(HERE / "ours.json").write_text(
    json.dumps({"ezdxf": ezdxf.__version__, "python": sys.version.split()[0], **units}) + "\n"
)
