#!/usr/bin/env python3
"""The rooms as the map in DEVELOPERS.md has them: nothing is included from a room below, and nothing
is called back through a public header.

usage: rooms_test.py [TOP]"""

import glob
import os
import re
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "support"))
from suite import TOP, check, done  # noqa: E402


def rooms_of(top):
    """In the order of the table; a room's row begins with its name in code style."""
    text = text_of(top, "DEVELOPERS.md").partition("| room | knows |")[2].partition("\n\n")[0]
    return re.findall(r"^\| `(\w+)` \|", text, re.MULTILINE)


def room_of(path):
    parts = path.split("/")
    return parts[2] if parts[0] == "include" else parts[1]


def sources(top):
    paths = (glob.glob("src/**/*.[ch]pp", root_dir=top, recursive=True) +
             glob.glob("include/swathe/*/*.hpp", root_dir=top))
    return sorted(paths)


def text_of(top, path):
    with open(os.path.join(top, path), encoding="utf-8") as file:
        return file.read()


def included(top, path):
    """The rooms' headers that a file includes, as paths from the top."""
    for name in re.findall(r'^#include "([^"]+)"', text_of(top, path), re.MULTILINE):
        for place in ("include/" + name, "src/" + name,
                      os.path.join(os.path.dirname(path), name)):
            in_room = place.count("/") > 2 or not place.startswith("include/")
            if in_room and os.path.exists(os.path.join(top, place)):
                yield place


def main():
    top = os.path.abspath(sys.argv[1]) if len(sys.argv) > 1 else TOP
    rooms = rooms_of(top)
    folders = {room_of(path) for path in sources(top)}
    check("the map has every room and no other", set(rooms) == folders, set(rooms) ^ folders)
    arrows, upward = 0, []
    for path in sources(top):
        for other in included(top, path):
            arrows += 1
            if rooms.index(room_of(other)) > rooms.index(room_of(path)):
                upward.append(f"{path} includes {other}")
    check("there are includes to look at", arrows > len(folders), arrows)
    check("no room includes from one below it", not upward, "\n".join(upward))
    called = [path for path in sources(top)
              if path.startswith("include/") and "std::function" in text_of(top, path)]
    check("no public header takes a std::function: nobody calls back up", not called, called)
    done()


main()
