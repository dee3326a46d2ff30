#!/usr/bin/env python3
"""What a run leaves of an earlier run's files in its folder: it deletes those of its own that it no
longer makes, and never another's, nor one that somebody has changed; whenever it is killed.

usage: old_files_test.py TOOL FAULTS_LIBRARY

Killed, and without room, a run makes the patterns alone; with SWATHE_WHOLE=1 all files of the job."""

import contextlib
import functools
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import RECORD, TOP, check, done, files_in, hidden_in, read, run  # noqa: E402

TOOL, FAULTS = (os.path.abspath(path) for path in sys.argv[1:3])
os.chdir(tempfile.mkdtemp(prefix="swathe-old-"))
OUT = "out"
PLAIN = read(os.path.join(TOP, "tests", "golden", "jobs", "good-plain.toml"))


def write(path, data):
    with open(path, "wb") as file:
        file.write(data)


# Bumper A of the old job is called C in the new one: its files are made no more.
assert PLAIN.count(b'name = "A"') == 1, "the plain job has changed: change it here too"
write("old.toml", PLAIN)
write("new.toml", PLAIN.replace(b'name = "A"', b'name = "C"'))


def make(job, *more, words=(), folder=OUT, fault=None, calls=None, command="make"):
    environment = dict(os.environ)
    if fault or calls:
        environment["LD_PRELOAD"] = FAULTS
    if fault:
        environment["SWATHE_TEST_FAULT"] = fault
    if calls:
        environment["SWATHE_TEST_CALLS"] = calls
    return run([TOOL, command, job, "-o", folder, *more, *words], env=environment)


def fresh():
    shutil.rmtree(OUT, ignore_errors=True)
    shutil.copytree("before", OUT, symlinks=True)


def said(result):
    return [line for line in result.stderr.decode().splitlines()
            if line.startswith("Deleted") or line.startswith("Kept")]


result = make("old.toml", folder="before")
check("the old job makes, and deletes nothing", result.returncode == 0 and not said(result),
      result.stderr.decode())
make("new.toml", folder="after")
old, new = files_in("before"), files_in("after")
gone = sorted(set(old) - set(new))
check("the new job makes some files no more", len(gone) > 4 and set(new) - set(old), gone)
check("the record is one that sha256sum takes", run(["sha256sum", "--check", "--strict", "--quiet", RECORD],
      cwd="before").returncode == 0)
check("it names every file, and no other", {line.split("  ")[1] for line in
      read(os.path.join("before", RECORD)).decode().splitlines() if not line.startswith("#")} == set(old))

fresh()
result = make("new.toml")
check("the next run deletes what it makes no more", files_in(OUT) == new and not hidden_in(OUT))
check("and says so in one line", len(said(result)) == 1
      and f"Deleted {len(gone)} files of an earlier run" in said(result)[0], said(result))
check("the record is then that of a folder that was empty",
      read(os.path.join(OUT, RECORD)) == read(os.path.join("after", RECORD)))
check("and the next run has nothing to say", not said(make("new.toml")) and files_in(OUT) == new)
check("quiet, it says nothing", make("old.toml", "--quiet").stderr == b"" and files_in(OUT) == old)

# --- what is another's, and what somebody has changed ---------------------------------------------
fresh()
others = {"mine.pdf": b"mine", "C-notes.txt": b"mine", "A-mine.pdf": b"mine"}
for name, data in others.items():
    write(os.path.join(OUT, name), data)
changed = gone[0]
write(os.path.join(OUT, changed), old[changed] + b" ")
result = make("new.toml")
check("foreign files stay, and one that was changed", files_in(OUT)
      == {**new, **others, changed: old[changed] + b" "}, sorted(files_in(OUT)))
check("that it was kept is said", len(said(result)) == 1 and "Kept 1 file" in said(result)[0]
      and changed in said(result)[0], said(result))
check("once", not said(make("new.toml")))

