#!/usr/bin/env python3
"""The questions of "swathe new", asked on a pseudo-terminal: answered, answered with nonsense, left
at each question by an end of input and by Ctrl-C, when nothing is written. And where no terminal is
there: no question, the same file as from empty answers.

usage: new_test.py TOOL"""

import os
import pty
import select
import shutil
import signal
import sys
import tempfile
import time
import tomllib

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import check, done, read, run  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
WORK = tempfile.mkdtemp(prefix="swathe-new-")
QUESTIONS = 7
END, INTERRUPT = "\x04", "\x03"  # Ctrl-D at the start of a line, Ctrl-C


class Talk:
    """The tool on a terminal of its own, in an empty folder."""

    def __init__(self, *words):
        self.folder = tempfile.mkdtemp(dir=WORK)
        self.said = ""
        self.child, self.terminal = pty.fork()
        if self.child == 0:
            os.chdir(self.folder)
            os.execv(TOOL, [TOOL, "new", *words])

    def wait_for(self, text, seconds=60):
        """What was said up to the text, which has to come; fewer than all letters count as none."""
        end = time.monotonic() + seconds
        while text not in self.said and time.monotonic() < end:
            if not self._read():
                break
        before, found, self.said = self.said.partition(text)
        if not found:
            raise AssertionError(f"{text!r} was not said: {before[-400:]!r}")
        return before

    def _read(self):
        if not select.select([self.terminal], [], [], 1)[0]:
            return True
        try:
            part = os.read(self.terminal, 4096)
        except OSError:  # the tool has ended
            return False
        self.said += part.decode(errors="replace").replace("\r\n", "\n")
        return bool(part)

    def type(self, keys):
        os.write(self.terminal, keys.encode())

    def end(self, seconds=60):
        """How it ended, and the rest of what was said."""
        end = time.monotonic() + seconds
        while self._read():
            if time.monotonic() > end:
                os.kill(self.child, signal.SIGKILL)
        status = os.waitstatus_to_exitcode(os.waitpid(self.child, 0)[1])
        os.close(self.terminal)
        return status, self.said

    def written(self):
        return sorted(os.listdir(self.folder))


def asked(talk, number):
    """Waits for a question's prompt; what it says."""
    question = talk.wait_for(f"{number}. ") + talk.wait_for("] ")
    return question


def job_of(talk, name):
    with open(os.path.join(talk.folder, name), "rb") as file:
        return tomllib.load(file)


# Each question answered.
talk = Talk("mine.toml")
ANSWERS = ("26 1/2 in x 32 in", "front 14 in", "2", "left 9 in from front, 3 in x 2 in",
           "1/2 in x 5 in, noodles 2 3/8 in solid", "123 iron-on", "a4")
for number, answer in enumerate(ANSWERS, 1):
    question = asked(talk, number)
    check(f"question {number} has an example and a default",
          "Such as: " in question and question.rstrip().rpartition("[")[2] != "", question)
    talk.type(answer + "\n")
status, said = talk.end()
check("answered: done, and the file is told", status == 0 and "Written: mine.toml" in said, said)
check("answered: no rule fails", "not met" not in said, said)
job = job_of(talk, "mine.toml")
check("answered: the answers are in it",
      job["frame"] == {"width": "26 1/2 in", "depth": "32 in"}
      and job["job"]["number"] == "123" and job["numerals"]["method"] == "iron-on"
      and job["opening"][0]["side"] == "front" and job["opening"][0]["width"] == "14 in"
      and len(job["bumper"]) == 2 and len(job["bracket"]) == 1
      and job["bracket"][0]["at"] == ["9 in", "front"]
      and job["boards"]["thickness"] == "1/2 in" and job["padding"]["diameter"] == "2 3/8 in"
      and job["padding"]["core"] == "solid" and job["paper"]["sheet"] == "a4", job)
result = run([TOOL, "make", "mine.toml", "-o", "out"], cwd=talk.folder)
check("answered: it can be made", result.returncode == 0, result.stderr.decode())

# Enter alone, each time: the file that a run without a terminal writes.
talk = Talk()
for number in range(1, QUESTIONS + 1):
    asked(talk, number)
    talk.type("\n")
