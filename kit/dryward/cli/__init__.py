"""What is typed: ``dryward`` and its commands.

Each command is a file of this folder with ``add(parser)``, which names its
arguments, and ``run(args)``, which returns the exit status; only the file of
the command that was typed is imported.
"""

import argparse
import difflib
import importlib
import os
import re
import sys
from collections.abc import Sequence
from types import ModuleType
from typing import NoReturn

from dryward import __version__
from dryward.checks import PlainError, UnknownName

#: The commands and the line each has in ``dryward --help``.
COMMANDS = {
    "lessons": "open the lessons in JupyterLab (what plain `dryward` does)",
    "pages": "serve the lessons as web pages that show no code",
    "board": "show how a class stands: who is where, predictions, checks",
    "check": "judge one assembly file in words",
    "report": "write the report of one assembly file",
    "evidence": "compute every published check again and print the table",
    "api": "show what can be typed in Python",
    "bench": "measure the speed of the kit beside its peers",
}
_DEFAULT = "lessons"
#: Exit status when the kit refuses its input, as the shell's own tools have it.
REFUSED = 2
#: Exit status when the kit itself is at fault.
FAULT = 3
#: Set in the environment, it shows where a fault of the kit is.
TRACEBACK = "DRYWARD_TRACEBACK"


class _Stop(PlainError):
    """The command line cannot be understood."""


class _Parser(argparse.ArgumentParser):
    #: Of the command that was typed, in the parser over all.
    below: "_Parser | None" = None

    def error(self, message: str) -> NoReturn:
        # What no parser takes is refused by the one over all; it belongs to the command.
        teller = self.below if self.below and message.startswith("unrecognized") else self
        raise _Stop(f"{teller._plainly(message)}; `{teller.prog} --help` lists what can be typed.")

    def _plainly(self, message: str) -> str:
        """What argparse says, as the kit's other sentences have it."""
        if found := re.match(r"argument (\S+): invalid (int|float) value: '(.*)'", message):
            what = "a whole number" if found[2] == "int" else "a number"
            return f'{found[1]} is "{found[3][:40]}"; it must be {what}'
        if found := re.match(r"argument (\S+): invalid choice: '(.*)' \(choose from (.*)\)", message):
            return f'{found[1]} is "{found[2][:40]}"; it must be one of {found[3].replace(chr(39), "")}'
        if found := re.match(r"the following arguments are required: (.*)", message):
            return f"{found[1]} is missing"
        if found := re.match(r"unrecognized arguments: (.*)", message):
            word = found[1].split()[0]
            near = difflib.get_close_matches(word.partition("=")[0], self._option_string_actions, n=1)
            hint = f"; did you mean {near[0]}" if near else ""
            return f'"{word[:60]}" is not understood here{hint}'
        return f"{message[:1].upper()}{message[1:]}"


def _module(name: str) -> ModuleType:
    return importlib.import_module(f"{__name__}.{name}")


def parser(command: str | None = None) -> argparse.ArgumentParser:
    """The parser of the command line, with the arguments of one command; the others are named but not loaded."""
    top = _Parser(prog="dryward", description="Lessons on moisture in roofs and walls, and the physics behind them.")
    top.add_argument("--version", action="version", version=f"dryward {__version__}")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    for name, line in COMMANDS.items():
        below = commands.add_parser(name, help=line, description=line[:1].upper() + line[1:] + ".")
        if name == command:
            _module(name).add(below)
            top.below = below
    return top


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command line and give its exit status.

    0 done, 1 done with a bad verdict, 2 refused with one sentence on the error
    stream, 3 a fault of the kit, 130 interrupted.
    """
    typed = list(sys.argv[1:] if arguments is None else arguments)
    if not typed or (typed[0].startswith("-") and typed[0] not in ("-h", "--help", "--version")):
        typed.insert(0, _DEFAULT)
    try:
        if not typed[0].startswith("-") and typed[0] not in COMMANDS:
            raise UnknownName("command", typed[0], COMMANDS)
        known = parser(typed[0] if typed[0] in COMMANDS else None)
        given = known.parse_args(typed)
        return _module(given.command).run(given) or 0
    except PlainError as trouble:
        print(f"dryward: {trouble}", file=sys.stderr)
        return REFUSED
    except BrokenPipeError:  # `dryward evidence | head`: nobody reads on
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return REFUSED
    except KeyboardInterrupt:
        print("dryward: stopped.", file=sys.stderr)
        return 130
    except Exception as trouble:  # a fault of the kit: a learner reads one sentence, a developer asks for more
        if os.environ.get(TRACEBACK):
            raise
        kind, words = type(trouble).__name__, " ".join(str(trouble).split())[:200]
        print(
            f"dryward: the kit itself failed ({kind}: {words}); please report it. {TRACEBACK}=1 shows where.",
            file=sys.stderr,
        )
        return FAULT
