#!/usr/bin/env python3
"""Files reach the disk whole or not at all: runs killed and made to fail at every call to the
disk, and a disk that is really full.

usage: output_test.py TOOL FAULTS_LIBRARY

The patterns alone are made, in a quarter of the time; with SWATHE_WHOLE=1 all files of the job."""

import contextlib
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import EXAMPLE, check, done, files_in, hidden_in, read, run  # noqa: E402

TOOL, FAULTS = (os.path.abspath(path) for path in sys.argv[1:3])
WORK = tempfile.mkdtemp(prefix="swathe-output-")
OUT = os.path.join(WORK, "out")
OLD_JOB = EXAMPLE
NEW_JOB = os.path.join(WORK, "other.toml")
KINDS = [] if "SWATHE_WHOLE" in os.environ else ["--only", "pattern"]


def make(job, folder=OUT, fault=None, calls=None, **more):
    environment = dict(os.environ)
    if fault or calls:
        environment["LD_PRELOAD"] = FAULTS
    if fault:
        environment["SWATHE_TEST_FAULT"] = fault
    if calls:
        environment["SWATHE_TEST_CALLS"] = calls
    return run([TOOL, "make", job, "-o", folder, *KINDS], env=environment, **more)


def fresh():
    shutil.rmtree(OUT, ignore_errors=True)
    shutil.copytree(OLD, OUT)


def moved():
    """How many of the files that the two jobs make differently are the new job's."""
    seen = files_in(OUT)
    return sum(seen[name] == new[name] for name in differing)


def whole(folder, *sets):
    """Every file that shows is one of the given sets', whole."""
    seen = files_in(folder)
    return [name for name, found in seen.items() if found not in [s.get(name) for s in sets]]


def only_stages(folder):
    return all(name.startswith(".swathe-stage-") for name in hidden_in(folder))


with open(EXAMPLE, encoding="utf-8") as file:
    text = file.read()
with open(NEW_JOB, "w", encoding="utf-8") as file:
    changed = text.replace("Tin Heron", "Zinc Heron")
    assert changed != text, "the example's title has changed: change it here too"
    file.write(changed)

# What both jobs come to when nothing goes wrong.
OLD = os.path.join(WORK, "old")
NEW = os.path.join(WORK, "new")
first = make(OLD_JOB, OLD)
check("the example makes", first.returncode == 0, first.stderr.decode())
COUNT = os.path.join(WORK, "calls")
second = make(NEW_JOB, NEW, calls=COUNT)
check("the changed example makes", second.returncode == 0, second.stderr.decode())
old, new = files_in(OLD), files_in(NEW)
check("both jobs come to the same files with other bytes",
      old.keys() == new.keys() and len(old) > 1 and all(old[name] != new[name] for name in old
                                                       if name.endswith(".pdf")))
differing = [name for name in new if old.get(name) != new[name]]
again = make(NEW_JOB, os.path.join(WORK, "again"))
check("the same job twice gives the same bytes", files_in(os.path.join(WORK, "again")) == new)
check("no stage is left behind", not hidden_in(OLD) and not hidden_in(NEW))
calls, openings = (int(word) for word in read(COUNT).split())
check("the calls to the disk are seen", calls > 4 * len(new) and openings > len(new), (calls, openings))

# Killed at each call, before it and half way through a write.
for kind in ("kill", "half"):
    wrong, killed, replaced = [], 0, set()
    for call in range(1, calls + 1):
        fresh()
        result = make(NEW_JOB, fault=f"{kind}:{call}")
        if result.returncode == -signal.SIGKILL:
            killed += 1
        elif kind == "kill":
            wrong.append((call, "was not killed"))
        if whole(OUT, old, new):
            wrong.append((call, whole(OUT, old, new)))
        if not only_stages(OUT) or files_in(OUT).keys() != old.keys():
            wrong.append((call, os.listdir(OUT)))
        replaced.add(moved())
    check(f"{kind} at each of {calls} calls: every file is whole, old or new", not wrong, wrong[:5])
    check(f"{kind}: runs were killed before, between and after the renames",
          killed > 0 and (kind == "half" or {0, 1, len(differing) - 1} <= replaced), (killed, replaced))

