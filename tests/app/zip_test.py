#!/usr/bin/env python3
"""What is made, and where it goes: some kinds only, all in one archive, and a rule that is not met.

usage: zip_test.py TOOL FAULTS_LIBRARY"""

import os
import shutil
import signal
import sys
import tempfile
import zipfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import EXAMPLE, TOP, check, done, files_in, hidden_in, read, run  # noqa: E402

TOOL, FAULTS = (os.path.abspath(path) for path in sys.argv[1:3])
os.chdir(tempfile.mkdtemp(prefix="swathe-zip-"))
FAILS = os.path.join(TOP, "tests", "golden", "jobs", "fails-rules.toml")
KINDS = ["pattern", "tiles", "measures", "templates", "numerals", "views", "book", "model"]


def make(*words, job=EXAMPLE, **more):
    return run([TOOL, "make", job, *words], **more)


# --- all of it, and some kinds of it --------------------------------------------------------------
result = make("-o", "all")
everything = files_in("all")
check("the example makes", result.returncode == 0, result.stderr.decode())
check("where to start comes first in any listing", sorted(everything)[0] == "00-start-here.pdf"
      and result.stdout.splitlines()[1].startswith(b"all/00-start-here.pdf"), sorted(everything))
parts = {}
for kind in KINDS:
    result = make("--only", kind, "-o", kind)
    parts[kind] = files_in(kind)
    same = {name: found for name, found in parts[kind].items() if not name.endswith(".png")}
    check(f"--only {kind} makes files of everything, the same bytes", result.returncode == 0 and same
          and all(everything.get(name) == found for name, found in same.items()), result.stderr)
whole = {name for part in parts.values() for name in part if not name.endswith(".png")}
check("the kinds together are everything but where to start and the report",
      set(everything) - whole == {"00-start-here.pdf", "report.json"}, set(everything) ^ whole)
for kind, names in (("tiles", {"A-tiles.pdf", "B-tiles.pdf", "test-page.pdf"}),
                    ("measures", {"A-measures.pdf", "B-measures.pdf"}), ("book", {"book.pdf"}),
                    ("model", {"A-cover.obj", "B-cover.obj"})):
    check(f"--only {kind} is what it says", set(parts[kind]) == names, set(parts[kind]))
check("several kinds in one word, or one by one",
      make("--only", "book,measures", "-o", "two").returncode == 0
      and make("--only", "book", "--only", "measures", "-o", "three").returncode == 0
      and files_in("two") == files_in("three") == {**parts["book"], **parts["measures"]})
for words in (["--only", "boook"], ["--only", ""], ["--only", "tiles,all"]):
    result = make(*words, "-o", "none")
    check(f"{' '.join(words)!r} is refused, and the kinds are named", result.returncode == 2
          and all(kind.encode() in result.stderr for kind in KINDS) and not os.path.exists("none")
          and result.stderr.count(b"\n") == 2, (result.returncode, result.stderr))

# --- one archive ----------------------------------------------------------------------------------
result = make("--zip", "sheets.zip")
check("an archive is made, and no folder", result.returncode == 0 and os.path.isfile("sheets.zip")
      and not os.path.exists("out"), result.stderr.decode())
with zipfile.ZipFile("sheets.zip") as archive:
    check("another program finds no fault in it", archive.testzip() is None)
    names = archive.namelist()
    check("it has the files that the folder has, the same bytes", {name: archive.read(name)
          for name in names} == everything and len(names) == len(set(names)))
    check("where to start comes first", names[0] == "00-start-here.pdf")
    check("their date is that of the PDF files", {info.date_time for info in archive.infolist()}
          == {(2000, 1, 1, 0, 0, 0)}, archive.infolist()[0])
    check("what can be shorter is", all(info.compress_size <= info.file_size
                                        for info in archive.infolist())
          and os.path.getsize("sheets.zip") < sum(map(len, everything.values())) / 2)
result = run(["unzip", "-t", "sheets.zip"])
check("unzip finds none either", result.returncode == 0 and b"No errors" in result.stdout,
      result.stdout)
before = read("sheets.zip")
make("--zip", "again.zip", env={**os.environ, "TZ": "Pacific/Auckland"})
check("the same job gives the same bytes, in any time zone", read("again.zip") == before)
make("--zip", "dated.zip", env={**os.environ, "SOURCE_DATE_EPOCH": "1000000000"})
with zipfile.ZipFile("dated.zip") as archive:
    # date -u -d @1000000000: 2001-09-09 01:46:40
    check("another date is the files' own", archive.infolist()[0].date_time == (2001, 9, 9, 1, 46, 40))
