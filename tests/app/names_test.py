#!/usr/bin/env python3
"""Names of files and folders that are unlike others, folders that look like ours and are not, files
that are closed to writing, and limits on the stack.

usage: names_test.py TOOL"""

import json
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import EXAMPLE, TOP, check, done, files_in, hidden_in, read, run  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
WORK = tempfile.mkdtemp(prefix="swathe-names-")
os.chdir(WORK)
PLAIN = os.path.join(TOP, "tests", "golden", "jobs", "good-plain.toml")
MARK = ".stage-of-swathe"


def write(path, text, **more):
    with open(path, "wb") as file:
        file.write(text if isinstance(text, bytes) else text.encode())
    return path


def job(name):
    shutil.copy(PLAIN, name)
    return name


def one_line(result, exit_status, *words):
    return (result.returncode == exit_status and result.stderr.count(b"\n") == 1
            and all(word in result.stderr for word in words))


# --- folders of many jobs -------------------------------------------------------------------------
job("heron.toml")
for name, words in (("...toml", b"begins with a dot"), ("..toml", b"begins with a dot"),
                    (".toml", b"begins with a dot"), (".hidden.toml", b"begins with a dot"),
                    (".swathe-stage-1-0.toml", b"begins with a dot"), ("a..toml", b"ends with a dot"),
                    ("a .toml", b"ends with a space"), ("con.toml", b"is a device on Windows"),
                    ("NUL.toml", b"is a device on Windows"), ("com1.x.toml", b"is a device on Windows"),
                    ("a:b.toml", b"has a : in it"), ("a\\b.toml", b"has a \\ in it"),
                    ("a*.toml", b"has a * in it"), ("a?.toml", b"has a ? in it"),
                    ("a\nb.toml", b"U+000A"), ("a\u202eb.toml", b"U+202E")):
    job(name)
    before = sorted(os.listdir("."))
    result = run([TOOL, "make", "heron.toml", name, "-o", "out"])
    check(f"{name!r} among others: refused in one line, nothing is written",
          one_line(result, 2, words, b"rename the job file") and sorted(os.listdir(".")) == before,
          (result.returncode, result.stderr))
    os.remove(name)
for names in (("heron.toml", "Heron.toml"), ("\u00e4rger.toml", "a\u0308rger.toml"),
              ("\u00c4rger.toml", "a\u0308rger.toml")):
    for name in names:
        job(name)
    result = run([TOOL, "make", *names, "-o", "out"])
    check(f"{names!r}: one folder on some disks, refused in one line, nothing is written",
          one_line(result, 2, b"one folder on many disks", b"rename one") and not os.path.exists("out"),
          (result.returncode, result.stderr))
    for name in names[1:]:
        os.remove(name)
job("...toml")
result = run([TOOL, "make", "...toml", "-o", "out"])
check("such a job alone is made, into the folder that was named", result.returncode == 0
      and files_in("out") and sorted(os.listdir(".")).count("report.json") == 0, result.stderr)
shutil.rmtree("out")

# Bumpers and colors: names that are files' on no system; every file lies flat in its folder.
bumpers = ["..", ".hidden", "con", "NUL", "a:b", "a*b", "a?b", "A", "\u00e9", "e\u0301", "a.", "a "]
text = ('[job]\nseason = "none"\n[frame]\nwidth = "200 in"\ndepth = "40 in"\n[cloth]\ncolors = '
        '{ "../x" = "#ff0000", "con" = "#00ff00", ".c" = "#0000ff" }\n')
for k, name in enumerate(bumpers):
    text += (f'[[bumper]]\nname = "{name}"\nfrom = ["front", "{2 + 14 * k} in", "right"]\n'
             f'to = ["front", "{14 + 14 * k} in", "right"]\n')
write("odd.toml", text)
result = run([TOOL, "make", "odd.toml", "-o", "out"])
names = sorted(files_in("out")) if os.path.isdir("out") else []
check("bumpers with odd names are made", result.returncode == 0 and len(names) > 5 * len(bumpers),
      result.stderr.decode())
check("their files are named with letters, digits, - and _ alone", names and all(
    name.rsplit(".", 1)[0].replace("-", "").replace("_", "").isalnum() and name.isascii()
    and name[0] not in ".-" for name in names), names)