for what, prepare, stays in (
        ("a link", lambda path: os.symlink("../before/" + changed, path), os.path.islink),
        ("a dangling link", lambda path: os.symlink("/nowhere/at/all", path), os.path.islink),
        ("a folder", lambda path: os.mkdir(path), os.path.isdir),
        ("a pipe", lambda path: os.mkfifo(path), os.path.exists),
        ("a hard link to the same bytes", lambda path: os.link("linked", path), None)):
    fresh()
    path = os.path.join(OUT, changed)
    os.remove(path)
    write("linked", old[changed])
    prepare(path)
    result = make("new.toml")
    check(f"{what} where a file was", result.returncode == 0 and (stays is None or stays(path))
          and {name: found for name, found in ((name, read(os.path.join(OUT, name))) for name in new)}
          == new and read("linked") == old[changed], result.stderr)
fresh()
os.chmod(os.path.join(OUT, changed), 0o444)
make("new.toml")
check("a read-only file stays", os.path.exists(os.path.join(OUT, changed)))
fresh()
os.remove(os.path.join(OUT, changed))
result = make("new.toml")
check("one that is gone already is not told of", result.returncode == 0
      and f"Deleted {len(gone) - 1} files" in said(result)[0] and files_in(OUT) == new, said(result))

# --- some kinds only ------------------------------------------------------------------------------
fresh()
result = make("new.toml", "--only", "tiles")
tiles_gone = {name for name in gone if "-tiles" in name or "-fold" in name}
check("a run of some kinds deletes files of those kinds alone", tiles_gone
      and set(old) - set(files_in(OUT)) == tiles_gone, set(old) - set(files_in(OUT)))
make("new.toml")
check("the others go with the run that makes their kinds", files_in(OUT) == new)
fresh()
make("old.toml", command="pattern")
check("swathe pattern leaves numerals, views and the book", files_in(OUT) == old)

# --- records that are not ours --------------------------------------------------------------------
for what, record in (("empty", b""), ("a stranger's", b"mine\n"), ("huge", b"#" * (3 << 20)),
                     ("broken off", read(os.path.join("before", RECORD))[:-7]),
                     ("with names that lead out", read(os.path.join("before", RECORD)).replace(
                         b"  A-", b"  ../before/A-"))):
    fresh()
    write(os.path.join(OUT, RECORD), record)
    result = make("new.toml")
    check(f"a record that is {what}: nothing is deleted", result.returncode == 0 and not said(result)
          and files_in(OUT) == {**old, **new} and files_in("before") == old, result.stderr)
for what, prepare in (("a link", lambda path: os.symlink("../before/" + RECORD, path)),
                      ("a folder", os.mkdir), ("a pipe", os.mkfifo)):
    fresh()
    os.remove(os.path.join(OUT, RECORD))
    prepare(os.path.join(OUT, RECORD))
    result = make("new.toml")
    check(f"{what} in the record's place: exit 3, one line, nothing is touched",
          result.returncode == 3 and result.stderr.count(b"\n") == 1 and files_in(OUT) == old,
          (result.returncode, result.stderr))

# --- killed, and without room ---------------------------------------------------------------------
KINDS = [] if "SWATHE_WHOLE" in os.environ else ["--only", "pattern"]
whole_job = make
make = functools.partial(whole_job, words=KINDS)
for job, folder in (("old.toml", "before"), ("new.toml", "after")):
    shutil.rmtree(folder)
    make(job, folder=folder)
old, new = files_in("before"), files_in("after")
check("patterns alone: the new job makes some files no more", set(old) - set(new) and set(new) - set(old))
fresh()
make("new.toml", calls="calls")
calls, openings = (int(word) for word in read("calls").split())
check("the calls to the disk are seen", calls > 4 * len(new), calls)
seed = int(os.environ.get("SWATHE_SEED", random.randrange(1 << 30)))


def whole():
    """Every file is one of the two jobs', whole."""
    return all(found in (old.get(name), new.get(name)) for name, found in files_in(OUT).items())


for kind in ("kill", "half"):
    wrong, seen = [], set()
    for call in range(1, calls + 1):
        fresh()
        write(os.path.join(OUT, "mine.pdf"), b"mine")
        result = make("new.toml", fault=f"{kind}:{call}")
        left = files_in(OUT)
        if left.pop("mine.pdf", None) != b"mine":
            wrong.append((call, "took another's"))
        os.remove(os.path.join(OUT, "mine.pdf"))
        if not whole():
            wrong.append((call, "not whole"))
        seen.add(len(left))
        # Whatever the moment: the next run knows of every file that is there, whichever job it is of.
        job, want = (("old.toml", old), ("new.toml", new))[call % 2]
        after = make(job)
        # (A stage without its whole mark stays hidden there: nobody can tell whose it is.)
        if after.returncode != 0 or files_in(OUT) != want:
            wrong.append((call, sorted(set(files_in(OUT)) ^ set(want))))
    check(f"{kind} at each of {calls} calls: the next run leaves its own files and no other", not wrong,
          wrong[:5])
    check(f"{kind}: runs were killed before, between and after", kind == "half"
          or {len(old), len(new)} < seen or len(seen) > 3, seen)
