#!/usr/bin/env python3
"""The report keeps to its schema, and its numbers are of the sheets it names.

usage: report_test.py TOOL"""

import glob
import json
import os
import sys

import jsonschema

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "support"))
from suite import EXAMPLE, TOP, check, done, run  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
with open(os.path.join(HERE, "report.schema.json"), encoding="utf-8") as file:
    SCHEMA = json.load(file)

jsonschema.Draft202012Validator.check_schema(SCHEMA)
validator = jsonschema.Draft202012Validator(SCHEMA)


def faults(report):
    return [f"{'/'.join(map(str, e.absolute_path))}: {e.message[:200]}"
            for e in validator.iter_errors(report)]


jobs = (sorted(glob.glob(os.path.join(TOP, "examples", "**", "*.toml"), recursive=True)) +
        sorted(glob.glob(os.path.join(TOP, "tests", "golden", "jobs", "good-*.toml"))))
for job in jobs:
    result = run([TOOL, "report", job])
    name = os.path.basename(job)
    if not check(f"{name}: a report comes", result.returncode == 0, result.stderr.decode()):
        continue
    report = json.loads(result.stdout)
    check(f"{name}: the report keeps to its schema", not faults(report), "\n".join(faults(report)[:8]))
    check(f"{name}: as many clear gaps, covers and weights as bumpers",
          len(report["weight"]["bumpers"]) == len(report["bumpers"]))

# What an observer reads changes at bearings that differ in print: an arc of no width is none.
def arcs_in(part):
    if isinstance(part, dict):
        for key, value in part.items():
            if key in ("unread", "ambiguous", "arcs"):
                yield from value
            else:
                yield from arcs_in(value)
    elif isinstance(part, list):
        for value in part:
            yield from arcs_in(value)


drawn = sorted(glob.glob(os.path.join(TOP, "tests", "manifest", "jobs", "drawn-*.toml")))[:60]
seen, empty = 0, []
for job in drawn:
    result = run([TOOL, "report", job])
    if result.returncode == 0:
        arcs = list(arcs_in(json.loads(result.stdout).get("sight", [])))
        seen += len(arcs)
        empty += [f"{os.path.basename(job)}: {arc}" for arc in arcs if not arc[1] > arc[0]]
check("drawn jobs have arcs to look at", seen > 100, seen)
check("no arc of no width is told", not empty, "\n".join(empty[:8]))

# A schema that lets everything through would prove nothing.
report = json.loads(run([TOOL, "report", EXAMPLE]).stdout)
for path, value in ((("schema",), 2), (("job", "units"), "furlong"), (("checks", 0, "verdict"), "maybe"),
                    (("bumpers", 0, "points_mm", 0), [1.0]), (("section", "depth_mm"), "83"),
                    (("bumpers", 0, "corners", 0, "dart"), [])):
    broken = json.loads(json.dumps(report))
    place = broken
    try:
        for step in path[:-1]:
            place = place[step]
        place[path[-1]] = value
        refused = bool(faults(broken))
    except (KeyError, IndexError):
        refused = False
    check(f"the schema refuses {'/'.join(map(str, path))} = {value!r}", refused)
for key in list(report):
    broken = {k: v for k, v in report.items() if k != key}
    check(f"the schema misses {key}", bool(faults(broken)))
done()
