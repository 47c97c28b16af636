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
from dryward.school import folders
from dryward.teaching import lessons

if TYPE_CHECKING:  # it needs the library of the pages
    from dryward.school.learners import Learners

_HERE = "127.0.0.1"
#: Of a server's ports.
HIGHEST_PORT = 65535
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
    parser.add_argument("--share", action="store_true", help="let a class on the same network in, with a password")
    parser.add_argument("--address", help="address to serve at: 127.0.0.1, or with --share this computer's own")
    parser.add_argument("--port", type=int, default=8866, help="port (8866)")
    parser.add_argument("--folder", type=Path, help="where the learners' answers are kept, a folder for each")
    parser.add_argument("--mine", action="store_true", help="one learner: keep the answers with your own lessons")
    parser.add_argument("--ready", type=int, default=4, help="lessons kept ready to open at once (4)")
    parser.add_argument("--most", type=int, default=60, help="most lessons open at the same time (60)")
    parser.add_argument("--away", type=float, default=5, help="minutes until a lesson nobody looks at is closed (5)")
    parser.add_argument("--certificate", type=Path, help="certificate file, to serve by https")
    parser.add_argument("--certificate-key", type=Path, help="key file of the certificate")
    parser.add_argument("--no-browser", action="store_true", help="print the address and open no browser")


def run(args: argparse.Namespace) -> int:
    """Serve until Ctrl-C."""
    for name, value, most in (("port", args.port, HIGHEST_PORT), ("number kept ready", args.ready, 50)):
        if not 1 <= value <= most:
            raise OutOfRange(f"The {name} is {value}; it must be 1 to {most}.")
    if not 1 <= args.most <= 500:
        raise OutOfRange(f"The most open lessons is {args.most}; it must be 1 to 500.")
    if not 0.05 <= args.away <= 600:
        raise OutOfRange(f"The time until a lesson is closed is {args.away:g} minutes; it must be 0.05 to 600 minutes.")
    address = where(args.share, args.address, args.mine)
    certificate = _certificate(args)
    try:
        from dryward.school import learners, server
    except ModuleNotFoundError as missing:
        raise NotInstalled(f"The pages need {missing.name}, which is not installed; {how_to_add()} adds it.") from None
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
        return f"`pip install -e {quote}.[pages]{quote}`, typed in {folder} with the pip of this environment,"
    return f"`pip install {quote}dryward[pages]{quote}`"


def where(share: bool, address: str | None, mine: bool = False) -> str:
    """The address to serve at; refused when others could reach the pages and it was not asked for."""
    if mine and share:
        raise Open("--mine keeps one learner's answers; it cannot be shared. Leave one of --mine and --share out.")
    if address is None:
        return _own_address() if share else _HERE
    address = _HERE if address == "localhost" else address
    try:
        local = ipaddress.ip_address(address).is_loopback
    except ValueError:
        raise OutOfRange(f"The address {address} is not understood; write numbers, like 192.168.1.20.") from None
    if not local and not share:
        raise Open(f"At {address} others on the network could open the pages; add --share, which asks for a password.")
    return address


def chosen_password() -> str | None:
    """The password of one's own from the environment, or None; refused when it is too short."""
    chosen = os.environ.pop(_PASSWORD, None)  # taken away: kernels need not know it
    if chosen is None:
        return None
    plain = chosen.strip().lower()
    if len(plain) < _SHORTEST:
        raise Open(f"The password in {_PASSWORD} has {len(plain)} signs; it must have {_SHORTEST} or more.")
    return plain


def _certificate(args: argparse.Namespace) -> tuple[str, str] | None:
    if not args.certificate and not args.certificate_key:
        return None
    if not (args.certificate and args.certificate_key):
        raise BadFile("A certificate needs its key: give --certificate and --certificate-key together.")
    for path in (args.certificate, args.certificate_key):
        if not path.is_file():
            raise BadFile(f"There is no file {path}.")
    return str(args.certificate), str(args.certificate_key)


def _own_address() -> str:
    """This computer's address on the network it would use; nothing is sent."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(("192.0.2.1", 9))  # an address kept for documents; a datagram socket only looks up the way
            return asking.getsockname()[0]
        except OSError:
            raise OutOfRange("This computer is on no network; give the address with --address.") from None


def shown(address: str) -> str:
    """An address as it stands between // and the port."""
    return f"[{address}]" if ":" in address else address


def _say(at: str, key: str, board: str) -> None:
    print("Open this address in a browser:", "", f"    {at}?key={key}", "", sep="\n")
    print(f"The instructor's board:  {board}")
    print("Only this computer can reach them. Press Ctrl-C here to stop.", flush=True)


def _say_shared(at: str, password: str, people: Learners, board: str) -> None:
    plain = at.startswith("http:")
    lines = [
        "The class opens this address in a browser and types the password:",
        "",
        f"    {at}",
        f"    password   {password}",
        "",
        "What is shared: the lesson pages, and for each browser its own answers. No file, no code",
        "and no other learner's answers can be seen. Each lesson runs on this computer.",
        "The password is good until you stop, here with Ctrl-C; the next start makes a new one.",
        f"The answers are kept in {people.path}",
        f"The instructor's board, for you alone:  {board}",
    ]
    if plain:
        lines.append("By http, who listens on the network can read along: use a network of your own or --certificate.")
    print("\n".join(lines), flush=True)
