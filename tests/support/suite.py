"""What the script suites share: one line a check, "ok - what" or "not ok - what", counted by
tests/run.sh; the exit status says whether all held."""

import os
import signal
import subprocess
import sys

TOP = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
RECORD = ".swathe-files"
EXAMPLE = os.path.join(TOP, "examples", "tin-heron.toml")

# A shell has what it starts in the background ignore these; what is tested here is not to.
for _ignored in (signal.SIGINT, signal.SIGQUIT):
    signal.signal(_ignored, signal.SIG_DFL)

_failed = 0


def check(what, holds, detail=""):
    global _failed
    print(("ok - " if holds else "not ok - ") + what, flush=True)
    if not holds:
        _failed += 1
        if detail:
            print("    " + str(detail).rstrip().replace("\n", "\n    "), flush=True)
    return holds


def done():
    sys.exit(1 if _failed else 0)


def run(arguments, **more):
    """Runs to the end; text comes back as bytes."""
    return subprocess.run(arguments, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                          stdin=more.pop("stdin", subprocess.DEVNULL), timeout=300, **more)


def read(path):
    with open(path, "rb") as file:
        return file.read()


def files_in(folder):
    """The bytes of every file one can see in a folder."""
    return {name: read(os.path.join(folder, name)) for name in sorted(os.listdir(folder))
            if not name.startswith(".")}


def hidden_in(folder):
    """What is hidden there, but for the record of what was written, which stays."""
    return [name for name in os.listdir(folder) if name.startswith(".") and name != RECORD]


def drawn_jobs(drawn, count, folder):
    """So many jobs drawn from the example, each with a frame and a number of its own, as files there."""
    with open(EXAMPLE, encoding="utf-8") as file:
        text = file.read()
    paths = []
    for k in range(count):
        job = text
        for old, new in (('number = "20486"', f'number = "{drawn.randrange(10, 100000)}"'),
                         ('width = "28 in"', f'width = "{drawn.randrange(112, 121) / 4} in"'),
                         ('depth = "30 in"', f'depth = "{drawn.randrange(112, 129) / 4} in"')):
            assert job.count(old) == 1, f"the example has changed: {old}"
            job = job.replace(old, new)
        paths.append(os.path.join(folder, f"job-{k + 1:04}.toml"))
        with open(paths[-1], "w", encoding="utf-8") as file:
            file.write(job)
    return paths
