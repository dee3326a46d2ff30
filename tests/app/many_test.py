#!/usr/bin/env python3
"""Many jobs at once: the same files as one at a time, each folder whole or not at all, and what is
said in the order in which the jobs were given.

usage: many_test.py TOOL"""

import os
import pty
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import check, done, drawn_jobs, files_in, hidden_in, run  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
WORK = tempfile.mkdtemp(prefix="swathe-many-")
os.chdir(WORK)
seed = int(os.environ.get("SWATHE_SEED", random.randrange(1 << 30)))
drawn = random.Random(seed)
print(f"# drawn jobs and moments: SWATHE_SEED={seed}")

JOBS = [os.path.relpath(path) for path in drawn_jobs(drawn, 6, WORK)]
STEMS = [job.removesuffix(".toml") for job in JOBS]
OUT = "out"


def make(*words, **more):
    return run([TOOL, "make", *words, "-o", OUT], **more)


def folders():
    return sorted(os.listdir(OUT)) if os.path.isdir(OUT) else []


def sets():
    return {stem: files_in(os.path.join(OUT, stem)) for stem in folders()}


# One at a time.
alone, said = {}, {}
for job, stem in zip(JOBS, STEMS):
    result = run([TOOL, "make", job, "-o", os.path.join(OUT, stem)])
    assert result.returncode in (0, 2), result.stderr
    if result.returncode == 0:
        alone[stem], said[stem] = files_in(os.path.join(OUT, stem)), result.stdout
check("most drawn jobs make", len(alone) >= 4, len(alone))
JOBS = [job for job, stem in zip(JOBS, STEMS) if stem in alone]
STEMS = list(alone)
shutil.rmtree(OUT)

result = make(*JOBS)
check("many jobs make", result.returncode == 0, result.stderr.decode())
check("many jobs give the bytes that each gives alone", sets() == alone)
check("the answers stand in the order given", result.stdout == b"\n".join(said.values()),
      result.stdout.decode())
heads = [line[:-1] for line in result.stderr.decode().splitlines() if line.endswith(".toml:")]
check("so does the talk, each under its job's name", heads == JOBS, heads)
check("what holds for all is said once", result.stderr.count(b"Print at 100 %") == 1
      and f"{len(JOBS)} jobs are made.".encode() in result.stderr, result.stderr.decode())
backwards = make(*JOBS[::-1], "--quiet")
check("backwards too, and quiet", backwards.returncode == 0 and backwards.stderr == b""
      and backwards.stdout == b"\n".join(list(said.values())[::-1]) and sets() == alone)

# One that is wrong, one that fails, and what cannot go together.
shutil.rmtree(OUT)
with open("wrong.toml", "w", encoding="utf-8") as file:
    file.write("[frame]\nwidth = 3\n")
result = make(JOBS[0], "wrong.toml", "none.toml", JOBS[1])
lines = [line.split(":")[0] for line in result.stderr.decode().splitlines() if ".toml:" in line]
check("a wrong job: exit 2", result.returncode == 2, result.returncode)
check("the others are made, it has no folder", sets() == {stem: alone[stem] for stem in STEMS[:2]})
order = [JOBS[0], "wrong.toml", "none.toml", JOBS[1]]
check("complaints stand in the order given", [line for line in order if line in lines] == order
      and sorted(lines, key=order.index) == lines, lines)
shutil.rmtree(OUT)
os.mkdir(OUT)
with open(os.path.join(OUT, STEMS[0]), "w", encoding="utf-8") as file:
    file.write("mine")
result = make(JOBS[0], "wrong.toml", JOBS[1])
check("a file in a folder's place: exit 3, whatever else is wrong", result.returncode == 3
      and b"is a file, a folder was expected" in result.stderr, result.stderr)