check("no two meet where case does not count", len({name.lower() for name in names}) == len(names))
check("none is a device", not any(name.split(".")[0].lower() in ("con", "nul") for name in names))
shutil.rmtree("out", ignore_errors=True)

# --- names of any bytes in what is said -----------------------------------------------------------
ODD = [b"h\xe9ron.toml", b"esc\x1b[31m.toml", b"two\nlines.toml", "c1\u009b2J.toml".encode(),
       "bidi\u202e.toml".encode(), b"x" * 240 + b".toml"]


def is_safe(text):
    """One can print it: valid UTF-8 and nothing that steers a terminal."""
    try:
        decoded = text.decode()
    except UnicodeDecodeError:
        return False
    return all(c == "\n" or (c.isprintable() and not 0x80 <= ord(c) < 0xa0) for c in decoded)


for name in ODD:
    good = os.path.join(os.fsencode(WORK), name)
    shutil.copy(PLAIN, good)
    for words in (["check"], ["list"], ["report"], ["make", "-o", b"out/" + name[:40]],
                  ["pattern", "-o", "out"], ["numerals", "-o", "out"], ["--verbose", "check"]):
        result = run([TOOL, words[-1] if words[0].startswith("--") else words[0], name,
                      *(words[:1] if words[0].startswith("--") else words[1:])])
        check(f"{name[:20]!r}: {words[0]} prints nothing that steers a terminal",
              result.returncode in (0, 2) and is_safe(result.stdout) and is_safe(result.stderr),
              (result.returncode, result.stdout[:200], result.stderr))
        if words == ["report"]:
            source = json.loads(result.stdout.decode())["job"]["source"]
            check(f"{name[:20]!r}: the report is UTF-8 and names the file", source.isprintable()
                  and source.endswith(".toml"), source)
    write(good, "[job]\ntitle = 1\n[frame]\nwidth = 2\n")
    lines = run([TOOL, "check", name]).stderr
    check(f"{name[:20]!r}: a fault a line", is_safe(lines) and lines.count(b"\n") == lines.count(b"expected")
          and lines.count(b"\n") == 3, lines)
    os.remove(good)
    for words in (["check", name], ["make", name, b"other" + name, "-o", b"out/" + name[:40]],
                  ["explain", name], ["seasons", name], [name], ["make", "heron.toml", "--scale", name],
                  ["check", "heron.toml", name], ["fonts", name]):
        result = run([TOOL, *words])
        check(f"{name[:20]!r}: {words[0]!r:.20} of nothing: said safely", result.returncode == 2
              and is_safe(result.stdout) and is_safe(result.stderr), (result.returncode, result.stderr))
shutil.rmtree("out", ignore_errors=True)
write("file", "mine")
result = run([TOOL, "make", "heron.toml", "-o", b"file/\xe9\n\x1b"])
check("a folder of any bytes that cannot be made: one line", one_line(result, 3, b"file")
      and is_safe(result.stderr), result.stderr)
result = run([TOOL, "new", b"new\xe9\n\x1b.toml"])
check("a new job of any bytes", result.returncode == 0 and is_safe(result.stderr), result.stderr)
result = run([TOOL, "new", b"new\xe9\n\x1b.toml"])
check("and again: one line", one_line(result, 2) and is_safe(result.stderr), result.stderr)

# --- how much is told -----------------------------------------------------------------------------
write("many.toml", "[job]\n" + "".join(f"wrong{k} = 1\n" for k in range(3000)))
result = run([TOOL, "check", "many.toml"])
lines = result.stderr.decode().splitlines()
check("of 3,000 faults 50 are told, and how many more there are", result.returncode == 2
      and len(lines) == 51 and lines[-1] == "many.toml: and 2952 more faults; correct these first",
      lines[-2:])
deep = "/".join(["d" * 200] * 12)
os.makedirs(deep)
result = run([TOOL, "check", deep + "/none.toml"])
check("a path of 2,400 letters is told short, its end too", one_line(result, 2, "…".encode(),
      b"/none.toml: no such file") and len(result.stderr) < 400, result.stderr)
write("long.toml", '[job]\nnumber = "' + "7" * 5000 + '"\n')
result = run([TOOL, "check", "long.toml"])
check("so is a value of 5,000", max(map(len, result.stderr.decode().splitlines())) < 200,
      result.stderr)

