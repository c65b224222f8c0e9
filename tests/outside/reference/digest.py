#!/usr/bin/env python3
"""Digest of reference tables to figures alone: digest.py FOLDER writes the JSON files beside this script.

FOLDER holds ampacity.json, conductor-properties.json, raceway.json, supply.json and service.json, each with "tables" of "rows". Kept
are the rows with their numbers, sizes and short labels; prose is dropped. Python 3.11, standard library only.
"""
import json
import pathlib
import sys

FILES = {
    "ampacity": "ampacity.json",
    "conductors": "conductor-properties.json",
    "raceways": "raceway.json",
    "supply": "supply.json",
    "service": "service.json",
}
# Of a file that is not named here, every table.
KEEP = {
    "service": {"table_250_66", "gec_exceptions_250_66_A_B_C", "table_250_102_C_1", "grounding_check_rows",
                "tap_check_rows", "cord_ampacity_400_5_A_1", "cord_ampacity_400_5_A_2", "ansi_c84_1"},
}
PROSE = {"note", "source", "section", "exception", "condition", "location", "rule", "fact", "basis", "item", "formula", "quantity", "pull"}
SKIP = {"formulas_transformer", "ev_supply_equipment_article_625", "unit_load_evse", "pull_box_314_28",
        "termination_110_14_C", "continuous_load_rule", "rooftop_310_15_B_2", "bends_between_pull_points",
        "voltage_drop_temperature_k"}
here = pathlib.Path(__file__).parent
for name, file in FILES.items():
    tables = json.loads((pathlib.Path(sys.argv[1]) / file).read_text())["tables"]
    lines = []
    for key, table in tables.items():
        if key in SKIP or key not in KEEP.get(name, tables):
            continue
        parts = {"rows": table["rows"]}
        if "metal_boxes" in table:
            parts["metal_boxes"] = table["metal_boxes"]
        if "additional_fuse_ratings_a" in table:
            parts["fuses"] = [{"amps": amps} for amps in table["additional_fuse_ratings_a"]]
        for part, rows in parts.items():
            own = key if part == "rows" else f"{key}_{part}"
            kept = [{k: v for k, v in row.items() if k not in PROSE} for row in rows]
            body = ",\n".join("    " + json.dumps(row, ensure_ascii=False) for row in kept)
            lines.append(f"  {json.dumps(own)}: [\n{body}\n  ]")
    (here / f"{name}.json").write_text("{\n" + ",\n".join(lines) + "\n}\n")
