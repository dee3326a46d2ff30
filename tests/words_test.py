#!/usr/bin/env python3
"""One word for one thing: what people read outside of printed sheets uses none of the words that
were given up for a plainer one.

Looked through are the string literals of the rooms that speak and of the page, what stands between the
page's tags, and the data files and documents that are read as they stand. Comments and identifiers are
free.

usage: words_test.py [TOP]"""

import glob
import os
import re
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "support"))
from suite import TOP, check, done  # noqa: E402

ROOMS = ("rules", "job", "bumper", "pattern", "numeral", "sight", "place", "stock", "check", "make",
         "sheet", "book", "screen", "draw", "tile", "app", "page")
TEXTS = ("src/*/data/*.toml", "src/*/data/en/*.toml", "src/*/data/en/*.txt", "examples/*.toml",
         "examples/kinds/*.toml", "README.md")

# What people type, not what they read: here the words that were given up are looked up.
TYPED = ("src/app/data/en/everyday_words.txt",)

# What is not said -> what is said instead.
GIVEN_UP = {
    r"segments?": "bumper",
    r"skins?": "cover",
    r"wraps?": "pattern, bumper",
    r"typefaces?": "font",
    r"(type )?faces?": "side (of a machine), font (of digits), front or outside (of a board)",
    r"figures?": "sizes, numbers, digits",
    r"sections? of (the|a) bumper|girths?": "once round",
    r"reliefs?": "corner fold, sewn corner",
    r"tape sheets?": "measuring sheet",
    r"medians?": "usual width",
    r"sight charts?": "who can read it",
    r"rods?": "noodle, padding",
    r"clearances?": "gap, play, room",
    r"nothing reads|reads as|unread|misread": "can be read, cannot be read, looks like",
    r"laps|butts": "runs past its neighbor, stops at its neighbor",
    r"quick-change": "hook-and-loop",
    r"no more than|no longer than|no less than": "at most, at least",
    r"(left|right) end": "the end by the left side, next to left",
    r"colours?|centres?|grey|neighbours?|millimetres?": "American spelling",
    r"askew|beneath|bears?|bearing|told of|would do|reckoned": "a word that people say",
    r"held against": "checked against",
}

# Where one of these is right, and why. A file, a part of the text, the word that it excuses.
EXCEPTIONS = (
    ("src/book/data/en/order_of_work.txt", "Wrap the cloth round", "wrap", "to wrap is what is done"),
)

# Keys and values of a job or a rule file, and names of code in the documents, are no prose.
CODE = re.compile(r"`[^`]*`|^```.*?^```|@\w+|\b[a-z_]+\.[a-z_.]+\b|[a-z]+_[a-z_]+", re.MULTILINE | re.DOTALL)
LITERAL = re.compile(r'"((?:[^"\\\n]|\\.)*)"')
# Literals that are whole keys, options or names: no spaces, so nobody reads them as words.
NAME = re.compile(r"[\w./:@#<>&;%{}()\[\]\\+*=|-]*")


def text_of(top, path):
    with open(os.path.join(top, path), encoding="utf-8") as file:
        return file.read()


def without_comments(source):
    """C++ with its raw strings as common ones; a quote that stands as a character is no string."""
    source = re.sub(r'R"\((.*?)\)"', lambda raw: "\n".join(
        '"' + line.replace('"', "'") + '"' for line in raw[1].split("\n")), source, flags=re.DOTALL)
    return re.sub(r"'\\?\"'|//[^\n]*", "", source)


def literals(source):
    """Line and text of every string that has more than one word."""
    for number, line in enumerate(without_comments(source).splitlines(), 1):
        if line.lstrip().startswith(("#include", "assert", "static_assert")):
            continue
        for text in LITERAL.findall(line):
            if not NAME.fullmatch(text):
                yield number, text


