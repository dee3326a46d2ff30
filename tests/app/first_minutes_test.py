#!/usr/bin/env python3
"""A stranger's first minutes: each script begins with a job as beginners type it, or with a command
line, and follows nothing but what the tool says. What to type or to run is taken out of the message by
the patterns below, never known beforehand; the tool is run again, until it has nothing more to say. Each
ends in a set of files and a job that meets every rule.

A new script is a line in SCRIPTS; a new kind of advice is a pattern with its function in ADVICE.

usage: first_minutes_test.py TOOL"""

import os
import re
import shlex
import shutil
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import check, done, run  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
MOST_ROUNDS = 12  # of reading a message and doing what it says

GOOD = """[job]
title = "Tin Heron"
number = "20486"
season = "2026"

[frame]
width = "28 in"
depth = "30 in"

[padding]
core = "solid"

[[bumper]]
name = "A"
from = ["front", "50%"]
to = ["back", "50%"]

[[bumper]]
name = "B"
from = ["back", "50%"]
to = ["front", "50%"]

[[bracket]]
side = "left"
at = ["11 in", "front"]
width = "2 in"
height = "2 in"
"""

MAKE = ["swathe", "make", "job.toml", "-o", "out"]

# What it is, what is typed in place of what in the good job, the first command.
SCRIPTS = (
    ("a length without quotes", (('"28 in"', "27 1/2 in"), ('"30 in"', "30in")), MAKE),
    ("a share without quotes", (('["front", "50%"]', '["front", 50%]'),), MAKE),
    ("curly quotes", (('"28 in"', "“28 in”"), ('"Tin Heron"', "“Tin Heron”")), MAKE),
    ("a quote that is not closed", (('"28 in"', '"28 in'), ('"solid"', '"solid  # no hole')), MAKE),
    ("a quote that is not opened", (('"28 in"', '28 in"'),), MAKE),
    ("a mark for inches in quotes", (('"28 in"', '"27.5""'),), MAKE),
    ("[bracket] for [[bracket]]", (("[[bracket]]", "[bracket]"),), MAKE),
    ("[bumper] for [[bumper]], twice", (("[[bumper]]", "[bumper]"),), MAKE),
    ("a list that is not closed", (('["front", "50%"]', '["front", "50%"'),), MAKE),
    ("a list without brackets", (('["back", "50%"]', "back, 50%"),), MAKE),
    ("a number that begins with 0", (('"20486"', "00486"),), MAKE),
    ("a number in another base", (('"20486"', "0x5006"),), MAKE),
    ("a number and a season without quotes, in which nothing is wrong",
     (('"20486"', "20486"), ('"2026"', "2026")), MAKE),
    ("an unknown font", (("[padding]", '[numerals]\nfont = "Antom"\n\n[padding]'),), MAKE),
    ("a number too tall",
     (('"28 in"', '"14 in"'), ('"30 in"', '"40 in"'), ('from = ["front", "50%"]', 'from = ["right", "20%"]'),
      ('to = ["back", "50%"]', 'to = ["left", "80%"]'), ('from = ["back", "50%"]', 'from = ["left", "80%"]'),
      ('to = ["front", "50%"]', 'to = ["right", "20%"]'),
      ("[padding]", '[numerals]\nfont = "Saira Stencil One"\nheight = "5 in"\n'
       'sides = ["left", "front", "right"]\n\n[padding]')), MAKE),
    ("a bare length at a bumper's end",
     (('from = ["front", "50%"]', 'from = ["front", "12 in"]'), ('to = ["front", "50%"]', 'to = ["front", "12 in"]')),
     MAKE),
    ("a corner of the frame that is not there",
     (('from = ["front", "50%"]', 'from = ["front", "14 in", "back"]'),), MAKE),
    ("a bare length for a bracket", (('["11 in", "front"]', '"11 in"'),), MAKE),
    ("a bracket that is told from the board's end", (('["11 in", "front"]', '["left", "11 in"]'),), MAKE),
    ("a bracket past its board", (('["11 in", "front"]', '["29 in", "front"]'),), MAKE),
    ("bumpers that overlap", (('to = ["back", "50%"]', 'to = ["back", "16 in", "left"]'),), MAKE),
    ("an opening too wide for its frame",
     (('[[bumper]]\nname = "A"', '[[opening]]\nside = "front"\nwidth = "26 in"\n\n[[bumper]]\nname = "A"'),
      ('from = ["front", "50%"]', 'from = ["front", "opening"]'),
      ('to = ["front", "50%"]', 'to = ["front", "opening"]')), MAKE),
    ("an opening too wide for the rules",
     (('[[bumper]]\nname = "A"', '[[opening]]\nside = "front"\nwidth = "20 in"\n\n[[bumper]]\nname = "A"'),
      ('from = ["front", "50%"]', 'from = ["front", "opening"]'),
      ('to = ["front", "50%"]', 'to = ["front", "opening"]')), MAKE),
    ("a folder without -o", (), ["swathe", "make", "job.toml", "out"]),
    ("no job at all", None, MAKE),
)


