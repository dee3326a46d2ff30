#!/usr/bin/env python3
"""The texts of every room that has a file of them, src/ROOM/data/en/texts.toml, against its sources:
every id that is asked for is in the file and gets the values that it declares, every id of the file
is asked for, and no words are left in the sources. What the texts themselves promise is checked in
tests/base/texts_test.cpp.

usage: texts_test.py [TOP]"""

import glob
import os
import re
import sys
import tomllib

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "support"))
from suite import TOP, check, done  # noqa: E402

# Words that are no texts, each with its reason.
NO_TEXTS = {
    "draw": {
        # What the report says of a file, for programs: its schema lists them.
        "half on the fold", "tape measure", "proof model", "build book", "test page", "placing strips",
    },
    "sheet": {
        # What stock and the report call a difference; found here to be said by a text.
        "punch holes", "match marks",
        # What the report says of a sheet's paper, for programs.
        "full size",
        # How names of solids begin.
        "blind box ", "bumper ",
    },
}

CODE = re.compile(r"""
    //[^\n]*                          # comments
  | /\*.*?\*/
  | R"(?P<end>[^(\s]*)\((?P<raw>.*?)\)(?P=end)"
  | "(?P<string>(?:[^"\\\n]|\\.)*)"
  | '(?:[^'\\\n]|\\.)+'               # characters
""", re.VERBOSE | re.DOTALL)
ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)+")
WORDS = re.compile(r"[^\W\d_]{2,}[,.;:!?]* |[ ][^\W\d_]{2,}")
SAY = re.compile(r"\bsay\(")
VALUE = re.compile(r'\{\s*"([a-z-]+)"\s*,')


def sources(top, room):
    return {path: read(top, path)
            for path in sorted(glob.glob(f"src/{room}/**/*.[ch]pp", root_dir=top, recursive=True))}


def read(top, path):
    with open(os.path.join(top, path), encoding="utf-8") as file:
        return file.read()


def without_comments(code):
    return CODE.sub(lambda m: " " if m.group().startswith(("//", "/*")) else m.group(), code)


def for_people(code):
    """The code less what is for those who write it: includes, asserts and comments."""
    code = re.sub(r"^#include.*$", "", without_comments(code), flags=re.MULTILINE)
    for start in reversed([m.start() for m in re.finditer(r"\b(?:static_)?assert\(", code)]):
        code = code[:start] + code[end_of_call(code, start):]
    return code


def end_of_call(code, start):
    """Past the bracket that closes the first one from there on; brackets in literals do not count."""
    depth = 0
    at = code.index("(", start)
    while at < len(code):
        literal = CODE.match(code, at)
        if literal:
            at = literal.end()
            continue
        depth += {"(": 1, ")": -1}.get(code[at], 0)
        at += 1
        if depth == 0:
            return at
    raise ValueError("a call is never closed: " + code[start:start + 60])


def literals(code):
    """String literals; those that stand beside one another are one."""
    whole, end = [], None
    for match in CODE.finditer(code):
        text = match.group("string") if match.group("string") is not None else match.group("raw")
        if text is None:
            continue
        if end is not None and not code[end:match.start()].strip():
            whole[-1] += text
        else:
            whole.append(text)
        end = match.end()
    return whole


def calls(code):
    """What is said: the ids of each call of say() and the values that it sets in."""
    for match in SAY.finditer(code):
        call = code[match.end():end_of_call(code, match.start()) - 1]
        inner = SAY.search(call)
        while inner:  # a text said inside a value has values of its own
            call = call[:inner.start()] + call[end_of_call(call, inner.start()):]
            inner = SAY.search(call)
        ids = [text for text in literals(call) if ID.fullmatch(text)]
        if ids:
            yield ids, set(VALUE.findall(call))


def declared(text):
    return set(text) - {"text"} if isinstance(text, dict) else set()


def check_room(top, room):
    with open(os.path.join(top, f"src/{room}/data/en/texts.toml"), "rb") as file:
        texts = tomllib.load(file)
    used, missing, unlike, left = set(), [], [], []
    for path, code in sources(top, room).items():
        code = for_people(code)
        for text in literals(code):
            if text in texts:
                used.add(text)
            elif WORDS.search(re.sub(r"\{[^}]*\}", "", text)) and \
                    text not in NO_TEXTS.get(room, set()):
                left.append(f"{path}: {text}")
        for ids, values in calls(code):
            for one in ids:
                if one not in texts:
                    missing.append(f"{path}: {one}")
                elif declared(texts[one]) != values:
                    unlike.append(f"{path}: {one}: {sorted(declared(texts[one]) ^ values)}")
    check(f"{room}: every text that is said is in the file", not missing, "\n".join(missing))
    check(f"{room}: every text of the file is said", set(texts) <= used,
          "\n".join(sorted(set(texts) - used)))
    check(f"{room}: every text gets the values that it declares", not unlike, "\n".join(unlike))
    check(f"{room}: no words are left in the sources", not left, "\n".join(left))
    kept = {text for code in sources(top, room).values() for text in literals(code)}
    idle = NO_TEXTS.get(room, set()) - kept
    check(f"{room}: every exception is still needed", not idle, sorted(idle))


def main():
    top = os.path.abspath(sys.argv[1]) if len(sys.argv) > 1 else TOP
    rooms = [path.split("/")[1]
             for path in sorted(glob.glob("src/*/data/en/texts.toml", root_dir=top))]
    check("there are rooms with texts", bool(rooms))
    for room in rooms:
        check_room(top, room)
    done()


main()