status, said = talk.end()
check("defaults: done", status == 0 and talk.written() == ["job.toml"], said)
piped = run([TOOL, "new", "-"])
check("defaults: the same bytes as with no terminal, where nothing is asked",
      piped.returncode == 0 and piped.stdout == read(os.path.join(talk.folder, "job.toml"))
      and b"?" not in piped.stderr, piped.stderr.decode())
job = job_of(talk, "job.toml")
check("defaults: no number, no title and no brackets of somebody else",
      "number" not in job["job"] and "title" not in job["job"] and "bracket" not in job, job)

# Nonsense at each question: told in plain words with an example, and asked again.
NONSENSE = ("big", "in the middle", "0", "some", "wood", "twelve", "napkin")
talk = Talk("n.toml")
for number, answer in enumerate(NONSENSE, 1):
    asked(talk, number)
    talk.type(answer + "\n")
    again = talk.wait_for("] ")
    check(f"nonsense at question {number}: told what is expected, and asked again",
          f'"{answer}"' in again and "expected" in again, again)
    check(f"nonsense at question {number}: nothing is written", talk.written() == [])
    talk.type("\n")
status, said = talk.end()
check("nonsense: done once each was answered", status == 0 and talk.written() == ["n.toml"], said)

# An answer that is understood and does not go: the widest opening is told, and goes.
talk = Talk("o.toml")
asked(talk, 1)
talk.type("28 in x 30 in\n")
asked(talk, 2)
talk.type("front 27 in\n")
again = " ".join(talk.wait_for("] ").split())  # as one line
widest = again.rpartition("like front ")[2].partition(" [")[0]
check("too wide: the answer to type is told", widest.endswith("in"), again)
talk.type(f"front {widest}\n")
for number in range(3, QUESTIONS + 1):
    asked(talk, number)
    talk.type("123\n" if number == 6 else "\n")
status, said = talk.end()
check("too wide: with that answer no rule fails", status == 0 and "not met" not in said, said)

# Left at each question.
for number in range(1, QUESTIONS + 1):
    for name, key in (("end of input", END), ("Ctrl-C", INTERRUPT)):
        talk = Talk("left.toml")
        for k in range(1, number):
            asked(talk, k)
            talk.type("\n")
        asked(talk, number)
        talk.type(key)
        status, said = talk.end()
        expected = 2 if key == END else -signal.SIGINT
        check(f"{name} at question {number}: nothing is written",
              status == expected and talk.written() == [] and "Written" not in said,
              f"{status} {said}")
        if key == END:
            check(f"{name} at question {number}: says so", "nothing is written" in said, said)
# An end of input behind part of an answer takes that part first.
talk = Talk("part.toml")
asked(talk, 1)
talk.type("28 in x 30 in" + END + END)
asked(talk, 2)
talk.type(END)
status, said = talk.end()
check("end of input within a line: nothing is written", status == 2 and talk.written() == [], said)

# A file that is there is told of before anything is asked, and stays.
talk = Talk("-q", "quiet.toml")
status, said = talk.end()
check("quiet: nothing is asked", status == 0 and talk.written() == ["quiet.toml"], said)
os.chdir(WORK)
with open("there.toml", "w", encoding="utf-8") as file:
    file.write("mine\n")
os.environ["HOME"] = WORK
talk = Talk(os.path.join(WORK, "there.toml"))
status, said = talk.end()
check("a file in the way: refused before the first question",
      status == 2 and "choose another name" in said and "1. " not in said
      and read("there.toml") == b"mine\n", said)

# --like asks nothing, also on a terminal.
talk = Talk("--like", "hexagon", "h.toml")
status, said = talk.end()
check("--like: nothing is asked", status == 0 and talk.written() == ["h.toml"] and "1. " not in said,
      said)
result = run([TOOL, "new", "--like", "hexagn", "-"])
check("--like: an unknown kind names the nearest and all of them",
      result.returncode == 2 and b'the nearest is "hexagon"' in result.stderr
      and b"one-a-side" in result.stderr, result.stderr.decode())

os.chdir("/")
shutil.rmtree(WORK)
done()
