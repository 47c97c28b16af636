"""The learner's file on the disk: reading any version, writing whole, one writer at a time."""

import contextlib
import errno
import json
import os
import uuid
from datetime import datetime

from dryward.checks import BadFile

try:
    import fcntl
except ImportError:  # Windows
    fcntl = None
    import msvcrt

FORMAT, VERSION = "dryward progress", 2
#: What an event of each kind must hold; more is kept as it is.
_NEEDS = {
    "prediction": {"lesson": str, "choice": str},
    "answer": {"lesson": str, "question": str, "right": bool},
    "setting": {"name": str, "value": (str, bool, int, float)},
    "opened": {"lesson": str},
    "task": {"lesson": str, "task": str},
}


class NewerFile(BadFile):
    """A file of a later version."""


def moment(text):
    """A time as it stands in the file."""
    return datetime.fromisoformat(text)


def read(path):
    """Events of a file by their marks; none when there is no file."""
    try:
        body = json.loads(path.read_text("utf-8"))
    except FileNotFoundError:
        return {}
    except (ValueError, RecursionError):
        raise BadFile(
            f"{path.name} cannot be read as a progress file; it is kept aside and a new one is begun."
        ) from None
    except OSError as error:
        raise NewerFile(f"{path.name} cannot be read: {reason(error)}.") from None
    return _events(path, body)


def _events(path, body):
    strange = BadFile(f"{path.name} is no progress file of this kit; it is kept aside and a new one is begun.")
    if not isinstance(body, dict) or body.get("format") != FORMAT:
        raise strange
    version = body.get("version")
    if not isinstance(version, int) or isinstance(version, bool) or version < 1:
        raise strange
    if version > VERSION:
        raise NewerFile(f"{path.name} was written by a newer version of this kit; update the kit, nothing was changed.")
    if version == 1:
        try:
            body = _from_first(body)
        except (AttributeError, TypeError, ValueError):
            raise strange from None
    listed = body.get("events")
    if not isinstance(listed, list) or not all(_is_event(each) for each in listed):
        raise strange
    return {each["id"]: each for each in listed}


def _is_event(each):
    if not isinstance(each, dict) or not isinstance(each.get("kind"), str) or each["kind"] not in _NEEDS:
        return False
    if not isinstance(each.get("id"), str) or not isinstance(each.get("when"), str):
        return False
    if any(not isinstance(each.get(key), kind) for key, kind in _NEEDS[each["kind"]].items()):
        return False
    try:
        return moment(each["when"]).tzinfo is not None
    except (ValueError, OverflowError):
        return False


def _from_first(body):
    """Version 1 held the last state only: tables of predictions and settings, and a list of answers."""
    when = body.get("saved", "2000-01-01T00:00:00+00:00")
    events = [
        {"kind": "prediction", "lesson": lesson, "choice": key} for lesson, key in body.get("predictions", {}).items()
    ]
    events += [{"kind": "setting", "name": name, "value": value} for name, value in body.get("settings", {}).items()]
    events += [{"kind": "answer", **each} for each in body.get("answers", ())]
    # The mark follows from the content, so that two windows migrate to the same events.
    return {
        "events": [
            {
                "id": uuid.uuid5(uuid.NAMESPACE_OID, json.dumps([count, each], sort_keys=True)).hex,
                "when": each.get("when", when),
                **each,
            }
            for count, each in enumerate(events)
        ]
    }


def free_name(path):
    """A name beside the file for what could not be read."""
    for count in range(1, 1000):
        found = path.with_name(f"{path.stem}-unreadable-{count}{path.suffix}")
        if not found.exists():
            return found
    raise BadFile(f"There are too many unreadable copies of {path.name}; move them away.")


def reason(error):
    """Why the system refused, in plain words."""
    words = {
        errno.ENOSPC: "the disk is full",
        errno.EDQUOT: "the disk is full",
        errno.EACCES: "this folder may not be written",
        errno.EPERM: "this folder may not be written",
        errno.EROFS: "this folder may not be written",
        errno.ENOTDIR: "the folder is not there",
    }
    return words.get(error.errno, (error.strerror or "the system refused it").lower())


@contextlib.contextmanager
def alone(path):
    """One writer at a time; the system lets go of the lock when a program dies."""
    with path.with_name(f".{path.name}.lock").open("a+b") as lock:
        if fcntl:
            with contextlib.suppress(OSError):  # a network disk without locks: better kept than refused
                fcntl.flock(lock, fcntl.LOCK_EX)
            yield
        else:
            lock.seek(0)
            msvcrt.locking(lock.fileno(), msvcrt.LK_LOCK, 1)
            try:
                yield
            finally:
                lock.seek(0)
                msvcrt.locking(lock.fileno(), msvcrt.LK_UNLCK, 1)


def write(path, events):
    """The file, whole or not at all."""
    body = {"format": FORMAT, "version": VERSION, "events": list(events)}
    fresh = path.with_name(f".{path.name}.{uuid.uuid4().hex[:8]}")
    try:
        with fresh.open("w", encoding="utf-8") as file:
            file.write(json.dumps(body, indent=1, ensure_ascii=False) + "\n")
            file.flush()
            os.fsync(file.fileno())
        fresh.replace(path)
    finally:
        fresh.unlink(missing_ok=True)
