#!/usr/bin/env python3
"""The man page and the completions that the build makes hold what --help says, and work: the page
in groff and man, the completions in the shells themselves.

usage: manual_test.py TOOL MANUAL_FOLDER"""

import os
import pty
import re
import select
import signal
import sys
import tempfile
import time

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import check, done, run  # noqa: E402

TOOL, MANUAL = os.path.abspath(sys.argv[1]), os.path.abspath(sys.argv[2])
PAGE, BASH, ZSH, FISH = (os.path.join(MANUAL, name)
                         for name in ("swathe.1", "bash/swathe", "zsh/_swathe", "fish/swathe.fish"))


def help_of(*command):
    return run([TOOL, *command, "--help"]).stdout.decode()


def commands_in(text):
    return re.findall(r"^  ([a-z]+) ", text.split("Subcommands:")[1], re.MULTILINE)


def options_in(text):
    """ "-o,--output" of a help text's lines, each as the list of its names."""
    return [names.split(",") for names in re.findall(r"^  (-[-a-z,]+)", text, re.MULTILINE)]


COMMANDS = commands_in(help_of())
check("--help names commands", len(COMMANDS) >= 10, COMMANDS)

# The man page.
for formatter in (["groff", "-ww", "-man", "-Tutf8", PAGE],
                  ["man", "--warnings=w", "-l", PAGE]):
    result = run(formatter, env={**os.environ, "MANWIDTH": "80", "LC_ALL": "C.UTF-8"})
    check(f"{formatter[0]} takes the man page without a warning",
          result.returncode == 0 and not result.stderr and len(result.stdout) > 1000,
          result.stderr.decode())
page = re.sub(r".\x08", "", run(["man", "-l", PAGE],
                                env={**os.environ, "MANWIDTH": "80"}).stdout.decode())
for command in COMMANDS:
    check(f"the man page has {command}", re.search(rf"^ +{command} ?[\[A-Z]", page, re.MULTILINE))
for command in [(), *((name,) for name in COMMANDS)]:
    missing = [names for names in options_in(help_of(*command)) if ", ".join(names) not in page]
    check(f"the man page has the options of swathe {' '.join(command)}", not missing, missing)


# The completions, in the shells.
def typed(shell, before, keys, expected, folder):
    """What the shell shows of a line that was typed with a tab in it: until it is what is expected,
    or too late."""
    child, terminal = pty.fork()
    if child == 0:
        os.chdir(folder)
        os.environ.update(PS1="> ", TERM="dumb", HOME=folder, PATH=os.path.dirname(TOOL) + ":" +
                          os.environ["PATH"])
        os.execvp(shell[0], shell)
    os.write(terminal, (before + "\necho re''ady\n").encode())
    shown = ""

    def look_for(text):
        nonlocal shown
        end = time.monotonic() + 20
        while time.monotonic() < end and text not in shown:
            if select.select([terminal], [], [], 0.1)[0]:
                shown += os.read(terminal, 4096).decode(errors="replace")
                shown = re.sub(r"\x1b\[[0-9;?]*[a-zA-Z]|\r|\x07", "", shown)

    look_for("\nready")
    shown = ""
    os.write(terminal, keys.encode())
    look_for(expected)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    os.close(terminal)
    return shown


BASH_IN = (["bash", "--norc", "-i"], f"source {BASH}")
ZSH_IN = (["zsh", "-f", "-i"],
          f"fpath=({os.path.dirname(ZSH)} $fpath); autoload -Uz compinit; compinit -u -D")
with tempfile.TemporaryDirectory() as folder:
    open(os.path.join(folder, "heron.toml"), "w").close()
    os.mkdir(os.path.join(folder, "sheets"))
    for shell, before in (BASH_IN, ZSH_IN):
        for keys, expected in (("swathe ma\t", "swathe make "),
                               ("swathe make her\t", "swathe make heron.toml "),
                               ("swathe make --ou\t", "swathe make --output"),
                               ("swathe make -o sh\t", "swathe make -o sheets/"),
                               ("swathe explain cloth.fl\t", "swathe explain cloth.flap "),
                               ("swathe set her\t", "swathe set heron.toml "),
                               ("swathe set heron.toml bumper.1.fr\t",
                                "swathe set heron.toml bumper.1.from "),
                               ("swathe seasons 2013\t", "swathe seasons 2013 ")):
            shown = typed(shell, before, keys, expected, folder)
            check(f"{shell[0]}: {keys!r}", expected in shown, repr(shown))

    def offered(line):
        """What bash's completion puts into COMPREPLY."""
        words = line.split(" ")
        script = (f"source {BASH}; COMP_WORDS=({' '.join(repr(w) for w in words)}); "
                  f"COMP_CWORD={len(words) - 1}; _swathe; printf '%s\\n' \"${{COMPREPLY[@]}}\"")
        return sorted(run(["bash", "-c", script], cwd=folder).stdout.decode().split("\n")[:-1])

    check("bash offers every command", offered("swathe ") == sorted(COMMANDS), offered("swathe "))
    for command in COMMANDS:
        names = sorted(name for option in options_in(help_of(command)) for name in option)
        check(f"bash offers the options of {command}", offered(f"swathe {command} -") == names,
              offered(f"swathe {command} -"))

    def fish(line):
        script = f"source {FISH}; complete -C '{line}'"
        told = run(["fish", "--no-config", "-c", script], cwd=folder,
                   env={**os.environ, "HOME": folder}).stdout.decode()
        return sorted(row.split("\t")[0] for row in told.splitlines())

    check("fish offers every command", fish("swathe ") == sorted(COMMANDS), fish("swathe "))
    check("fish offers a job", fish("swathe check h") == ["heron.toml"], fish("swathe check h"))
    check("fish offers a folder", fish("swathe make -o s") == ["sheets/"], fish("swathe make -o s"))
    check("fish offers what can be set",
          fish("swathe set heron.toml bumper.1.fr") == ["bumper.1.from"])
    check("fish offers a key", fish("swathe explain cloth.fl") == ["cloth.flap"])
done()
