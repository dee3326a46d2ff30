#!/usr/bin/env python3
"""No small font takes minutes or gigabytes. Fonts whose digits are past a limit are refused where the job
names them, in every command; those just below are made, by every method, in bounded memory. The CPU
that the system allows is many times what any takes, for a busy machine; the most is told.

usage: odd_fonts_test.py TOOL [all]
all: every command by every method with every option"""

import os
import resource
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from font_file import font_bytes  # noqa: E402
from odd_fonts import BELOW_LIMITS, PAST_LIMITS  # noqa: E402
from suite import EXAMPLE, check, done  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
ALL = len(sys.argv) > 2
MOST_MIB, MOST_SPACE, MOST_CPU = 256, 1 << 30, 20  # MiB resident, bytes mapped, seconds
METHODS = ["stencil", "iron-on", "sew-on", "paint-mask"]
OPTIONS = ["", 'outline = "1/4 in"\n', "make_legal = true\n",
           'outline = "1/4 in"\nmake_legal = true\nspares = 20\n', 'height = "1 m"\n']

with open(EXAMPLE, encoding="utf-8") as file:
    TEXT = file.read()
worst = {"s": (0, ""), "MiB": (0, "")}


def cost(what, words, folder):
    """Exit status and what was said."""
    def bounds():
        resource.setrlimit(resource.RLIMIT_AS, (MOST_SPACE, MOST_SPACE))
        resource.setrlimit(resource.RLIMIT_CPU, (MOST_CPU, MOST_CPU))
    with open(os.path.join(folder, "said"), "w+b") as said:
        process = subprocess.Popen([TOOL, *words], stdout=subprocess.DEVNULL, stderr=said, cwd=folder,
                                   preexec_fn=bounds)
        _, status, used = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
        said.seek(0)
        text = said.read().decode()
    cpu, mib = used.ru_utime + used.ru_stime, used.ru_maxrss / 1024
    for unit, value in (("s", cpu), ("MiB", mib)):
        worst[unit] = max(worst[unit], (value, what))
    if "TELL" in os.environ:
        print(f"# {process.returncode} {cpu:.2f} s {mib:.0f} MiB {what}", flush=True)
    return process.returncode, text, mib


def job(folder, number, method, options):
    text = TEXT.replace('number = "20486"', f'number = "{number}"')
    text = text.replace('font = "Anton"', f'font = "odd.ttf"\nmethod = "{method}"\n{options}')
    with open(os.path.join(folder, "job.toml"), "w", encoding="utf-8") as file:
        file.write(text)
    return 1 + text[:text.index('font = "odd.ttf"')].count("\n")


def commands(folder):
    out = os.path.join(folder, "out")
    return [["report", "job.toml"], ["make", "job.toml", "-o", out], ["check", "job.toml"],
            ["numerals", "job.toml", "-o", out], ["fonts", "job.toml"], ["list", "job.toml"],
            ["views", "job.toml", "-o", out]]


def wanted(folder):
    """Options and command of the runs that are tried of a font by one method."""
    if ALL:
        return [(options, words) for options in OPTIONS for words in commands(folder)]
    return list(zip([OPTIONS[3], OPTIONS[0]], commands(folder)))  # a report and all sheets


def font(folder, contours):
    with open(os.path.join(folder, "odd.ttf"), "wb") as file:
        file.write(font_bytes({digit: contours for digit in "0123456789"}))


for name, contours in PAST_LIMITS.items():
    with tempfile.TemporaryDirectory() as folder:
        font(folder, contours)
        told = set()
        for k, method in enumerate(METHODS):
            line = job(folder, "20486", method, OPTIONS[k])
            for words in commands(folder)[:None if ALL or k == 0 else 1]:
                status, said, mib = cost(f"{name}, {method}, {words[0]}", words, folder)
                at_key = f"job.toml:{line}:" in said and "expected" in said
                told.add((status, at_key, mib < MOST_MIB))
        check(f"{name}: refused at its key", told == {(2, True, True)}, f"{told}\n{said}")

for name, contours in BELOW_LIMITS.items():
    with tempfile.TemporaryDirectory() as folder:
        font(folder, contours)
        said_of = ""
        for k, method in enumerate(METHODS):
            for number in ("20486", "88888") if ALL else ("20486",):
                for options, words in wanted(folder):
                    job(folder, number, method, options)
                    what = f"{name}, {method}, {number}, {'; '.join(options.splitlines())}, {words[0]}"
                    status, said, mib = cost(what, words, folder)
                    # A check fails with 1; what cannot be bridged or widened is refused.
                    fine = status in (0, 1) or (status == 2 and "job.toml:" in said)
                    if not fine or mib >= MOST_MIB:
                        said_of += f"{what}: status {status}, {mib:.0f} MiB\n{said}"
        check(f"{name}: made, or refused, within bounds", not said_of, said_of)

for unit, (value, what) in worst.items():
    print(f"# the most of all runs: {value:.1f} {unit} ({what})")
done()