# --- folders that look like ours ------------------------------------------------------------------
for name, put in ((".swathe-stage-1-0", {"mine": b"mine"}), (".swathe-stage-notes", {"mine": b"mine"}),
                  (".swathe-stage-2-0", {"mine": b"mine", MARK: b"not the words"}), (".swathe-stage-3-0", {})):
    folder = os.path.join("out", name)
    os.makedirs(folder)
    os.chmod(folder, 0o755)
    for inside, bytes_ in put.items():
        write(os.path.join(folder, inside), bytes_)
os.makedirs("out/.swathe-stage-4-0", 0o700)
write("out/.swathe-stage-4-0/mine", "mine")
os.symlink(MARK, "out/.swathe-stage-4-0/" + MARK)
os.mkdir("out/.swathe-stage-5-0", 0o700)
result = run([TOOL, "make", "heron.toml", "-o", "out"])
check("folders named like a stage are no hindrance", result.returncode == 0, result.stderr)
check("what the user has put in them stays", all(
    os.path.exists(os.path.join("out", path)) for path in (
        ".swathe-stage-1-0/mine", ".swathe-stage-notes/mine", ".swathe-stage-2-0/mine",
        ".swathe-stage-2-0/" + MARK, ".swathe-stage-3-0", ".swathe-stage-4-0/mine")), hidden_in("out"))
check("an empty one that only a killed run leaves goes", not os.path.exists("out/.swathe-stage-5-0"))
shutil.rmtree("out")

# --- files that are closed to writing -------------------------------------------------------------
run([TOOL, "make", "heron.toml", "-o", "out"])
before = files_in("out")
last = sorted(before)[-1]
write(os.path.join("out", last), "mine")
os.chmod(os.path.join("out", last), 0o444)
mine = dict(before, **{last: b"mine"})
result = run([TOOL, "make", "heron.toml", "-o", "out"])
check("a read-only file is not replaced, and nothing is written", one_line(
    result, 3, os.path.join("out", last).encode(), b"is read-only") and files_in("out") == mine
    and not hidden_in("out"), result.stderr)
os.chmod(os.path.join("out", last), 0o644)
result = run([TOOL, "make", "heron.toml", "-o", "out"])
check("made writable it is", result.returncode == 0 and files_in("out") == before, result.stderr)
shutil.rmtree("out")

