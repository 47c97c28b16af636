"""``dryward pages``: the lessons as web pages that show no code."""

from __future__ import annotations

import argparse
import ipaddress
import json
import os
import socket
import warnings
import webbrowser
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import urlsplit
from urllib.request import url2pathname

from dryward.checks import BadFile, OutOfRange, PlainError
from dryward.language import message
from dryward.school import folders
from dryward.teaching import lessons
from dryward.units import number

if TYPE_CHECKING:  # it needs the library of the pages
    from dryward.school.learners import Learners

_HERE = "127.0.0.1"
#: Of a server's ports.
HIGHEST_PORT = 65535
#: Most kernels kept ready.
_READY = 50
#: Fewest signs of a password one chooses oneself.
_SHORTEST = 10
#: Where a password of one's own is read from: on the command line everybody on the computer could see it.
_PASSWORD = "DRYWARD_PAGES_PASSWORD"


class Open(PlainError):
    """Refused: strangers could come in."""


class NotInstalled(PlainError):
    """What serves the pages is not there."""


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    parser.add_argument("--share", action="store_true", help=message("cli.pages-share"))
    parser.add_argument("--address", help=message("cli.pages-address"))
    parser.add_argument("--port", type=int, default=8866, help=message("cli.pages-port"))
    parser.add_argument("--folder", type=Path, help=message("cli.board-folder"))
    parser.add_argument("--mine", action="store_true", help=message("cli.pages-mine"))
    parser.add_argument("--ready", type=int, default=4, help=message("cli.pages-ready"))
    parser.add_argument("--most", type=int, default=60, help=message("cli.pages-most"))
    parser.add_argument("--away", type=float, default=5, help=message("cli.pages-away"))
    parser.add_argument("--certificate", type=Path, help=message("cli.pages-certificate"))
    parser.add_argument("--certificate-key", type=Path, help=message("cli.pages-certificate-key"))
    parser.add_argument("--no-browser", action="store_true", help=message("cli.no-browser"))


def run(args: argparse.Namespace) -> int:
    """Serve until Ctrl-C."""
    if not 1 <= args.port <= HIGHEST_PORT:
        raise OutOfRange(message("cli.port-range", port=str(args.port), most=str(HIGHEST_PORT)))
    if not 1 <= args.ready <= _READY:
        raise OutOfRange(message("cli.ready-range", number=str(args.ready), most=str(_READY)))
    if not 1 <= args.most <= 500:
        raise OutOfRange(message("cli.most-range", number=str(args.most)))
    if not 0.05 <= args.away <= 600:
        raise OutOfRange(message("cli.away-range", minutes=number(args.away, figures=6)))
    address = where(args.share, args.address, args.mine)
    certificate = _certificate(args)
    try:
        from dryward.school import learners, server
    except ModuleNotFoundError as missing:
        raise NotInstalled(message("cli.pages-need", library=missing.name, how=how_to_add())) from None
    warnings.simplefilter("ignore", DeprecationWarning)  # of the libraries' own older settings
    folder = args.folder or (folders.own_lessons() if args.mine else folders.class_folder())
    people = learners.Learners(folder.expanduser().resolve(), own=args.mine)
    password = chosen_password() or (learners.new_password() if args.share else learners.random_signs(24))
    at = f"{'https' if certificate else 'http'}://{shown(address)}:{args.port}/"
    board = f"{at}board?key={(board_key := learners.random_signs(24))}"
    told = (lambda: _say_shared(at, password, people, board)) if args.share else (lambda: _say(at, password, board))

    def say() -> None:
        told()
        if not (args.no_browser or args.share):
            webbrowser.open(f"{at}?key={password}")

    for trouble in lessons.troubles():
        print(trouble)
    with folders.served_lessons() as served:
        settings = server.configuration(served, args.port, args.ready, args.most, round(60 * args.away))
        server.serve(settings, people, (password, board_key), address, certificate, say)
    return 0


def how_to_add() -> str:
    """What to type for the pages' libraries: the way the kit itself was installed."""
    from importlib.metadata import distribution

    quote = '"' if os.name == "nt" else "'"
    origin = json.loads(distribution("dryward").read_text("direct_url.json") or "{}")
    if origin.get("dir_info", {}).get("editable"):
        folder = url2pathname(urlsplit(origin["url"]).path)
        return message("cli.pip-of-checkout", wanted=f"{quote}.[pages]{quote}", folder=folder)
    return message("cli.pip", wanted=f"{quote}dryward[pages]{quote}")


def where(share: bool, address: str | None, mine: bool = False) -> str:
    """The address to serve at; refused when others could reach the pages and it was not asked for."""
    if mine and share:
        raise Open(message("cli.mine-or-share"))
    if address is None:
        return _own_address() if share else _HERE
    address = _HERE if address == "localhost" else address
    try:
        local = ipaddress.ip_address(address).is_loopback
    except ValueError:
        raise OutOfRange(message("cli.address-not-understood", address=address)) from None
    if not local and not share:
        raise Open(message("cli.address-open", address=address))
    return address


def chosen_password() -> str | None:
    """The password of one's own from the environment, or None; refused when it is too short."""
    chosen = os.environ.pop(_PASSWORD, None)  # taken away: kernels need not know it
    if chosen is None:
        return None
    plain = chosen.strip().lower()
    if len(plain) < _SHORTEST:
        raise Open(message("cli.password-short", variable=_PASSWORD, count=str(len(plain)), least=str(_SHORTEST)))
    return plain


def _certificate(args: argparse.Namespace) -> tuple[str, str] | None:
    if not args.certificate and not args.certificate_key:
        return None
    if not (args.certificate and args.certificate_key):
        raise BadFile(message("cli.certificate-and-key"))
    for path in (args.certificate, args.certificate_key):
        if not path.is_file():
            raise BadFile(message("cli.no-file", file=str(path)))
    return str(args.certificate), str(args.certificate_key)


def _own_address() -> str:
    """This computer's address on the network it would use; nothing is sent."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(("192.0.2.1", 9))  # an address kept for documents; a datagram socket only looks up the way
            return asking.getsockname()[0]
        except OSError:
            raise OutOfRange(message("cli.no-network")) from None


def shown(address: str) -> str:
    """An address as it stands between // and the port."""
    return f"[{address}]" if ":" in address else address


def _say(at: str, key: str, board: str) -> None:
    print(message("cli.open-address"), "", f"    {at}?key={key}", "", sep="\n")
    print(message("cli.board-address", address=board))
    print(message("cli.only-here"), flush=True)


def _say_shared(at: str, password: str, people: Learners, board: str) -> None:
    plain = at.startswith("http:")
    lines = [
        message("cli.class-opens"),
        "",
        f"    {at}",
        f"    {message('cli.class-password', password=password)}",
        "",
        message("cli.class-shared"),
        message("cli.class-answers", folder=str(people.path)),
        message("cli.class-board", address=board),
    ]
    if plain:
        lines.append(message("cli.class-http"))
    print("\n".join(lines), flush=True)