for kind in ("full", "bad"):
    wrong = []
    for call in range(1, calls + 1):
        fresh()
        result = make("new.toml", fault=f"{kind}:{call}")
        if result.returncode not in (0, 3) or not whole() or hidden_in(OUT):
            wrong.append((call, result.returncode, result.stderr))
        if kind == "full" and files_in(OUT) not in (old, new):
            wrong.append((call, "neither old nor new"))
        make("new.toml")
        if files_in(OUT) != new:
            wrong.append((call, sorted(files_in(OUT))))
    check(f"{kind} at each of {calls} calls: files are whole, and the next run tidies up", not wrong, wrong[:5])
wrong = []
for opening in range(1, openings + 1):
    fresh()
    result = make("new.toml", fault=f"many:{opening}")
    if result.returncode == 0:
        if not whole() or not set(new) <= set(files_in(OUT)):
            wrong.append((opening, "not all is new"))
    elif files_in(OUT) != old or result.stderr.count(b"\n") != 1:
        wrong.append((opening, result.returncode, result.stderr))
    make("new.toml")
    if files_in(OUT) != new:
        wrong.append((opening, sorted(files_in(OUT))))
check(f"each of {openings} openings fails: old or new, and the next run tidies up", not wrong, wrong[:5])

drawn = random.Random(seed)
begin = time.monotonic()
make("new.toml")
length = time.monotonic() - begin
wrong = []
for name in ("SIGKILL", "SIGTERM") * int(os.environ.get("SWATHE_DRAWN", 8)):
    fresh()
    process = subprocess.Popen([TOOL, "make", "new.toml", "-o", OUT, *KINDS], stdout=subprocess.DEVNULL,
                               stderr=subprocess.DEVNULL)
    time.sleep(drawn.uniform(0, length))
    process.send_signal(getattr(signal, name))
    process.wait()
    if not whole():
        wrong.append(sorted(files_in(OUT)))
    make("old.toml")
    if files_in(OUT) != old:
        wrong.append(sorted(files_in(OUT)))
check(f"killed at drawn moments (SWATHE_SEED={seed}): the next run tidies up", not wrong, wrong[:3])

# Two at once, which make each other's files no more.
wrong = []
for turn in range(8):
    fresh()
    runs = [subprocess.Popen([TOOL, "make", job, "-o", OUT, *KINDS], stdout=subprocess.DEVNULL,
                             stderr=subprocess.DEVNULL) for job in ("old.toml", "new.toml")]
    if [one.wait() for one in runs] != [0, 0] or files_in(OUT) not in (old, new):
        wrong.append(sorted(files_in(OUT)))
check("two runs at once: the set is one run's", not wrong, wrong[:2])


@contextlib.contextmanager
def small_disk(size):
    os.makedirs("disk", exist_ok=True)
    mounted = run(["mount", "-t", "tmpfs", "-o", f"size={size}", "none", "disk"])
    try:
        yield mounted.returncode == 0
    finally:
        if mounted.returncode == 0:
            run(["umount", "disk"])


# Room for the old set, and for ever more of the new one.
total = sum(4096 * (1 + len(found) // 4096) for found in old.values())
ends = set()
for more in (8, 200, 600, 1400, 8000):
    with small_disk(f"{total // 1024 + more}k") as mounted:
        if not check(f"a disk with {more} KiB to spare can be mounted (this suite wants root)", mounted):
            break
        shutil.copytree("before", "disk/out")
        result = make("new.toml", folder="disk/out")
        ends.add(result.returncode)
        check(f"{more} KiB to spare: all old or all new", files_in("disk/out")
              == (new if result.returncode == 0 else old) and not hidden_in("disk/out"),
              (result.returncode, result.stderr))
check("some had room, and some had not", ends == {0, 3}, ends)
done()
