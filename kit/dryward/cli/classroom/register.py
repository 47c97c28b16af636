"""The seats of a class and their passwords, kept as hashes: ``python -m dryward.cli.classroom.register 30 FOLDER``."""

import hashlib
import hmac
import json
import secrets
import sys
from pathlib import Path

from dryward.checks import BadFile, within
from dryward.cli.classroom.door import new_password
from dryward.storage import Format, write_whole

#: The file of a class.
FILE = "register.json"
_FORMAT = Format("dryward register", 1)
#: Cost of one guess: some 50 ms and 16 MB.
_COST = {"n": 2**14, "r": 8, "p": 1}


def _hash(password, salt):
    return hashlib.scrypt(password.encode(), salt=bytes.fromhex(salt), dklen=32, **_COST).hex()


def make(seats, folder):
    """Make the seats of a class.

    Parameters
    ----------
    seats : int
        1 to 200.
    folder : Path

    Returns
    -------
    dict
        Password by seat, to be printed and given out; only hashes are kept.

    Raises
    ------
    OutOfRange
        For a number of seats that cannot be.
    BadFile
        When the class has seats already.
    """
    within("Seats", seats, 1, 200)
    folder = Path(folder)
    folder.mkdir(mode=0o755, parents=True, exist_ok=True)
    given = {f"seat-{number:02d}": new_password() for number in range(1, seats + 1)}
    kept = {}
    for seat, password in given.items():
        salt = secrets.token_hex(16)
        kept[seat] = {"salt": salt, "hash": _hash(password, salt)}
    try:
        write_whole(folder / FILE, json.dumps(_FORMAT.headed({"seats": kept}), indent=1), new=True, private=True)
    except FileExistsError:
        raise BadFile(f"{folder / FILE} is there already; move it away to make new passwords.") from None
    return given


def read(folder):
    """The seats of a class.

    Parameters
    ----------
    folder : Path

    Returns
    -------
    dict

    Raises
    ------
    BadFile
        When there is no register, or it cannot be read.
    """
    path = Path(folder) / FILE
    try:
        return dict(_FORMAT.current(json.loads(path.read_text("utf-8")))["seats"])
    except FileNotFoundError:
        raise BadFile(f"There is no {path}; make the seats with `python -m dryward.cli.classroom.register`.") from None
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        raise BadFile(f"{path} cannot be read as the register of a class.") from None


def right(seats, seat, password):
    """Whether that is the password of a seat; a seat that is not there takes as long.

    Parameters
    ----------
    seats : dict
    seat, password : str

    Returns
    -------
    bool
    """
    kept = seats.get(seat, {"salt": "00" * 16, "hash": ""})
    found = _hash(password.strip().lower(), kept["salt"])
    return hmac.compare_digest(found, kept["hash"]) and seat in seats


if __name__ == "__main__":
    for line in make(int(sys.argv[1]), sys.argv[2]).items():
        print(*line, sep="   ")
