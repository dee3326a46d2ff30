#!/usr/bin/env python3
"""The rooms as the map in DEVELOPERS.md has them: nothing is included from a room below, and nothing
is called back through a public header. A room shows one public header, or none; all else of it lies
in src/ROOM, and public headers do without that.

usage: rooms_test.py [TOP]"""

import collections
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


# Public headers that are not a room's.
WHOLE = ["include/swathe/swathe.hpp", "include/swathe/version.hpp"]


def room_of(path):
    parts = path.split("/")
    return parts[2].removesuffix(".hpp") if parts[0] == "include" else parts[1]


def public(top):
    return sorted(glob.glob("include/**/*", root_dir=top, recursive=True))


def sources(top):
    paths = (glob.glob("src/**/*.[ch]pp", root_dir=top, recursive=True) +
             glob.glob("include/swathe/*.hpp", root_dir=top))
    return sorted(set(paths) - set(WHOLE))


def text_of(top, path):
    with open(os.path.join(top, path), encoding="utf-8") as file:
        return file.read()


def included(top, path):
    """The rooms' headers that a file includes, as paths from the top."""
    for name in re.findall(r'^#include "([^"]+)"', text_of(top, path), re.MULTILINE):
        for place in ("include/" + name, "src/" + name,
                      os.path.join(os.path.dirname(path), name)):
            if place not in WHOLE and os.path.exists(os.path.join(top, place)):
                yield place


def defined(top, path):
    """Types defined in a file's namespaces, by full name; unnamed namespaces are its own."""
    spaces = []
    for line in text_of(top, path).splitlines():
        if opened := re.match(r"namespace ([\w:]*) ?\{", line):
            spaces.append(opened[1] or path)
        elif line.startswith("}  // namespace"):
            spaces.pop()
        elif (named := re.match(r"(?:struct|class|enum class|using) (?:\[\[\w+\]\] )?(\w+)\b(?!::).*(?:\{| =)",
                                line)):
            yield "::".join([*spaces, named[1]])


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
    doors = [f"{path} includes {other}" for path in sources(top) if path.startswith("src/page/")
             for other in included(top, path)
             if not other.startswith("include/") and room_of(other) != "page"]
    check("the page's core includes public headers alone", not doors, "\n".join(doors))
    headers = {f"include/swathe/{room}.hpp" for room in rooms} | {"include/swathe", *WHOLE}
    check("a public header is a room's", set(public(top)) <= headers, set(public(top)) - headers)
    whole = set(re.findall(r'^#include "([^"]+)"', text_of(top, WHOLE[0]), re.MULTILINE))
    check("swathe.hpp has all of them",
          {"include/" + name for name in whole} == set(public(top)) - {"include/swathe", WHOLE[0]},
          whole)
    private = [f"{path} includes {other}" for path in sources(top) if path.startswith("include/")
               for other in included(top, path) if not other.startswith("include/")]
    check("no public header includes a private one", not private, "\n".join(private))
    places = collections.defaultdict(set)
    for path in sources(top):
        for name in defined(top, path):
            places[name].add(path)
    twice = [f"{name}: {sorted(paths)}" for name, paths in places.items() if len(paths) > 1]
    check("there are types to look at", len(places) > 100, len(places))
    check("no name means one type here and another there", not twice, "\n".join(twice))
    called = [path for path in sources(top)
              if path.startswith("include/") and "std::function" in text_of(top, path)]
    check("no public header takes a std::function: nobody calls back up", not called, called)
    done()


main()