check("the others are made", files_in(os.path.join(OUT, STEMS[1])) == alone[STEMS[1]])
shutil.rmtree(OUT)
os.mkdir("other")
shutil.copy(JOBS[0], "other")
for what, words in (("two jobs of one name", [JOBS[0], JOBS[1], os.path.join("other", JOBS[0])]),
                    ("the same job twice", [JOBS[0], JOBS[0]]),
                    ("standard input among others", [JOBS[0], "-"])):
    result = make(*words)
    check(f"{what}: refused in one line before anything is written", result.returncode == 2
          and result.stderr.count(b"\n") == 1 and not os.path.exists(OUT), result.stderr)
result = make("none.toml", "wrong.toml")
check("where nothing is made no folder stays", result.returncode == 2 and not os.path.exists(OUT))


def on_a_terminal(*words):
    """What standard error gets where it is a terminal."""
    outside, inside = pty.openpty()
    process = subprocess.Popen([TOOL, "make", *words, "-o", OUT], stdout=subprocess.DEVNULL,
                               stderr=inside)
    os.close(inside)
    heard = b""
    while True:
        try:
            part = os.read(outside, 1 << 16)
        except OSError:  # Linux says so when the other end is closed
            break
        if not part:
            break
        heard += part
    os.close(outside)
    process.wait()
    return heard


heard = on_a_terminal(*JOBS)
check("a terminal shows how far it is", f"{len(JOBS)} of {len(JOBS)} jobs".encode() in heard, heard)
check("not when quiet", on_a_terminal(*JOBS, "--quiet") == b"")
check("not for one job", b"jobs" not in on_a_terminal(JOBS[0]))

# A thread a core, and one that tells. Seen from outside, while it works.
process = subprocess.Popen([TOOL, "make", *JOBS, "-o", OUT], stdout=subprocess.DEVNULL,
                           stderr=subprocess.DEVNULL)
most = 0
while process.poll() is None:
    try:
        most = max(most, len(os.listdir(f"/proc/{process.pid}/task")))
    except FileNotFoundError:
        pass
cores = len(os.sched_getaffinity(0))
check(f"{cores} cores: so many threads at work", most == 1 + min(cores, len(JOBS)), most)

# Stopped half way: finished jobs' folders are whole, the others old, or absent.
begin = time.monotonic()
make(*JOBS)
length = time.monotonic() - begin
OLD = {stem: {name: b"old " + name.encode() for name in files} for stem, files in alone.items()}


def old_folders():
    shutil.rmtree(OUT, ignore_errors=True)
    for stem in STEMS[::2]:
        os.makedirs(os.path.join(OUT, stem))
        for name, text in OLD[stem].items():
            with open(os.path.join(OUT, stem, name), "wb") as file:
                file.write(text)


def mixed():
    """Folders with a file that is not whole; after a kill a folder may hold old files and new."""
    return [stem for stem, files in sets().items()
            if any(text not in (alone[stem][name], OLD[stem][name]) for name, text in files.items())]


for name, runs in (("SIGKILL", 10), ("SIGTERM", 6), ("SIGINT", 2)):
    wrong, finished = [], set()
    for _ in range(runs):
        old_folders()
        process = subprocess.Popen([TOOL, "make", *JOBS, "-o", OUT], stdout=subprocess.DEVNULL,
                                   stderr=subprocess.DEVNULL)
        time.sleep(drawn.uniform(0, length))
        process.send_signal(getattr(signal, name))
        code = process.wait()
        new = [stem for stem, files in sets().items() if files == alone[stem]]
        finished.add(len(new))
        if mixed() or code not in (0, -getattr(signal, name)):
            wrong.append((code, mixed()))
        if name == "SIGKILL":
            continue
        # Let go of: each folder is one set's, and nothing hidden stays.
        half = [stem for stem, files in sets().items() if files not in (alone[stem], OLD[stem])]
        hidden = [stem for stem in folders() if hidden_in(os.path.join(OUT, stem))]
        if half or hidden:
            wrong.append((half, hidden))
    check(f"{name} at {runs} drawn moments: every file is whole"
          + ("" if name == "SIGKILL" else ", every folder one set's, no stage stays"), not wrong, wrong)
    print(f"# jobs that were finished then: {sorted(finished)}")

os.chdir("/")
shutil.rmtree(WORK)
done()
