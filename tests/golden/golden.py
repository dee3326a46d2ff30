#!/usr/bin/env python3
"""What the tool says, word by word, through the real tool.

A line of a .cases file:   job;command and options;expected-file
The tool is run as "swathe COMMAND JOB OPTIONS" in an empty folder in which examples/ and tests/
stand; "." for a job means none, "<" in front of it gives it on standard input. The expected file,
in tests/golden/expected/, holds the exit status, standard output and standard error.

usage: golden.py check TOOL                        compare every line
       golden.py record TOOL FILE.cases LINE       run one line, write what it says, add the line
                                                   where it is new, and print what changed
       golden.py record TOOL                       the same for every line there is"""

import difflib
import glob
import os
import shlex
import shutil
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "support"))
from suite import TOP, check, done, run  # noqa: E402

EXPECTED = os.path.join(HERE, "expected")


def said(tool, line):
    """What the tool says to one line, as text."""
    job, command, _ = line.split(";")
    words = shlex.split(command)
    folder = tempfile.mkdtemp(prefix="swathe-golden-")
    try:
        for name in ("examples", "tests"):
            os.symlink(os.path.join(TOP, name), os.path.join(folder, name))
        if job.startswith("<"):
            with open(os.path.join(TOP, job[1:]), "rb") as standard_input:
                result = run([tool, words[0], "-"] + words[1:], cwd=folder, stdin=standard_input)
        else:
            result = run([tool, words[0]] + ([] if job == "." else [job]) + words[1:], cwd=folder)
    finally:
        shutil.rmtree(folder)
    return (f"exit {result.returncode}\n--- answer\n{result.stdout.decode()}"
            f"--- talk\n{result.stderr.decode()}")


def expected(line):
    path = os.path.join(EXPECTED, line.split(";")[2])
    if not os.path.exists(path):
        return None
    with open(path, encoding="utf-8") as file:
        return file.read()


def difference(line, now):
    before = expected(line) or ""
    return "".join(difflib.unified_diff(before.splitlines(True), now.splitlines(True),
                                        "expected", "said", n=2))


def lines_of(cases):
    with open(cases, encoding="utf-8") as file:
        return [line.rstrip("\n") for line in file if line.strip() and not line.startswith("#")]


def command_of(line):
    return line.split(";")[1].split()[0]


def all_lines():
    return [line for cases in sorted(glob.glob(os.path.join(HERE, "*.cases")))
            for line in lines_of(cases)]


def record(tool, line):
    now = said(tool, line)
    print(f"== {line}\n{difference(line, now) or 'nothing changed'}")
    with open(os.path.join(EXPECTED, line.split(";")[2]), "w", encoding="utf-8") as file:
        file.write(now)


def main():
    what, tool = sys.argv[1], os.path.abspath(sys.argv[2])
    if what == "record" and len(sys.argv) == 5:
        cases, line = os.path.join(HERE, os.path.basename(sys.argv[3])), sys.argv[4]
        record(tool, line)
        if not os.path.exists(cases) or line not in lines_of(cases):
            with open(cases, "a", encoding="utf-8") as file:
                file.write(line + "\n")
        return
    lines = all_lines()
    if what == "record":
        for line in lines:
            record(tool, line)
        return
    check("there are golden lines", len(lines) > 0)
    for line in lines:
        now = said(tool, line)
        check(f"golden {line}", now == expected(line), difference(line, now))
        answer = now.split("--- talk\n")[0]
        if command_of(line) not in ("report", "new"):  # files, written there
            wide = [row for row in answer.splitlines() if len(row) > 80]
            check(f"golden {line}: no line is wider than 80 columns", not wide, wide[:3])
    used = {line.split(";")[2] for line in lines}
    check("every expected file belongs to a line", used == set(os.listdir(EXPECTED)),
          used ^ set(os.listdir(EXPECTED)))
    done()


main()
