#!/usr/bin/env python3
"""Everything the tool gives for the examples and for 190 kept jobs, so that two builds can be held
against each other: before and after a change that should change nothing, or only what it says.

usage: manifest.py record TOOL FOLDER          FOLDER/files.txt: the SHA-256 of every file that
                                               `make` and `views` write; FOLDER/said/: the words of
                                               both, of `check`, `list`, `explain` and of refusals
       manifest.py compare BEFORE AFTER        what differs between two such folders; exit 1 if any

The jobs in jobs/ were drawn by tests/fuzz/drawn_text.hpp: drawn-NNN as they are, refused-NN with
some of their lines changed until the tool refused them."""

import concurrent.futures
import difflib
import glob
import hashlib
import os
import shutil
import subprocess
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
TOP = os.path.dirname(os.path.dirname(HERE))


def jobs():
    return (sorted(glob.glob(os.path.join(TOP, "examples", "*.toml"))) +
            sorted(glob.glob(os.path.join(TOP, "examples", "kinds", "*.toml"))) +
            sorted(glob.glob(os.path.join(TOP, "tests", "golden", "jobs", "*.toml"))) +
            sorted(glob.glob(os.path.join(HERE, "jobs", "*.toml"))))


def run(tool, words, folder):
    environment = dict(os.environ, SOURCE_DATE_EPOCH="1700000000")
    result = subprocess.run([tool] + words, cwd=folder, env=environment, stdin=subprocess.DEVNULL,
                            capture_output=True, check=False)
    return (f"== {' '.join(words)}: exit {result.returncode}\n" +
            result.stdout.decode("utf-8", "replace") + "-- talk\n" +
            result.stderr.decode("utf-8", "replace"))


def hashes(folder, prefix):
    lines = []
    for path in sorted(glob.glob(os.path.join(folder, "**"), recursive=True)):
        if os.path.isfile(path):
            with open(path, "rb") as file:
                digest = hashlib.sha256(file.read()).hexdigest()
            lines.append(f"{digest}  {prefix}/{os.path.relpath(path, folder)}")
    return lines


def one(tool, job):
    """The words and the hashes of one job."""
    name = os.path.relpath(job, TOP)
    folder = tempfile.mkdtemp(prefix="manifest-")
    try:
        stem = os.path.splitext(name)[0].replace("/", "-")
        for part in ("examples", "tests"):
            os.symlink(os.path.join(TOP, part), os.path.join(folder, part))
        words = "".join(run(tool, command, folder) for command in (
            ["make", name, "-o", "out"], ["views", name, "-o", "seen"], ["check", name],
            ["list", name]))
        lines = (hashes(os.path.join(folder, "out"), stem + "/make") +
                 hashes(os.path.join(folder, "seen"), stem + "/views"))
    finally:
        shutil.rmtree(folder)
    return stem, words, lines


def record(tool, into):
    os.makedirs(os.path.join(into, "said"), exist_ok=True)
    files = []
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as crew:
        for stem, words, lines in crew.map(lambda job: one(tool, job), jobs()):
            files += lines
            with open(os.path.join(into, "said", stem + ".txt"), "w", encoding="utf-8") as file:
                file.write(words)
    with open(os.path.join(into, "said", "explain.txt"), "w", encoding="utf-8") as file:
        file.write(run(tool, ["explain"], TOP) + run(tool, ["seasons"], TOP) +
                   run(tool, ["fonts"], TOP) + run(tool, ["new", "-"], TOP))
    with open(os.path.join(into, "files.txt"), "w", encoding="utf-8") as file:
        file.write("\n".join(files) + "\n")
    print(f"{len(files)} files of {len(jobs())} jobs")


def read(path):
    if not os.path.exists(path):
        return ""
    with open(path, encoding="utf-8") as file:
        return file.read()


def hash_of(folder):
    return {name: digest for digest, _, name in
            (line.partition("  ") for line in read(os.path.join(folder, "files.txt")).splitlines())}


def compare(before, after):
    differing = 0
    was, now = hash_of(before), hash_of(after)
    for name in sorted(was.keys() | now.keys()):
        if was.get(name) != now.get(name):
            differing += 1
            print("gone" if name not in now else "new " if name not in was else "diff", name)
    names = {os.path.basename(path) for folder in (before, after)
             for path in glob.glob(os.path.join(folder, "said", "*.txt"))}
    for name in sorted(names):
        a, b = (read(os.path.join(folder, "said", name)).splitlines(True)
                for folder in (before, after))
        if a != b:
            differing += 1
            sys.stdout.writelines(difflib.unified_diff(a, b, "before/" + name, "after/" + name, n=0))
    print(f"{len(was)} files before, {len(now)} after; {differing} differences")
    return 1 if differing or not was else 0


def main():
    if len(sys.argv) == 4 and sys.argv[1] == "record":
        record(os.path.abspath(sys.argv[2]), sys.argv[3])
        return 0
    if len(sys.argv) == 4 and sys.argv[1] == "compare":
        return compare(sys.argv[2], sys.argv[3])
    print(__doc__)
    return 2


sys.exit(main())
