#!/usr/bin/env python3
"""Sums what gcovr counted by room: lines and branches reached.

usage: coverage_rooms.py SUMMARY.json [--files]"""

import collections
import json
import sys

KINDS = ("line", "branch")


def room_of(name):
    parts = name.split("/")
    return parts[2] if parts[0] == "include" else parts[1]


def row(name, counts):
    cells = []
    for kind in KINDS:
        reached, total = counts[kind]
        share = 100 * reached / total if total else 100
        cells.append(f"{reached:6} of {total:6} {share:5.1f} %")
    return f"{name:34} " + "   ".join(cells)


def main():
    files = {}
    for entry in json.load(open(sys.argv[1], encoding="utf-8"))["files"]:
        files[entry["filename"]] = {
            kind: (entry[f"{kind}_covered"], entry[f"{kind}_total"]) for kind in KINDS}
    rooms = collections.defaultdict(lambda: {kind: [0, 0] for kind in KINDS})
    for name, counts in files.items():
        for sums in (rooms[room_of(name)], rooms["all"]):
            for kind in KINDS:
                sums[kind][0] += counts[kind][0]
                sums[kind][1] += counts[kind][1]
    print(f"{'room':34} {'lines':>24} {'branches':>25}")
    for name in sorted(rooms, key=lambda name: (name == "all", name)):
        print(row(name, rooms[name]))
    if "--files" in sys.argv[2:]:
        print()
        least = sorted(files.items(), key=lambda item: item[1]["line"][0] / max(1, item[1]["line"][1]))
        for name, counts in least:
            print(row(name, counts))


main()
