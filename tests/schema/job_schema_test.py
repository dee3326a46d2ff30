#!/usr/bin/env python3
"""The schema of a job takes every job that the tool reads, and refuses jobs that it does not.

Against the validator jsonschema and the parser tomllib, neither of which is ours.

usage: job_schema_test.py TOOL SCHEMA"""

import glob
import json
import os
import sys
import tempfile
import tomllib

import jsonschema

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "support"))
from suite import TOP, check, done, read, run  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
SCHEMA = json.loads(read(sys.argv[2]))
jsonschema.Draft7Validator.check_schema(SCHEMA)
validator = jsonschema.Draft7Validator(SCHEMA)

BASE = """[job]
number = "20486"
[frame]
width = "28 in"
depth = "30 in"
[[bumper]]
name = "A"
from = ["front", "50%"]
to = ["back", "50%"]
"""


def faults(text):
    return [f"{'.'.join(map(str, e.absolute_path))}: {e.message[:160]}"
            for e in validator.iter_errors(tomllib.loads(text))]


jobs = (glob.glob(os.path.join(TOP, "examples", "**", "*.toml"), recursive=True) +
        glob.glob(os.path.join(TOP, "tests", "golden", "jobs", "good-*.toml")) +
        [os.path.join(TOP, "tests", "golden", "jobs", "roll.toml")])
check("there are jobs", len(jobs) > 10)
for job in sorted(jobs):
    found = faults(read(job).decode())
    check(f"{os.path.basename(job)} keeps to the schema", not found, "\n".join(found[:4]))
new = run([TOOL, "new", "-"]).stdout.decode()
check("so does a new job", not faults(new), faults(new))
check("and the job that the wrong ones come from", not faults(BASE), faults(BASE))

bare = BASE.replace('"20486"', "20486\nseason = 2026").replace('"28 in"', '"26 ½ in."')
check("a number and a season may stand without quotes, and a share as one sign", not faults(bare),
      faults(bare))

# What is wrong, and the key at which the schema says so. Each is refused by the tool too.
WRONG = [
    (BASE.replace('"20486"', "-20486"), "job.number"),
    (BASE.replace('"20486"', "20486.5"), "job.number"),
    (BASE.replace('"20486"', '"204861"'), "job.number"),
    (BASE.replace('"20486"', '"2o486"'), "job.number"),
    (BASE.replace('"28 in"', '"28 inn"'), "frame.width"),
    (BASE.replace('"28 in"', "true"), "frame.width"),
    (BASE.replace('"28 in"', "1e6"), "frame.width"),
    (BASE.replace('width = "28 in"\n', ""), "frame"),
    (BASE.replace("depth =", "depht ="), "frame"),
    (BASE.replace("[frame]", "[frame]\ncorners = [[0, 0], [1, 0], [1, 1]]"), "frame"),
    (BASE.replace("[frame]", "[farme]"), ""),
    (BASE.replace("[[bumper]]", "[bumper]"), "bumper"),
    (BASE.replace('name = "A"\n', ""), "bumper.0"),
    (BASE.replace('["front", "50%"]', '"front"'), "bumper.0.from"),
    (BASE.replace('["front", "50%"]', '["front", "half"]'), "bumper.0.from"),
    (BASE.replace('["front", "50%"]', '["front", "9 in"]'), "bumper.0.from"),
    (BASE + '[[opening]]\nside = "left"\nwidth = "9 in"\ncenter = "9 in"\n', "opening.0.center"),
    (BASE.replace('["front", "50%"]', '["front", 1, 2]'), "bumper.0.from"),
    (BASE + '[boards]\njoint = "glued"\n', "boards.joint"),
    (BASE + "[boards]\nstock = [48]\n", "boards.stock"),
    (BASE + "[padding]\nstack = 2.5\n", "padding.stack"),
    (BASE + "[padding]\ndensity = 0\n", "padding.density"),
    (BASE + '[cloth]\nmay_join = "yes"\n', "cloth.may_join"),
    (BASE + '[cloth]\ncolors = { red = "b5121b" }\n', "cloth.colors.red"),
    (BASE + "[cloth]\nstretch_along = 0.6\n", "cloth.stretch_along"),
    (BASE + '[numerals]\naxes = { weight = 900 }\n', "numerals.axes"),
    (BASE + '[numerals]\nheight = "tall"\n', "numerals.height"),
    (BASE + '[[numerals.place]]\nbumper = "A"\n', "numerals.place.0"),
    (BASE + '[sight]\nstep = "1 degree"\n', "sight.step"),
    (BASE + "[sight]\nblind = [{ box = [[0, 0], [1, 1]] }]\n", "sight.blind.0.box.0"),
    (BASE + '[paper]\nsheet = "foolscap"\n', "paper.sheet"),
]
for number, (text, place) in enumerate(WRONG, 1):
    errors = list(validator.iter_errors(tomllib.loads(text)))
    places = [".".join(map(str, e.absolute_path)) for e in errors]
    check(f"wrong job {number}: the schema says so at {place or 'its top'}",
          place in places, places)
    with tempfile.NamedTemporaryFile(suffix=".toml") as file:
        file.write(text.encode())
        file.flush()
        told = run([TOOL, "check", file.name])
    check(f"wrong job {number}: the tool refuses it", told.returncode == 2, told.stdout.decode())


# Each default and example that the schema shows is one it takes, and has its words.
def keys_in(schema, path=()):
    for name, one in schema.get("properties", {}).items():
        if "title" in one:
            yield path + (name,), one
        else:
            yield from keys_in(one.get("items", one), path + (name,))


keys = list(keys_in(SCHEMA))
listed = {line.split()[0] for line in run([TOOL, "explain"]).stdout.decode().splitlines()
          if line[:1].islower() and "." in line.split()[0]}
# Those that are spelled otherwise in Britain are there in both spellings.
british = {name.replace("color", "colour").replace("center", "centre") for name in listed}
spelled = {".".join(path) for path, _ in keys}
check("the schema has every key that is explained, and no other",
      len(british - listed) == 4 and listed | british == spelled, (listed | british) ^ spelled)
for path, one in keys:
    shown = one.get("examples", []) + ([one["default"]] if "default" in one else [])
    wrong = [value for value in shown if not jsonschema.Draft7Validator(one).is_valid(value)]
    check(f"{'.'.join(path)}: it takes what it shows, and has words",
          shown and not wrong and one["title"] and one["description"], wrong)
done()