result = make("--only", "tiles", "--zip", "deep/er/some.zip")
with zipfile.ZipFile("deep/er/some.zip") as archive:
    check("some kinds go into an archive too, in a folder that is made",
          {name: archive.read(name) for name in archive.namelist()} == parts["tiles"])
result = make("--zip", "both.zip", "-o", "both")
check("with a folder asked for, both are made", read("both.zip") == before
      and files_in("both") == everything)
shutil.copy(EXAMPLE, "mine.toml")
for name in ("mine.toml", ".zip", "", "folder/"):
    result = make("--zip", name, job="mine.toml")
    check(f"--zip {name!r} is refused", result.returncode == 2 and b"expected one like" in result.stderr
          and read("mine.toml") == read(EXAMPLE), result.stderr)
result = run([TOOL, "make", EXAMPLE, FAILS, "--zip", "many.zip"])
check("an archive takes one job", result.returncode == 2 and b"--zip takes one job" in result.stderr
      and not os.path.exists("many.zip"), result.stderr)
os.mkdir("folder.zip")
os.symlink("/nowhere/at/all", "link.zip")
for name, words in (("folder.zip", b"is a folder"), ("link.zip", b"is a link")):
    result = make("--zip", name)
    check(f"{name}: exit 3 and one line", result.returncode == 3 and words in result.stderr
          and result.stderr.count(b"\n") == 1, result.stderr)

# Whole or not at all: killed, and without room, at each call to the disk.
make("--zip", "count.zip", env={**os.environ, "LD_PRELOAD": FAULTS, "SWATHE_TEST_CALLS": "calls"})
calls = int(read("calls").split()[0])
check("the calls to the disk are seen", calls > 4, calls)
for kind, status in (("kill", -signal.SIGKILL), ("half", None), ("full", 3)):
    wrong, hit = [], 0
    for call in range(1, calls + 1):
        shutil.rmtree("killed", ignore_errors=True)
        os.mkdir("killed")
        with open("killed/sheets.zip", "wb") as file:
            file.write(b"old")
        result = make("--zip", "killed/sheets.zip",
                      env={**os.environ, "LD_PRELOAD": FAULTS, "SWATHE_TEST_FAULT": f"{kind}:{call}"})
        hit += result.returncode == status
        if read("killed/sheets.zip") not in (b"old", before) or len(files_in("killed")) != 1:
            wrong.append((call, result.returncode))
        if kind == "full" and hidden_in("killed"):
            wrong.append((call, hidden_in("killed")))
    check(f"{kind} at each of {calls} calls: the archive is whole, old or new", not wrong
          and (hit > 0 or status is None), (wrong[:5], hit))

# --- a rule that is not met -----------------------------------------------------------------------
result = make("-o", "fails", job=FAILS)
loose, talk = files_in("fails"), result.stderr.decode()
listed = run([TOOL, "check", FAILS])
failed = int(listed.stdout.decode().split(" failed")[0].split()[-1])
check("a job that breaks rules is made all the same", result.returncode == 0 and len(loose) > 5
      and failed > 1, (result.returncode, failed))
first = [line.split() for line in listed.stdout.decode().splitlines() if line.startswith("FAIL")][0]
check("make says how many, and names the worst", f"{failed} rules are not met" in talk
      and "The worst:" in talk and first[1].rstrip(":") in " ".join(talk.split()), talk)
strict = make("-o", "strict", "--strict", job=FAILS)
check("--strict ends with 1, and everything is written", strict.returncode == 1
      and files_in("strict") == loose, strict.returncode)
check("--strict ends with 0 where all are met", make("-o", "met", "--strict").returncode == 0)
many = run([TOOL, "make", EXAMPLE, FAILS, "-o", "many", "--strict"])
check("of many jobs one is enough", many.returncode == 1 and b"2 jobs are made." in many.stderr,
      many.stderr.decode())


def words_of(pdf):
    return " ".join(run(["pdftotext", "-l", "1", pdf, "-"]).stdout.decode().split())


for name in ("00-start-here.pdf", "book.pdf"):
    check(f"{name} says so on its first page", f"NOT READY: {failed} rules not met"
          in words_of(os.path.join("fails", name)), words_of(os.path.join("fails", name)))
    check(f"{name} of a job that meets them does not", "NOT READY" not in words_of(os.path.join("all", name))
          and "Rules of 2026: met" in words_of(os.path.join("all", name)))
done()