# The stage of a killed run goes with the next; that of a run at work stays.
fresh()
make(NEW_JOB, fault="kill:8")
check("a killed run leaves its stage", len(hidden_in(OUT)) == 1, hidden_in(OUT))
left = os.path.join(WORK, "left")
shutil.copytree(os.path.join(OUT, hidden_in(OUT)[0]), left)
make(NEW_JOB)
check("the next run takes it away", not hidden_in(OUT) and files_in(OUT) == new)
busy = os.path.join(OUT, ".swathe-stage-1-0")
os.mkdir(busy)
shutil.copy(os.path.join(left, ".stage-of-swathe"), busy)
holder = subprocess.Popen(["flock", "--no-fork", busy, "sleep", "60"])
time.sleep(0.3)
make(NEW_JOB)
check("a stage in use is left alone", os.path.isdir(busy))
holder.kill()
holder.wait()
make(NEW_JOB)
check("and goes when its owner is dead", not hidden_in(OUT))

# Killed at a moment nobody chose.
seed = int(os.environ.get("SWATHE_SEED", random.randrange(1 << 30)))
drawn = random.Random(seed)
wrong, length = [], 0.0
for _ in range(3):
    begin = time.monotonic()
    make(NEW_JOB)
    length = max(length, time.monotonic() - begin)
kills = int(os.environ.get("SWATHE_DRAWN", 20))
for _ in range(kills):
    fresh()
    process = subprocess.Popen([TOOL, "make", NEW_JOB, "-o", OUT, *KINDS], stdout=subprocess.DEVNULL,
                               stderr=subprocess.DEVNULL)
    time.sleep(drawn.uniform(0, length))
    process.kill()
    process.wait()
    if whole(OUT, old, new) or not only_stages(OUT):
        wrong.append(os.listdir(OUT))
check(f"killed at {kills} drawn moments (SWATHE_SEED={seed}): every file is whole", not wrong,
      wrong[:3])

# Interrupted: tidies up first.
for name in ("SIGINT", "SIGTERM", "SIGHUP"):
    wrong = []
    for _ in range(4):
        fresh()
        process = subprocess.Popen([TOOL, "make", NEW_JOB, "-o", OUT, *KINDS], stdout=subprocess.DEVNULL,
                                   stderr=subprocess.DEVNULL)
        time.sleep(drawn.uniform(0, length))
        process.send_signal(getattr(signal, name))
        code = process.wait()
        if hidden_in(OUT) or code not in (0, -getattr(signal, name)) or whole(OUT, old, new):
            wrong.append((code, os.listdir(OUT)))
    check(f"{name}: nothing is left half done, no stage stays", not wrong, wrong)

# Calls that fail: the old files stay, the stage goes, exit 3, one line.
wrong = []
for call in range(1, calls + 1):
    fresh()
    result = make(NEW_JOB, fault=f"full:{call}")
    if result.returncode == 3:
        if moved() not in (0, len(differing)) or hidden_in(OUT) or result.stderr.count(b"\n") != 1:
            wrong.append((call, moved(), hidden_in(OUT), result.stderr))
    elif result.returncode != 0 or files_in(OUT) != new:
        wrong.append((call, result.returncode, result.stderr))
check("no room at each call: all old or all new, exit 3, one line", not wrong, wrong[:5])
wrong = []
for call in range(1, calls + 1):
    fresh()
    result = make(NEW_JOB, fault=f"bad:{call}")
    if whole(OUT, old, new) or hidden_in(OUT) or result.returncode not in (0, 3):
        wrong.append((call, result.returncode, result.stderr, os.listdir(OUT)))
    if result.returncode == 3 and result.stderr.count(b"\n") != 1:
        wrong.append((call, result.stderr))
check("a disk error at each call: every file is whole, no stage stays", not wrong, wrong[:5])


# Files and folders that cannot be opened or made, each in turn.
for kind, words in (("many", b"Too many open files"), ("denied", b"Permission denied")):
    wrong = []
    for opening in range(1, openings + 1):
        fresh()
        result = make(NEW_JOB, fault=f"{kind}:{opening}")
        if result.returncode == 0:
            if files_in(OUT) != new:
                wrong.append((opening, "done, but not all is new"))
        elif (result.returncode not in (2, 3) or files_in(OUT) != old or hidden_in(OUT)
              or result.stderr.count(b"\n") != 1 or words not in result.stderr):
            wrong.append((opening, result.returncode, result.stderr, os.listdir(OUT)))
    check(f"each of {openings} openings fails ({words.decode()}): the old files stay, one line",
          not wrong, wrong[:5])

