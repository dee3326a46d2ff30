#!/usr/bin/env python3
"""The same job gives the same bytes, whatever is round about: the time zone, the locale, the working
folder, the umask, what is in the environment, and how the tool was built.

usage: determinism_test.py TOOL FAULTS_LIBRARY [OTHER_TOOL...]
OTHER_TOOL: the same source built another way (another compiler, -O0); every file it makes of every
example is compared too."""

import glob
import os
import re
import shutil
import stat
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import EXAMPLE, TOP, check, done, files_in, run  # noqa: E402

TOOL, FAULTS, *OTHERS = (os.path.abspath(path) for path in sys.argv[1:])
WORK = tempfile.mkdtemp(prefix="swathe-same-")
PLAIN = {name: text for name, text in os.environ.items()
         if name != "SOURCE_DATE_EPOCH" and not name.startswith("LC_")}


def make(tool=TOOL, job=EXAMPLE, command="make", environment=None, umask=0o022, **more):
    """The files that the job comes to, and the modes they have."""
    folder = tempfile.mkdtemp(dir=WORK)
    before = os.umask(umask)
    try:
        result = run([tool, command, job, "-o", os.path.join(folder, "out")],
                     env=PLAIN if environment is None else environment, **more)
    finally:
        os.umask(before)
    out = os.path.join(folder, "out")
    assert result.returncode == 0, result.stderr
    modes = {stat.S_IMODE(os.stat(path).st_mode) for path in glob.glob(os.path.join(out, "*"))}
    files, folder_mode = files_in(out), stat.S_IMODE(os.stat(out).st_mode)
    shutil.rmtree(folder)
    return files, modes, folder_mode


def apart(files, others):
    return sorted(name for name in files.keys() | others.keys()
                  if files.get(name) != others.get(name))


def same(what, files):
    check(f"{what}: the same bytes", files == good, apart(files, good))


good, modes, _ = make()
check("the example makes many files", len(good) > 20, sorted(good))
views = make(command="views")[0]
check("views has dots, too", any(name.endswith(".png") for name in views), sorted(views))
check("views again: the same bytes", make(command="views")[0] == views)
same("again", make()[0])
for zone in ("Pacific/Kiritimati", "America/St_Johns", "UTC", "no/such/zone"):
    same(f"TZ={zone}", make(environment=dict(PLAIN, TZ=zone))[0])
# Locales that the tool does not ask for, but a program with the library may have set: the faults
# library sets them in it.
LOCALES = os.path.join(WORK, "locales")
os.mkdir(LOCALES)
for locale in ("de_DE", "tr_TR"):
    run(["localedef", "-i", locale, "-f", "UTF-8", os.path.join(LOCALES, locale + ".UTF-8")])
    check(f"{locale}.UTF-8 can be had (Debian package: locales)",
          os.path.isdir(os.path.join(LOCALES, locale + ".UTF-8")))
    same(f"LC_ALL={locale}.UTF-8, set", make(environment=dict(
        PLAIN, LOCPATH=LOCALES, LC_ALL=locale + ".UTF-8", LD_PRELOAD=FAULTS,
        SWATHE_TEST_LOCALE="1"))[0])
same("LC_ALL=no_such_locale", make(environment=dict(PLAIN, LC_ALL="no_such_locale"))[0])
same("nothing in the environment", make(environment={})[0])
same("no home, no temporary folder", make(environment=dict(PLAIN, HOME="/nowhere", TMPDIR="/nowhere",
                                                           XDG_CACHE_HOME="/nowhere"))[0])
odd = os.path.join(WORK, "a folder\twith ü")
os.mkdir(odd)
shutil.copy(EXAMPLE, odd)
same("from another working folder, by a name without a path",
     make(cwd=odd, job=os.path.basename(EXAMPLE))[0])
for umask, file_mode, folder_mode in ((0o022, 0o644, 0o755), (0o077, 0o600, 0o700),
                                      (0o002, 0o664, 0o775)):
    files, modes, of_folder = make(umask=umask)
    same(f"umask {umask:03o}", files)
    check(f"umask {umask:03o}: the modes are as it says", modes == {file_mode}
          and of_folder == folder_mode, (modes, of_folder))

# Dates as in ISO 32000-1, 7.9.4: D:YYYYMMDDHHmmSS and the zone. Cairo 1.16 leaves out the "D:".
DATE = re.compile(rb"/\w*Date \((?:D:)?(\d{14})[^)]*\)")
for epoch, date in ((0, b"19700101000000"), (1767225600, b"20260101000000")):
    files = make(environment=dict(PLAIN, SOURCE_DATE_EPOCH=str(epoch)))[0]
    dates = {name: DATE.findall(text) for name, text in files.items() if name.endswith(".pdf")}
    check(f"SOURCE_DATE_EPOCH={epoch} is the date of every PDF, and its only one",
          dates and all(found == [date] for found in dates.values()), dates)
    undated = {name: DATE.sub(b"(D)", text) for name, text in files.items()}
    check("nothing but the date is another", undated == {name: DATE.sub(b"(D)", text)
                                                         for name, text in good.items()})
    check("only in PDF files", all(name.endswith(".pdf") for name in apart(files, good)))
same("SOURCE_DATE_EPOCH=\"\", which is none", make(environment=dict(PLAIN, SOURCE_DATE_EPOCH=""))[0])
for epoch in ("-1", "tomorrow", "253402300800", "1e9"):
    refused = run([TOOL, "make", EXAMPLE, "-o", os.path.join(WORK, "undated")],
                  env=dict(PLAIN, SOURCE_DATE_EPOCH=epoch))
    check(f"SOURCE_DATE_EPOCH=\"{epoch}\", which is no date, is refused by its name",
          refused.returncode == 2 and b"SOURCE_DATE_EPOCH" in refused.stderr, refused.stderr)

# Other builds.
JOBS = [EXAMPLE] + sorted(glob.glob(os.path.join(TOP, "examples", "kinds", "*.toml"))
                          + glob.glob(os.path.join(TOP, "tests", "golden", "jobs", "good*.toml")))
for other in OTHERS:
    count, wrong = 0, []
    for job in JOBS:
        for command in ("make", "views"):
            if run([TOOL, command, job, "-o", os.path.join(WORK, "probe")]).returncode != 0:
                continue  # no number, so no views
            files, others = make(job=job, command=command)[0], make(other, job, command)[0]
            count += len(files)
            wrong += [(os.path.basename(job), name) for name in apart(files, others)]
    check(f"built another way ({other}): {count} files of {len(JOBS)} jobs have the same bytes",
          count > 100 and not wrong, wrong[:20])

shutil.rmtree(WORK)
done()