def lines_of(path):
    with open(path, encoding="utf-8") as file:
        return file.read().split("\n")


def put_lines(path, lines):
    with open(path, "w", encoding="utf-8") as file:
        file.write("\n".join(lines))


def type_line(said, folder, _):
    """Types the line that the message has in place of the one that it is about."""
    path = os.path.join(folder, said["file"])
    lines = lines_of(path)
    lines[int(said["line"]) - 1] = said["typed"]
    put_lines(path, lines)


def type_list(said, folder, _):
    """Types the list that the message has in place of the one that it is about."""
    path = os.path.join(folder, said["file"])
    lines = lines_of(path)
    line = lines[int(said["line"]) - 1]
    lines[int(said["line"]) - 1] = line[:line.index("[")] + said["list"]
    put_lines(path, lines)


def type_name(said, folder, _):
    """Types the name that the message has in place of the text in quotes that it is about."""
    path = os.path.join(folder, said["file"])
    lines = lines_of(path)
    line = lines[int(said["line"]) - 1]
    at = len(line.encode()[:int(said["column"]) - 1].decode())
    end = line.index('"', at + 1) + 1
    lines[int(said["line"]) - 1] = line[:at] + f'"{said["name"]}"' + line[end:]
    put_lines(path, lines)


def set_key(said, folder, _):
    result = run([TOOL, "set", "job.toml", said["key"], said["value"]], cwd=folder)
    assert result.returncode == 0, result.stderr


def narrow_opening(said, folder, state):
    set_key({"key": "opening.1.width", "value": said["value"]}, folder, state)


def run_instead(said, _, state):
    state["command"] = shlex.split(said["command"])


def run_first(said, folder, _):
    result = run([TOOL] + shlex.split(said["command"])[1:], cwd=folder)
    assert result.returncode == 0, result.stderr


PLACE = r"^(?P<file>[^:\n]+):(?P<line>\d+):(?P<column>\d+): "
ADVICE = (
    (PLACE + r".*: type (?P<typed>.+)$", type_line),
    (PLACE + r".* measured from: (?P<typed>\w+ = \[.*?\]) or ", type_line),  # either will do
    (PLACE + r".*: (?P<typed>\w+ = \[.*?\]) or \[", type_line),
    (PLACE + r".*: give (?P<typed>\w+ = \[.*?\])", type_line),
    (PLACE + r".*, expected at (?:most|least) (?P<list>\[.*?\])$", type_list),
    (PLACE + r".* give its opening a width of at most (?P<value>.+)$", narrow_opening),
    (PLACE + r'.* the nearest one that does is "(?P<name>[^"]+)"', type_name),
    (r"\? type: (?P<command>swathe .+)$", run_instead),
    (r'no such file; "(?P<command>swathe new [^"]+)" writes one', run_first),
    (r'\bset (?P<key>[a-z_]+(?:\.[a-z_0-9]+)+) to (?P<value>"[^"]*"|[^;:]+?)(?=[;:,]|$)', set_key),
)


def follow(text, folder, state):
    """Does the first thing that a text says to do; whether there was one."""
    for pattern, do in ADVICE:
        said = re.search(pattern, text, re.MULTILINE)
        if said:
            do(said, folder, state)
            return True
    return False


def what_the_check_says(folder):
    """The check's exit status, and each finding as one line, the advice with it."""
    result = run([TOOL, "check", "job.toml"], cwd=folder)
    rows = re.split(r"\n(?=\S)", result.stdout.decode())
    return result.returncode, "\n".join(" ".join(row.split()) for row in rows)


def play(folder, command):
    """Follows the messages; how many there were, and what was said last."""
    state = {"command": command}
    text = ""
    for rounds in range(MOST_ROUNDS):
        result = run([TOOL] + state["command"][1:], cwd=folder)
        text = result.stderr.decode()
        if result.returncode == 0:
            status, text = what_the_check_says(folder)
            if status == 0 and os.path.isdir(os.path.join(folder, "out")):
                return rounds, "" if "does not fit" not in text else text
        if not follow(text, folder, state):
            return rounds, text
    return MOST_ROUNDS, text


for name, changes, command in SCRIPTS:
    folder = tempfile.mkdtemp(prefix="swathe-first-minutes-")
    try:
        if changes is not None:
            job = GOOD
            for old, new in changes:
                assert old in job, f"the good job has no {old}"
                job = job.replace(old, new)
            with open(os.path.join(folder, "job.toml"), "w", encoding="utf-8") as file:
                file.write(job)
        rounds, left = play(folder, command)
        made = os.path.join(folder, "out")
        check(f"{name}: what the tool says leads to a set that passes",
              left == "" and os.path.isdir(made) and len(os.listdir(made)) > 3, left)
        sound = "nothing is wrong" in name
        check(f"{name}: {'no message' if sound else 'at least one message'} on the way",
              (rounds == 0) == sound, rounds)
    finally:
        shutil.rmtree(folder)
done()
