"""``dryward api``: what can be typed in Python, from the docstrings of the public names."""

import argparse
import dataclasses
import importlib
import inspect
import re
import textwrap
from pathlib import Path

from dryward.checks import BadFile, UnknownName
from dryward.language import has, message

#: The public names: the module they stand in, the names; a module without a heading goes on with the chapter
#: before.  ``dw`` is ``import dryward as dw``;
#: the names of the other modules are reached through it too, as ``dw.steady.profile``.
CHAPTERS = (
    ("api", "roof membrane profile year months sweep dry_range drying_rates"),
    (
        "building",
        "Assembly Layer Material FixedMembrane VariableMembrane LaminateMembrane AirSpace Framing material membrane "
        "air_space preset presets load save",
    ),
    ("weather", "Air MonthlyClimate HourlyWeather read_epw demo demos"),
    ("weather.indoor", "constant humidity_class by_outdoor_temperature moisture_balance"),
    ("verdict", "Verdict Finding Criterion of_year of_months of_steady"),
    ("physics.steady", "profile sweep Profile WetPlane Sweep"),
    ("physics.drying", "rates Drying"),
    ("physics.limits", "dry_range Range"),
    ("physics.monthly", "balance Months"),
    ("physics.hourly", "simulate batch Hours LayerHours"),
    ("physics.ventspace", "VentSpace"),
    ("physics.airleak", "Leak"),
    ("physics.sky", "temperature"),
    ("physics.mold", "index"),
    (
        "air",
        "saturation_vapor_pressure vapor_pressure relative_humidity dew_point humidity_ratio vapor_density "
        "standard_pressure moist_air MoistAir",
    ),
    ("units", "to_si from_si show quantity"),
    ("panels", "page"),
)
#: The page, in the folder of the checkout.
PAGE = Path("lessons", "guide", "api.md")


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    parser.add_argument("name", nargs="?", metavar=message("cli.meta-name"), help=message("cli.api-name"))
    parser.add_argument("--write", action="store_true", help=message("cli.api-write", file=PAGE.as_posix()))


def run(args: argparse.Namespace) -> int:
    """Print one entry or the list; 0."""
    if args.write:
        if not PAGE.parent.is_dir():
            raise BadFile(message("cli.no-folder-here", folder=str(PAGE.parent)))
        PAGE.write_text(page(), encoding="utf-8")
        print(message("cli.page-stands", file=str(PAGE)))
    elif args.name:
        print("\n\n".join(f"{typed}{signature(name, thing)}\n\n{textwrap.indent(_words(thing), '    ')}"
                          for typed, name, thing in find(args.name)))  # fmt: skip
    else:
        print("\n".join(contents()))
    return 0


def entries() -> list[tuple[str, str, str, object]]:
    """(chapter, how it is typed, name, the thing itself) of every public name, in the order of reading."""
    found, chapter = [], ""
    for home, names in CHAPTERS:
        id = home.replace(".", "-")
        chapter = message(f"cli.chapter-{id}") if has(f"cli.chapter-{id}") else chapter
        module = importlib.import_module(f"dryward.{home}")
        found += [(chapter, _typed(home, name), name, getattr(module, name)) for name in names.split()]
    return found


def _typed(home: str, name: str) -> str:
    """How a name is written after ``import dryward as dw``."""
    door = importlib.import_module("dryward").PUBLIC.get(home, ())
    return f"dw.{name}" if name in door else f"dw.{home.removeprefix('physics.')}.{name}"


def find(asked: str) -> list[tuple[str, str, object]]:
    """The entries of a name, with or without what stands before it, such as ``profile`` or ``steady.profile``."""
    wanted = asked.removeprefix("dryward.").removeprefix("dw.").removeprefix("physics.")
    every = entries()
    found = [each[1:] for each in every if wanted in (each[1].removeprefix("dw."), each[2])]
    if found:
        return found
    raise UnknownName("public name", asked, [typed.removeprefix("dw.") for _, typed, _, _ in every])


def contents() -> list[str]:
    """A line for each name: how it is typed, and the first line of its docstring."""
    every = entries()
    wide = max(len(typed) for _, typed, _, _ in every)
    lines, shown = ["import dryward as dw"], ""
    for chapter, typed, _, thing in every:
        if chapter != shown:
            lines += ["", chapter]
        shown = chapter
        lines.append(f"  {typed:<{wide}}  {_words(thing).splitlines()[0]}")
    return lines


def _words(thing: object) -> str:
    return inspect.getdoc(thing) or ""


def signature(name: str, thing: object) -> str:
    """What is given to a function or a class, without the annotations that the docstring tells; of a result nothing."""
    made_by_hand = not (dataclasses.is_dataclass(thing) and "Attributes\n-" in _words(thing))
    if not callable(thing) or not made_by_hand:
        return ""
    sign = inspect.signature(thing)
    bare = [p.replace(annotation=inspect.Parameter.empty) for p in sign.parameters.values()]
    return str(sign.replace(parameters=bare, return_annotation=inspect.Signature.empty))


def page() -> str:
    """The whole page in Markdown: the chapters, and each name with its docstring."""
    every, lines, shown = entries(), [message("cli.api-head") + "\n"], ""
    for chapter, typed, name, thing in every:
        if chapter != shown:
            lines.append(f"## {chapter}\n")
        shown = chapter
        lines.append(f"### `{typed}`\n")
        if sign := signature(name, thing):
            lines.append(f"```text\n{textwrap.fill(typed + sign, 100, subsequent_indent='    ')}\n```\n")
        lines.append(markdown(_words(thing)))
        lines += _members(thing)
    return "\n".join(lines).rstrip() + "\n"


def _members(thing: object) -> list[str]:
    """Public properties and methods of a class, a line each."""
    if not inspect.isclass(thing):
        return []
    found = []
    for name, member in vars(thing).items():
        if name.startswith("_") or not (callable(member) or hasattr(member, "__get__")):
            continue
        words = inspect.getdoc(member) or ""
        called = callable(getattr(member, "__func__", member))
        if words:
            found.append(f"- `.{name}{'()' if called else ''}` {' '.join(words.split(chr(10) * 2)[0].split())}")
    return [*found, ""] if found else []


_SECTION = re.compile(r"^(\w+)\n-{3,}$", re.MULTILINE)


def markdown(words: str) -> str:
    """A docstring of the kit's form as Markdown: parameters as a list, examples as code."""
    parts = _SECTION.split(words)
    lines = [_plain(parts[0])]
    for head, body in zip(parts[1::2], parts[2::2], strict=True):
        lines.append(f"**{head}**\n")
        if head == "Examples":
            lines.append(f"```pycon\n{body.strip()}\n```\n")
        elif head in ("Parameters", "Attributes", "Returns", "Raises"):
            lines += _fields(body)
        else:
            lines.append(_plain(body))
    return "\n".join(lines)


def _fields(body: str) -> list[str]:
    found: list[str] = []
    for line in body.strip("\n").splitlines():
        if not line.startswith(" "):
            name, _, kind = line.partition(" : ")
            found.append(f"- `{name}`: {f'{_plain(kind).strip()}.' if kind else ''}")
        elif line.strip():
            found[-1] += f" {_plain(line).strip()}"
    return [*(each.removesuffix(": ") for each in found), ""]


def _plain(words: str) -> str:
    """Literals as Markdown writes them, and nothing that it would take for a mark."""
    return words.strip("\n").replace("``", "`").replace("*", "\\*") + "\n"
