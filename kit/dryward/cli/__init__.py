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
from typing import Any, NoReturn

from dryward import __version__
from dryward.checks import PlainError, UnknownName, begun
from dryward.language import message

#: The commands; each has a line in ``dryward --help``.
COMMANDS = ("lessons", "pages", "board", "check", "report", "evidence", "api", "bench")
_DEFAULT = "lessons"
#: The reader of messages, where argparse's own text is called so.
told = message
#: Exit status when the kit refuses its input, as the shell's own tools have it.
REFUSED = 2
#: Exit status when the kit itself is at fault.
FAULT = 3
#: Set in the environment, it shows where a fault of the kit is.
TRACEBACK = "DRYWARD_TRACEBACK"


class _Stop(PlainError):
    """The command line cannot be understood."""


class _Help(argparse.HelpFormatter):
    """The help in the language in use."""

    def add_usage(self, usage: Any, actions: Any, groups: Any, prefix: str | None = None) -> None:
        super().add_usage(usage, actions, groups, message("cli.usage") if prefix is None else prefix)


class _Parser(argparse.ArgumentParser):
    def __init__(self, **keys: Any) -> None:
        super().__init__(add_help=False, formatter_class=_Help, **keys)
        self._positionals.title, self._optionals.title = message("cli.arguments"), message("cli.options")
        self.add_argument("-h", "--help", action="help", help=message("cli.help"))

    #: Of the command that was typed, in the parser over all.
    below: "_Parser | None" = None

    def error(self, message: str) -> NoReturn:
        # What no parser takes is refused by the one over all; it belongs to the command.
        teller = self.below if self.below and message.startswith("unrecognized") else self
        raise _Stop(told("cli.not-typed-so", why=teller._plainly(message), command=teller.prog))

    def _plainly(self, message: str) -> str:
        """What argparse says, as the kit's other sentences have it."""
        if found := re.match(r"argument (\S+): invalid (int|float) value: '(.*)'", message):
            id = "cli.whole-number" if found[2] == "int" else "cli.a-number"
            return told(id, argument=found[1], given=found[3][:40])
        if found := re.match(r"argument (\S+): invalid choice: '(.*)' \(choose from (.*)\)", message):
            return told("cli.one-of", argument=found[1], given=found[2][:40], choices=found[3].replace("'", ""))
        if found := re.match(r"the following arguments are required: (.*)", message):
            return told("cli.missing", arguments=found[1])
        if found := re.match(r"unrecognized arguments: (.*)", message):
            word = found[1].split()[0]
            near = difflib.get_close_matches(word.partition("=")[0], self._option_string_actions, n=1)
            if near:
                return told("cli.did-you-mean", word=word[:60], near=near[0])
            return told("cli.not-understood", word=word[:60])
        if found := re.match(r"argument (\S+): expected one argument", message):
            return told("cli.expects", argument=found[1])
        if found := re.match(r"argument (\S+): ignored explicit argument (.*)", message):
            return told("cli.takes-nothing", argument=found[1], given=found[2][:40])
        if found := re.match(r"ambiguous option: (\S+) could match (.*)", message):
            return told("cli.ambiguous", given=found[1][:60], options=found[2])
        if found := re.match(r"argument (\S+): not allowed with argument (\S+)", message):
            return told("cli.not-together", argument=found[1], other=found[2])
        return f"{message[:1].upper()}{message[1:]}"


def _module(name: str) -> ModuleType:
    return importlib.import_module(f"{__name__}.{name}")


def parser(command: str | None = None) -> argparse.ArgumentParser:
    """The parser of the command line, with the arguments of one command; the others are named but not loaded."""
    top = _Parser(prog="dryward", description=message("cli.about"))
    top.add_argument("--version", action="version", version=f"dryward {__version__}", help=message("cli.version"))
    commands = top.add_subparsers(dest="command", metavar=message("cli.command-name"), parser_class=_Parser)
    for name in COMMANDS:
        line = message(f"cli.command-{name}")
        below = commands.add_parser(name, help=line, description=message("cli.description", line=begun(line)))
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
        print(message("cli.refused", why=str(trouble)), file=sys.stderr)
        return REFUSED
    except BrokenPipeError:  # `dryward evidence | head`: nobody reads on
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return REFUSED
    except KeyboardInterrupt:
        print(message("cli.stopped"), file=sys.stderr)
        return 130
    except Exception as trouble:  # a fault of the kit: a learner reads one sentence, a developer asks for more
        if os.environ.get(TRACEBACK):
            raise
        kind, words = type(trouble).__name__, " ".join(str(trouble).split())[:200]
        print(message("cli.failed", kind=kind, words=words, variable=TRACEBACK), file=sys.stderr)
        return FAULT
