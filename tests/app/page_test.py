#!/usr/bin/env python3
"""\"swathe page\": the page as it lies where swathe was installed, or was built; never over a file;
and one line where there is none. The page is made up here: what is in it is no matter.

usage: page_test.py TOOL"""

import os
import shutil
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import check, done  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
WORK = tempfile.mkdtemp(prefix="swathe-page-")
PAGE = b"<!doctype html>\n<title>\xc3\xbc\0 and all bytes</title>" + bytes(range(256)) * 4000


def tree(name, tool, page=None):
    """A copy of the tool, and of the page, as they would lie; the tool's path."""
    where = os.path.join(WORK, name)
    for path, make in ((tool, lambda to: shutil.copy(TOOL, to)),
                       (page, lambda to: open(to, "wb").write(PAGE))):
        if path:
            to = os.path.join(where, path)
            os.makedirs(os.path.dirname(to), exist_ok=True)
            make(to)
    return os.path.join(where, tool)


def run(tool, *words):
    folder = tempfile.mkdtemp(dir=WORK)
    ran = subprocess.run([tool, "page", *words], cwd=folder, capture_output=True)
    return ran.returncode, ran.stdout, ran.stderr.decode(), folder


def content(folder, name):
    with open(os.path.join(folder, name), "rb") as file:
        return file.read()


installed = tree("installed", "bin/swathe", "share/swathe/swathe.html")
built = tree("built", "build-tests/swathe", "build-page/swathe.html")
for kind, tool in (("installed", installed), ("built", built)):
    status, _, err, folder = run(tool)
    check(f"{kind}: the page is given", status == 0 and content(folder, "swathe.html") == PAGE, err)
    status, _, err, folder = run(tool, "mine.html")
    check(f"{kind}: under another name", status == 0 and os.listdir(folder) == ["mine.html"]
          and content(folder, "mine.html") == PAGE, err)
status, out, err, folder = run(installed, "-")
check("to standard output", status == 0 and out == PAGE and os.listdir(folder) == [], err)

link = os.path.join(WORK, "link")
os.symlink(installed, link)
status, _, err, folder = run(link)
check("by a link to the command", status == 0 and content(folder, "swathe.html") == PAGE, err)

open(os.path.join(WORK, "there.html"), "w").write("ours")
status, _, err, _ = run(installed, os.path.join(WORK, "there.html"))
check("a file that is there stays", status == 2 and content(WORK, "there.html") == b"ours"
      and "stays as it is" in err, err)

status, out, err, folder = run(tree("alone", "bin/swathe"))
check("where there is none, one line says what makes it", status == 3 and out == b""
      and err.count("\n") == 1 and "examples/page.sh" in err and os.listdir(folder) == [], err)
shutil.rmtree(WORK)
done()
