#!/usr/bin/env python3
"""Memory that gives out: at every allocation drawn, alone and with all later ones. The run ends with
status 3 and the one line "swathe: out of memory", and leaves the old files; or it can do without,
and the files are what they always are.

usage: memory_test.py TOOL MEMORY_FAULTS_LIBRARY [STEP]
STEP: every how many-th allocation of a whole job is tried (1: each; an hour)"""

import os
import random
import shutil
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import EXAMPLE, check, done, drawn_jobs, files_in, hidden_in, read, run  # noqa: E402

TOOL, FAULTS = (os.path.abspath(path) for path in sys.argv[1:3])
STEP = int(sys.argv[3]) if len(sys.argv) > 3 else 6000
WORK = tempfile.mkdtemp(prefix="swathe-memory-")
OUT, LOG = os.path.join(WORK, "out"), os.path.join(WORK, "log")
seed = int(os.environ.get("SWATHE_SEED", random.randrange(1 << 30)))
drawn = random.Random(seed)
SAID = b"swathe: out of memory\n"

# Clipper 6.4.2 frees points twice where memory gives out while it takes crossings in turn
# (ProcessIntersectList leaves freed nodes in its list); glibc stops such a run at once.
KNOWN = ("free(): double free detected",)


def faulty(fault, *words):
    environment = dict(os.environ, LD_PRELOAD=FAULTS, SWATHE_TEST_MEMORY_LOG=LOG)
    if fault:
        environment["SWATHE_TEST_MEMORY"] = fault
    result = run([TOOL, *words], env=environment)
    lines = [line.split(" ", 3) for line in read(LOG).decode(errors="replace").splitlines()]
    return result, lines


def number(lines, word):
    return next(int(line[1]) for line in lines if line[0] == word)


def make(fault, *words):
    shutil.rmtree(OUT, ignore_errors=True)
    os.mkdir(OUT)
    return faulty(fault, "make", EXAMPLE, "-o", OUT, *words)


def sound_alone(fault, wanted, *words):
    """A run of its own with that fault: it says so and leaves nothing, or does without."""
    result, _ = make(fault, *words)
    if result.returncode == 3 and result.stderr == SAID:
        return not hidden_in(OUT) and files_in(OUT) in ({}, wanted)
    return result.returncode == 0 and files_in(OUT) == wanted


result, lines = make(None)
good, count = files_in(OUT), number(lines, "count")
begin, end = next((int(line[1]), int(line[2])) for line in lines if line[0] == "stage")
check("the example makes, its allocations are counted", result.returncode == 0 and count > 1000
      and 0 < begin <= end < count, (count, begin, end))
print(f"# {count} allocations, {begin} to {end} while files are under way; SWATHE_SEED={seed}")

# Children split off at drawn allocations; parent and child write into one folder, so that those
# that did without are tried again alone.
for kind, one, step in (("each", "one", STEP), ("each-all", "all", 3 * STEP)):
    result, lines = make(f"{kind}:{drawn.randrange(1, min(step, count) + 1)}:{step}")
    check(f"{kind}: the program itself goes on unharmed", result.returncode == 0
          and files_in(OUT) == good and not hidden_in(OUT), result.stderr.decode())
    odd = [line for line in lines if line[0] == "child"]
    known = [line for line in odd if line[2] == "-6" and line[3].startswith(KNOWN)]
    wrong = [line for line in odd if line not in known
             and not (line[2] == "0" and sound_alone(f"{one}:{line[1]}", good))]
    check(f"{kind}: {number(lines, 'children')} of {count} allocations fail: out of memory, said in "
          f"one line, exit 3", not wrong, wrong[:5])
    print(f"# stopped by glibc inside Clipper, as it must: {len(known)}")
# (Of the patterns alone: they take a quarter of the time.)
few, lines = make(None, "--only", "pattern")
patterns = files_in(OUT)
begin, end = next((int(line[1]), int(line[2])) for line in lines if line[0] == "stage")
wrong = [(kind, k) for kind in ("one", "all") for k in range(begin - 2, end + 3)
         if not sound_alone(f"{kind}:{k}", patterns, "--only", "pattern")]
check(f"each of {end - begin} allocations while files are under way: all old or all new, no stage stays",
      few.returncode == 0 and len(patterns) > 4 and not wrong, wrong)
for kind in ("each", "each-all"):
    result, lines = faulty(f"{kind}:1:1", "--version")
    odd = [line for line in lines if line[0] == "child" and line[2] != "0"]
    check(f"{kind} of {number(lines, 'children')} allocations of --version, before main() too",
          result.returncode == 0 and not odd and number(lines, "children") > 100, odd[:5])

# On threads: the job it struck is named, the others are made.
jobs = drawn_jobs(drawn, 2, WORK)
MANY = os.path.join(WORK, "many")
result, lines = faulty(None, "make", *jobs, "-o", MANY)
if check("two jobs make", result.returncode == 0, result.stderr.decode()):
    whole = {name: files_in(os.path.join(MANY, name)) for name in os.listdir(MANY)}
    wrong, struck = [], 0
    for _ in range(12):
        shutil.rmtree(MANY, ignore_errors=True)
        fault = f"one:{drawn.randrange(1, number(lines, 'count'))}"
        result, _ = faulty(fault, "make", *jobs, "-o", MANY)
        seen = {name: files_in(os.path.join(MANY, name))
                for name in (os.listdir(MANY) if os.path.isdir(MANY) else [])}
        named = [job for job in jobs if f"swathe: {job}: out of memory".encode() in result.stderr]
        struck += len(named)
        fits = (result.returncode == 0 and seen == whole
                or result.returncode == 3 and SAID in result.stderr  # the thread that tells
                or result.returncode == 3 and named
                or result.returncode == -6 and b"double free" in result.stderr)
        if not fits or any(files != whole[name] for name, files in seen.items()):
            wrong.append((fault, result.returncode, result.stderr[-300:]))
    check("memory gives out in one of two jobs: it is named, and the other is made", not wrong, wrong)
    print(f"# of 12 runs it struck a job in {struck}")

shutil.rmtree(WORK)
done()
