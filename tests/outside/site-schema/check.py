#!/usr/bin/python3
"""Judges the cases beside this file by the published JSON Schema, with python-jsonschema.

From the top folder:  npm run -s overrow -- schema | /usr/bin/python3 tests/outside/site-schema/check.py
Writes verdicts.json: the schema that was used, the versions, and which cases it holds valid.
"""

import copy
import json
import pathlib
import platform
import sys
from importlib import metadata

from jsonschema import Draft202012Validator

here = pathlib.Path(__file__).parent
every = json.loads((here / "../../routing/site/fixtures/every-field.site.json").read_text())


def with_part(value, path, *part):
    for step in path[:-1]:
        value = value[step]
    if part:
        value[path[-1]] = part[0]
    else:
        del value[path[-1]]


def site_of(case):
    if "base" in case:
        return case["base"]
    site = copy.deepcopy(every)
    with_part(site, case["path"], *([case["part"]] if "part" in case else []))
    for path, *part in case.get("also", []):
        with_part(site, path, *part)
    return site


schema = json.load(sys.stdin)
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)
cases = json.loads((here / "cases.json").read_text())
verdicts = {
    "python": platform.python_version(),
    "jsonschema": metadata.version("jsonschema"),
    "schema": schema,
    "valid": {case["name"]: validator.is_valid(site_of(case)) for case in cases},
}
(here / "verdicts.json").write_text(json.dumps(verdicts, indent=1) + "\n")