# Two runs at once into one folder: every file is whole, and the set is one run's, the last to finish.
wrong, sets = [], {"old": 0, "new": 0}
for turn in range(24):
    shutil.rmtree(OUT, ignore_errors=True)
    if turn % 2 == 0:
        fresh()
    jobs = [OLD_JOB, NEW_JOB] if turn % 4 < 2 else [NEW_JOB, OLD_JOB]
    runs = [subprocess.Popen([TOOL, "make", job, "-o", OUT, *KINDS], stdout=subprocess.DEVNULL,
                             stderr=subprocess.PIPE) for job in jobs]
    said = [run.communicate()[1] for run in runs]
    seen = files_in(OUT)
    sets["old" if seen == old else "new"] += 1
    if [run.returncode for run in runs] != [0, 0] or seen not in (old, new) or hidden_in(OUT):
        wrong.append((turn, said, os.listdir(OUT)))
check("two runs at once, 24 times: the set is one run's", not wrong, wrong[:3])
print(f"# whose it was: {sets}")

# A disk that is full. Needs to mount: as root.
@contextlib.contextmanager
def small_disk(size):
    folder = os.path.join(WORK, "disk")
    os.makedirs(folder, exist_ok=True)
    mounted = run(["mount", "-t", "tmpfs", "-o", f"size={size}", "none", folder])
    try:
        yield folder if mounted.returncode == 0 else None
    finally:
        if mounted.returncode == 0:
            run(["umount", folder])


# Room for a page of memory each of the old files, and for some of the new ones.
with small_disk(f"{4 * (len(new) + 8)}k") as disk:
    if check("a tiny disk can be mounted (this suite wants root)", disk is not None):
        target = os.path.join(disk, "out")
        os.mkdir(target)
        for name in new:
            with open(os.path.join(target, name), "wb") as file:
                file.write(b"old " + name.encode())
        before = files_in(target)
        result = make(NEW_JOB, target)
        check("full disk: exit 3", result.returncode == 3, (result.returncode, result.stderr))
        check("full disk: one clear line", result.stderr.count(b"\n") == 1
              and b"No space left on device" in result.stderr, result.stderr)
        check("full disk: the old files are whole, nothing else is there",
              files_in(target) == before and not hidden_in(target), os.listdir(target))
        made = os.path.join(disk, "a", "b")
        result = make(NEW_JOB, made)
        check("full disk: folders made on the way are taken back",
              result.returncode == 3 and not os.path.exists(os.path.join(disk, "a")))

# Things in the way.
def in_the_way(what, prepare, *words):
    shutil.rmtree(OUT, ignore_errors=True)
    prepare()
    result = make(NEW_JOB)
    check(f"{what}: exit 3 and a clear line", result.returncode == 3
          and result.stderr.count(b"\n") == 1 and all(w in result.stderr for w in words),
          (result.returncode, result.stderr))


def file_in_place():
    with open(OUT, "wb") as file:
        file.write(b"mine")


name = sorted(new)[0]
in_the_way("a file in the folder's place", file_in_place, b"is a file, a folder was expected")
check("a file in the folder's place stays", read(OUT) == b"mine")
os.remove(OUT)


def link_in_place(to):
    os.mkdir(OUT)
    os.symlink(to, os.path.join(OUT, name))


victim = os.path.join(WORK, "victim")
with open(victim, "wb") as file:
    file.write(b"mine")
in_the_way("a link in a file's place", lambda: link_in_place(victim), b"is a link")
check("what a link leads to stays", read(victim) == b"mine" and os.path.islink(os.path.join(OUT, name)))
in_the_way("a dangling link in a file's place", lambda: link_in_place("/nowhere/at/all"), b"is a link")
in_the_way("a folder in a file's place", lambda: os.makedirs(os.path.join(OUT, name)), b"is a folder")
shutil.rmtree(OUT)
in_the_way("a dangling link in the folder's place", lambda: os.symlink("/nowhere/at/all", OUT),
           b"is a link that leads to no folder")
os.remove(OUT)


def as_nobody():
    if os.getuid() == 0:
        os.setgroups([])
        os.setgid(65534)
        os.setuid(65534)