# --- a small stack --------------------------------------------------------------------------------
big = shutil.copy(EXAMPLE, "big.toml")
want = {}
for jobs in ([big], ["heron.toml", big]):
    for stack in (8192, 1024, 256, 64):
        shutil.rmtree("out", ignore_errors=True)
        result = subprocess.run(["sh", "-c", f'ulimit -s {stack}; exec "$@"', "sh", TOOL, "make", *jobs,
                                 "-o", "out"], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        seen = [(path, read(os.path.join(path, name))) for path, _, names in sorted(os.walk("out"))
                for name in sorted(names)]
        want.setdefault(len(jobs), seen)
        check(f"{len(jobs)} jobs with a stack of {stack} KiB: made, the same bytes",
              result.returncode == 0 and seen == want[len(jobs)] and len(seen) > 10,
              (result.returncode, result.stderr))
result = subprocess.run(["sh", "-c", 'ulimit -s 64; exec "$@"', "sh", TOOL, "check", "none.toml"],
                        stdout=subprocess.PIPE, stderr=subprocess.PIPE)
check("a fault is told with a stack of 64 KiB too", one_line(result, 2, b"none.toml"), result)

# There the work has a thread of its own, which holds interrupts back while it tidies up.
stages = 0
for k in range(6):
    shutil.rmtree("out", ignore_errors=True)
    process = subprocess.Popen(["sh", "-c", 'ulimit -s 64; exec "$@"', "sh", TOOL, "make", big, "-o", "out"],
                               stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    while process.poll() is None and not (os.path.isdir("out") and hidden_in("out")):
        time.sleep(0.001)
    time.sleep(0.002 * k)
    process.send_signal((signal.SIGTERM, signal.SIGINT)[k % 2])
    if process.wait() not in (0, -signal.SIGTERM, -signal.SIGINT):
        stages += 1
    stages += os.path.isdir("out") and len(hidden_in("out"))
check("interrupted with a stack of 64 KiB: no stage stays", stages == 0, stages)

# --- the date in PDF files ------------------------------------------------------------------------
shutil.rmtree("out", ignore_errors=True)
for words in (["make", "heron.toml", "-o", "out"], ["make", "heron.toml", big, "-o", "out"],
              ["fonts", "-o", "out"]):
    for epoch in ("soon", "-1", "1.5", "99999999999999"):
        result = run([TOOL, *words], env=dict(os.environ, SOURCE_DATE_EPOCH=epoch))
        check(f"{' '.join(words[:3])}: SOURCE_DATE_EPOCH={epoch} is refused", one_line(
            result, 2, b"SOURCE_DATE_EPOCH", epoch.encode(), b"expected whole seconds")
            and not os.path.exists("out") and not result.stdout, result.stderr)
for epoch in ("", "0", "1767225599"):
    result = run([TOOL, "pattern", "heron.toml", "-o", "out"],
                 env=dict(os.environ, SOURCE_DATE_EPOCH=epoch))
    check(f"SOURCE_DATE_EPOCH={epoch!r} is taken", result.returncode == 0, result.stderr)

# --- files that a job names -----------------------------------------------------------------------
os.makedirs("club/rules")
os.makedirs("club/fonts")
FONT = os.path.join(TOP, "fonts-open", "anton", "Anton-Regular.ttf")
for name in ("OK.TTF", "OK.OTF", "OK.WOFF2", "ok.Ttf"):
    shutil.copy(FONT, os.path.join("club", name))
    write("club/font.toml", read(EXAMPLE).replace(b"[numerals]", f'[numerals]\nfont = "{name}" #'.encode())
          if b"\nfont" not in read(EXAMPLE) else b"\n".join(
              f'font = "{name}"'.encode() if line.startswith(b"font") else line
              for line in read(EXAMPLE).split(b"\n")))
    result = run([TOOL, "check", "club/font.toml"])
    check(f"a font called {name} is a file", result.returncode in (0, 1), result.stderr)
write("club/OWN.TOML", 'season = "own"\n')
write("club/rules/bad.toml", "season = 3\nwrong = 1\n")
season = read(PLAIN)
write("club/own.toml", season.replace(b'"none"', b'"OWN.TOML"'))
result = run([TOOL, "check", "club/own.toml"])
check("a season called OWN.TOML is a file", result.returncode == 0 and b"own" in result.stdout,
      result.stderr)
write("club/bad.toml", season.replace(b'"none"', b'"rules/bad.toml"'))
result = run([TOOL, "check", "club/bad.toml"])
places = [line.split(b":")[0] for line in result.stderr.splitlines()]
check("faults of a rule file stand at a path that leads there", len(places) == 2
      and all(place == b"club/rules/bad.toml" and os.path.exists(place) for place in places), result.stderr)
write("club/bad.toml", season.replace(b'"none"', f'"{WORK}/club/rules/bad.toml"'.encode()))
result = run([TOOL, "check", "club/bad.toml"])
check("also where the job names it by its whole path", result.stderr.startswith(
    f"{WORK}/club/rules/bad.toml:1:10: ".encode()), result.stderr)

# --- no number, no title --------------------------------------------------------------------------
write("small.toml", '[job]\nnumber = "20486"\n[frame]\nwidth = "10 in"\ndepth = "10 in"\n[numerals]\nheight = '
      '"8 in"\n[[bumper]]\nname = "A"\nfrom = ["front", "50%"]\nto = ["back", "50%"]\n[[bumper]]\nname = "B"\n'
      'from = ["back", "50%"]\nto = ["front", "50%"]\n')
result = run([TOOL, "views", "small.toml", "-o", "out2"])
check("views of a number that fits nowhere say so", result.returncode == 2
      and b"does not fit" in result.stderr and b"has no number" not in result.stderr
      and all(line.startswith(b"small.toml:2:10: ") for line in result.stderr.splitlines())
      and not os.path.exists("out2"), result.stderr)
for command in ("views", "numerals"):
    result = run([TOOL, command, "heron.toml", "-o", "out2"])
    check(f"{command} of a job without number say so", one_line(result, 2, b"has no number",
          b"expected job.number"), result.stderr)
for command in ("check", "list"):
    result = run([TOOL, command, "small.toml"])
    check(f"{command} calls a job without title by its file", result.stdout.startswith(b"small.toml"),
          result.stdout[:80])

os.chdir("/")
shutil.rmtree(WORK)
done()