SCRIPT = re.compile(r"//[^\n]*|/\*.*?\*/|\"((?:[^\"\\\n]|\\.)*)\"|'((?:[^'\\\n]|\\.)*)'|`((?:[^`\\]|\\.)*)`", re.DOTALL)
SET_IN = re.compile(r"\$\{([^{}]*)\}")
BETWEEN_TAGS = re.compile(r">([^<>{}=;()]*[a-z][^<>{}=;()]*)</")


def script_literals(source, first=1):
    """Line and text of every string of a script; of a template what is set in is looked at by itself."""
    for found in SCRIPT.finditer(source):
        number = first + source.count("\n", 0, found.start())
        text = next((one for one in found.groups() if one is not None), "")
        if found[3] is not None:
            for code in SET_IN.findall(text):
                yield from script_literals(code, number)
            text = SET_IN.sub(" ", text)
        yield number, re.sub(r"\\u([0-9a-f]{4})", lambda sign: chr(int(sign[1], 16)), text)


def page_words(path, source):
    """In the folder of its words a single one is read, too; elsewhere it is a name or a class."""
    all_are_read = path.startswith("src/page/web/words/")
    for number, text in script_literals(source):
        if all_are_read or not NAME.fullmatch(text.strip()):
            yield number, text
    for found in BETWEEN_TAGS.finditer(source if path.endswith(".tsx") else ""):
        yield source.count("\n", 0, found.start(1)) + 1, found[1]


def lines_of(text):
    """Line and text of a document, its code blanked out."""
    blank = CODE.sub(lambda found: re.sub(r"[^\n]", " ", found.group()), text)
    return enumerate(blank.splitlines(), 1)


def spoken(top):
    """Path, line and text of everything that people read."""
    for room in ROOMS:
        for path in sorted(glob.glob(f"src/{room}/**/*.[ch]pp", root_dir=top, recursive=True)):
            for number, text in literals(text_of(top, path)):
                yield path, number, CODE.sub(" ", text)
    for path in sorted(glob.glob("src/page/web/**/*.ts*", root_dir=top, recursive=True)):
        if "/node_modules/" not in path:
            for number, text in page_words(path, text_of(top, path)):
                yield path, number, text
    for number, text in lines_of(re.sub(r"<[^>]*>", " ", text_of(top, "src/page/web/index.html"))):
        yield "src/page/web/index.html", number, text
    for pattern in TEXTS:
        for path in sorted(set(glob.glob(pattern, root_dir=top)) - set(TYPED)):
            for number, text in lines_of(text_of(top, path)):
                yield path, number, values_only(path, text)


def values_only(path, line):
    """Of a data file the words: comments and texts, not keys."""
    if not path.endswith(".toml"):
        return line
    key, equals, value = line.partition("=")
    if equals and re.fullmatch(r'[#\s\w."-]*', key) and " " in value.strip():
        return re.sub(r'\{[a-z-]+\}|\b[a-z-]+ = (?=")', " ", value)  # names of what is set in
    return line if line.lstrip().startswith("#") or not equals else ""


def excused(path, text, word):
    return any(path == where and part in text and word.lower() == excused_word
               for where, part, excused_word, _ in EXCEPTIONS)


def main():
    top = os.path.abspath(sys.argv[1]) if len(sys.argv) > 1 else TOP
    said = list(spoken(top))
    check("there are words to look at", len(said) > 500, len(said))
    page = sum(path.startswith("src/page/web/words/") for path, _, _ in said)
    check("the page's are among them", page > 300, page)
    for words, instead in GIVEN_UP.items():
        pattern = re.compile(rf"\b({words})\b", re.IGNORECASE)
        found = [f"{path}:{number}: {text.strip()}" for path, number, text in said
                 for word in pattern.finditer(text) if not excused(path, text, word.group())]
        check(f"say {instead}; not {words}", not found, "\n".join(found))
    for path, part, word, why in EXCEPTIONS:
        check(f"an exception that is needed: {word} in {path}, {why}",
              any(path == where and part in text and word in text.lower() for where, _, text in said))
    done()


main()
