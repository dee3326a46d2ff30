#!/usr/bin/env python3
"""Jobs drawn at the limits of what a job may ask for: each is made or refused, none runs away. What
`report` and `make` take of CPU is told, not tested: machines differ.

usage: limits_test.py TOOL [COUNT [SEED]]     COUNT jobs that are made; refused ones do not count
The slowest job of each kind stays as slowest-report.toml and slowest-make.toml where COUNT is given."""

import math
import os
import random
import resource
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import check, done  # noqa: E402

FONTS = ["Anton", "Saira", "OSP-DIN", "Bebas Neue", "Staatliches", "Sofia Sans Extra Condensed"]
CPU_LIMIT = 100  # seconds: a job that takes more has run away


def mm(length):
    return f'"{length:.2f} mm"'


def listed(values):
    return "[" + ", ".join(values) + "]"


class Drawn:
    """One job, its tables drawn one after the other."""

    def __init__(self, rng):
        self.rng = rng
        self.lines = []
        self.chance = lambda share: rng.random() < share
        self.sides = rng.choice([3, 4, 4, 5, 8, 12, 16, 16])
        self.side = rng.choice([400, 700, 1100, 1100, 2200, 9000]) * rng.uniform(0.9, 1.1)
        self.names = [f"s{k}" for k in range(self.sides)]
        self.bumpers = []  # name, first side, shares, last side

    def add(self, *lines):
        self.lines += lines

    def key(self, name, values, share=0.5):
        if self.chance(share):
            self.add(f"{name} = {self.rng.choice(values)}")

    def text(self):
        for table in (self.heading, self.frame, self.boards, self.padding, self.cloth, self.all_bumpers,
                      self.brackets, self.numerals, self.sight, self.paper):
            table()
        return "\n".join(self.lines) + "\n"

    def heading(self):
        number = str(self.rng.choice([20486, 68905, 88888, 8, 11111, 96, 40968]))
        self.add("[job]", f'number = "{number}"', 'units = "mm"', 'season = "2026"')

    def frame(self):
        radius = self.side / (2 * math.sin(math.pi / self.sides))
        squash = self.rng.choice([1, 1, 0.7])
        corners = []
        for k in range(self.sides):
            turn = 2 * math.pi * (k - 0.5) / self.sides + math.pi / 2
            corners.append(listed([mm(radius * math.cos(turn)), mm(squash * radius * math.sin(turn))]))
        self.add("[frame]", f"corners = {listed(corners)}",
                 f"sides = {listed(chr(34) + name + chr(34) for name in self.names)}")
        self.key("floor_gap", ['"0 mm"', '"50 mm"', '"2000 mm"'])

    def boards(self):
        self.add("[boards]", 'thickness = "18 mm"', f"height = {self.rng.choice([mm(127), mm(127), mm(300), mm(1000)])}")
        self.add('joint = "mitred"' if self.sides != 4 or self.chance(0.5) else 'joint = "lapped"')
        if self.lines[-1].endswith('lapped"'):
            self.add('lapping = ["s0", "s2"]')
        self.key("kerf", ['"0 mm"', '"20 mm"'])
        self.key("stock", ['["700 mm", "400 mm"]', '["20000 mm", "20000 mm"]', '["1220 mm", "2440 mm"]'])

    def padding(self):
        self.add("[padding]")
        if self.chance(0.3):
            self.add('form = "block"', f'depth = {mm(63)}', f'height = {mm(127)}')
        else:
            self.add(f"diameter = {mm(63.5)}", f"stack = {self.rng.choice([1, 2, 2, 4])}")
        self.add(f'corner = {self.rng.choice([chr(34) + w + chr(34) for w in ("mitred", "mitred", "bent")])}')
        self.key("stock", [mm(1500), mm(500), mm(20000)])

    def cloth(self):
        self.add("[cloth]", f"roll_width = {self.rng.choice([mm(1473), mm(20000), mm(900)])}")
        self.add(f"may_join = {self.rng.choice(['true', 'true', 'false'])}")
        self.key("longest_piece", [mm(600), mm(1500)], 0.3)
        self.key("staple_spacing", [mm(5), mm(1000), mm(20)])
        self.key("flap", [mm(50), mm(120)])
        self.key("may_lie_across", ["true"])
        self.key("one_way", ["true"])
        self.key("stretch_along", ["0.0", "0.1", "0.5"], 0.2)
        self.key("relief", ['"sewn"', '"fold"'])
        self.key("buy_step", [mm(1), mm(5000)])
        self.key("colors", ["{ " + ", ".join(f'c{k} = "#{k}{k}{k}{k}{k}{k}"' for k in range(8)) + " }"], 0.3)
        self.key("fixing", ['"hook-and-loop"'], 0.2)

    def all_bumpers(self):
        kind = self.rng.choice(["each", "halves", "parts", "parts"])
        if kind == "each":
            spans = [(k, 0, k, 100) for k in range(self.sides)]
        elif kind == "halves":
            half = self.sides // 2
            spans = [(0, 50, half, 50), (half, 50, 0, 50)]
        else:
            per = max(1, min(32 // self.sides, int(self.side // 250)))
            spans = [(k, 100 * p / per, k, 100 * (p + 1) / per)
                     for k in range(self.sides) for p in range(per)]
        for number, (first, start, last, end) in enumerate(spans):
            self.bumpers.append((f"b{number}", first, end - start, last, start))
            self.add("[[bumper]]", f'name = "b{number}"', f'from = ["s{first}", "{start:g}%"]',
                     f'to = ["s{last}", "{end:g}%"]')

    def brackets(self):
        count = self.rng.choice([0, 0, 4, 64])
        length = self.side * (self.bumpers[0][2] / 100 if self.bumpers[0][1] == self.bumpers[0][3] else 0.4)
        each = -(-count // len(self.bumpers))
        for number in range(count):
            bumper, first, _, _, start = self.bumpers[number // each]
            place = 40 + (length - 120) * (number % each) / max(1, each)
            if place > length - 80:
                continue
            holes = [listed([mm(3 + 4 * (h % 4)), mm(8 + 12 * (h // 4))]) for h in range(16)]
            self.add("[[bracket]]", f'bumper = "{bumper}"', f'side = "s{first}"',
                     f'at = [{mm(self.side * start / 100 + place)}, "s{(first - 1) % self.sides}"]',
                     'width = "20 mm"', 'height = "60 mm"',
                     f"holes = {listed(holes)}", f'cloth = "{self.rng.choice(["under", "window"])}"')

    def numerals(self):
        rng = self.rng
        self.add("[numerals]", f'font = "{rng.choice(FONTS)}"')
        if "Saira" in self.lines[-1]:
            self.key("axes", ["{ wght = 100, wdth = 50 }", "{ wght = 300, wdth = 125 }"], 0.8)
        self.key("height", [mm(60), mm(114), mm(1000), mm(10)], 0.3)
        self.add(f'method = "{rng.choice(["stencil", "sew-on", "iron-on", "paint-mask"])}"')
        self.key("make_legal", ["true"], 0.6)
        self.key("outline", [mm(3), mm(12)], 0.4)
        self.key("spares", ["20"])
        self.key("spacing", ['"tabular"', mm(20)], 0.3)
        if self.chance(0.4):
            some = rng.sample(self.names, rng.randint(1, self.sides))
            self.add(f"sides = {listed(chr(34) + name + chr(34) for name in some)}")

    def sight(self):
        rng = self.rng
        self.add("[sight]")
        if self.chance(0.8):
            near = rng.choice([0.5, 3, 20]) * 1000 + self.side
            self.add(f"distance = {listed(mm(near * (1 + 0.3 * k)) for k in range(8))}",
                     f"eye_height = {listed(mm(200 + 270 * k) for k in range(8))}")
        self.key("step", ['"0.1 deg"', '"30 deg"'])
        self.key("least_angle", ['"1 arcmin"', '"15 arcmin"', '"40 arcmin"'])
        for _ in range(rng.choice([0, 4, 32])):
            x, y = (rng.uniform(-self.side, self.side) for _ in range(2))
            self.add("[[sight.blind]]", f"box = [[{mm(x)}, {mm(y)}, {mm(0)}], "
                     f"[{mm(x + rng.uniform(20, 300))}, {mm(y + 100)}, {mm(rng.uniform(50, 900))}]]")

    def paper(self):
        self.add("[paper]", f"sheet = {self.rng.choice([chr(34) + p + chr(34) for p in ('letter', 'a4', 'a4', 'a0', 'roll', 'legal')])}")
        if self.lines[-1].endswith('"roll"'):
            self.add('width = "914 mm"')
        self.key("margin", [mm(3), mm(20)])
        self.key("face", ['"outside"'])
        self.key("measured", [f"[{mm(99)}, {mm(101)}]"], 0.2)


def run(tool, words):
    """Exit status and seconds of CPU."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    limit = lambda: resource.setrlimit(resource.RLIMIT_CPU, (CPU_LIMIT, CPU_LIMIT))  # noqa: E731
    result = subprocess.run([tool] + words, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
                            stderr=subprocess.PIPE, preexec_fn=limit, check=False)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return result.returncode, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime, result.stderr


def main():
    tool = os.path.abspath(sys.argv[1])
    count = int(sys.argv[2]) if len(sys.argv) > 2 else 6
    seed = int(sys.argv[3]) if len(sys.argv) > 3 else random.randrange(10**9)
    rng = random.Random(seed)
    taken = {"report": [], "make": []}
    refused, bad = 0, []
    with tempfile.TemporaryDirectory() as folder:
        job = os.path.join(folder, "job.toml")
        while len(taken["report"]) < count and refused < 100 + 20 * count and not bad:
            text = Drawn(rng).text()
            with open(job, "w", encoding="utf-8") as file:
                file.write(text)
            for command, words in (("report", ["report", job]),
                                   ("make", ["make", job, "-o", os.path.join(folder, "out")])):
                status, seconds, said = run(tool, words)
                if status == 2:
                    refused += 1
                    break
                if status != 0:
                    bad.append((command, status, said[-300:], text))
                    break
                if len(sys.argv) > 2 and seconds >= max(taken[command], default=0):
                    with open(f"slowest-{command}.toml", "w", encoding="utf-8") as file:
                        file.write(text)
                taken[command].append(seconds)
    check(f"jobs at the limits are made or refused, seed {seed}", not bad, bad[:1])
    check("some were made", len(taken["make"]) >= min(count, 1), refused)
    for command, seconds in taken.items():
        seconds.sort()
        if seconds:
            print(f"# {command}: {len(seconds)} jobs, CPU median {seconds[len(seconds) // 2]:.2f} s, "
                  f"most {seconds[-1]:.2f} s; {refused} drawn jobs were refused")
    done()


main()