os.chmod(WORK, 0o755)
os.mkdir(OUT, 0o555)
before_job = os.path.join(WORK, "readable.toml")
shutil.copy(NEW_JOB, before_job)
os.chmod(before_job, 0o644)
result = make(before_job, preexec_fn=as_nobody)
check("a folder that is not writable: exit 3 and a clear line", result.returncode == 3
      and result.stderr.count(b"\n") == 1 and b"Permission denied" in result.stderr,
      (result.returncode, result.stderr))
os.chmod(OUT, 0o755)

# A file size limit is no crash.
result = subprocess.run(["sh", "-c", 'ulimit -f 2; exec "$@"', "sh", TOOL, "make", NEW_JOB, "-o", OUT, *KINDS],
                        stdout=subprocess.PIPE, stderr=subprocess.PIPE)
check("a file size limit: exit 3, nothing written", result.returncode == 3 and not os.listdir(OUT),
      (result.returncode, result.stderr))

# Standard output.
with open("/dev/full", "wb") as full:
    result = subprocess.run([TOOL, "report", EXAMPLE], stdout=full, stderr=subprocess.PIPE)
check("standard output full: exit 3 and a clear line", result.returncode == 3
      and b"standard output cannot be written" in result.stderr, result.stderr)
result = subprocess.run(["sh", "-c", '"$@" >&- 2>&-', "sh", TOOL, "make", NEW_JOB, "-o", OUT, *KINDS])
check("standard output closed: exit 3, and the files are not written over", result.returncode == 3
      and files_in(OUT) == new, result.returncode)

# new never overwrites.
kept = os.path.join(WORK, "kept.toml")
result = run([TOOL, "new", kept])
check("new writes a job", result.returncode == 0 and len(read(kept)) > 1000, result.stderr)
with open(kept, "wb") as file:
    file.write(b"mine")
result = run([TOOL, "new", kept])
check("new never overwrites", result.returncode == 2 and read(kept) == b"mine"
      and b"is there already" in result.stderr, result.stderr)
os.remove(kept)
os.symlink("/nowhere/at/all", kept)
result = run([TOOL, "new", kept])
check("new does not write through a link", result.returncode == 2 and os.path.islink(kept),
      result.stderr)

# set writes over the job: the whole of it, old or new, and as readable as before.
shut = os.path.join(WORK, "set")
os.mkdir(shut)
mine = os.path.join(shut, "mine.toml")


def set_title(job=mine, **environment):
    return run([TOOL, "set", job, "job.title", "Zinc Heron"], env={**os.environ, **environment})


def fresh_job():
    shutil.rmtree(shut)
    os.mkdir(shut)
    shutil.copy(EXAMPLE, mine)
    os.chmod(mine, 0o640)


fresh_job()
result = set_title(LD_PRELOAD=FAULTS, SWATHE_TEST_CALLS=COUNT)
was, now = read(EXAMPLE), read(mine)
check("set changes the job and says how", result.returncode == 0 and result.stdout == b""
      and now == was.replace(b"Tin Heron, spring covers", b"Zinc Heron") != was
      and result.stderr == b"job.title: Tin Heron, spring covers -> Zinc Heron\n", result.stderr)
check("set keeps the permissions", os.stat(mine).st_mode & 0o777 == 0o640, oct(os.stat(mine).st_mode))
with open(COUNT, encoding="utf-8") as file:
    calls = int(file.read().split()[0])
wrong, kept = [], 0
for kind in ("kill", "half", "full", "bad"):
    for call in range(1, calls + 1):
        fresh_job()
        result = set_title(LD_PRELOAD=FAULTS, SWATHE_TEST_FAULT=f"{kind}:{call}")
        kept += read(mine) == was
        if (read(mine) not in (was, now) or os.stat(mine).st_mode & 0o777 != 0o640
                or (result.returncode == 0) != (read(mine) == now and result.returncode >= 0)
                or (kind in ("full", "bad") and hidden_in(shut))):
            wrong.append((kind, call, result.returncode, result.stderr))
check(f"set, its {calls} calls failing one by one: the job is whole, old or new", not wrong, wrong[:5])
check("set: some of these kept the old job", kept > 0)
fresh_job()
link = os.path.join(shut, "link.toml")
os.symlink("mine.toml", link)
result = set_title(link)
check("set changes what a link leads to", result.returncode == 0 and os.path.islink(link)
      and read(mine) == now, result.stderr)

shutil.rmtree(WORK)
done()
