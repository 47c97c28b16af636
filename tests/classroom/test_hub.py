"""The class server: seats, passwords, folders, limits; tried on this machine with the real hub and its proxy."""

import json
import os
import re
import stat
import subprocess
import sys
import time
from types import SimpleNamespace

import pytest
from hub_of_a_class import Browser, hub, proxy

from dryward.checks import BadFile, OutOfRange
from dryward.school import lab
from dryward.school.hub import REGISTER, Seat, is_password, make_seats, read_seats


@pytest.fixture(scope="module")
def command(pytestconfig):
    found = proxy(pytestconfig.cache.mkdir("proxy"))
    if found is None:
        pytest.skip("the hub's proxy is not installed and npm cannot fetch it")
    return found


def test_only_hashes_are_kept(tmp_path):
    given = make_seats(3, tmp_path)
    file = tmp_path / REGISTER
    kept = file.read_text()
    assert list(given) == ["seat-01", "seat-02", "seat-03"]
    assert not any(password in kept for password in given.values())
    assert stat.S_IMODE(file.stat().st_mode) == 0o600
    seats = read_seats(tmp_path)
    assert is_password(seats, "seat-02", f" {given['seat-02'].upper()} ")
    assert not is_password(seats, "seat-02", given["seat-01"])
    assert not is_password(seats, "seat-99", given["seat-01"])
    assert not is_password(seats, "seat-02", "")


def test_a_register_that_cannot_be(tmp_path):
    with pytest.raises(OutOfRange, match="Seats"):
        make_seats(0, tmp_path)
    with pytest.raises(BadFile, match="make the seats with"):
        read_seats(tmp_path)
    make_seats(1, tmp_path)
    with pytest.raises(BadFile, match="is there already; move it away"):
        make_seats(1, tmp_path)
    (tmp_path / REGISTER).write_text("[]")
    with pytest.raises(BadFile, match="cannot be read as the register"):
        read_seats(tmp_path)


def test_the_lessons_that_may_run_are_named(tmp_path):
    page = (lab.write_settings(tmp_path, "lessons/") / "labconfig" / "page_config.json").read_text()
    assert "lessons/05-where-it-gets-wet.ipynb" in page


def first(tmp_path, seat, memory):
    """What a seat's process does first."""
    one = Seat(folder=str(tmp_path), mem_limit=memory)
    one.user = SimpleNamespace(name=seat)
    one.home.mkdir(mode=0o700, exist_ok=True)
    for above in (tmp_path, *list(tmp_path.parents)[:3]):
        above.chmod(above.stat().st_mode | 0o055)  # a way to the folder, as in a class
    if one.number is not None:
        os.chown(one.home, one.number, one.number)
    return one, one.make_preexec_fn(seat)


@pytest.mark.skipif(sys.platform != "linux", reason="limits as Linux has them")
def test_a_seat_is_limited(tmp_path):
    make_seats(2, tmp_path)
    _, begin = first(tmp_path, "seat-01", "500M")
    said = subprocess.run(["/bin/sh", "-c", "ulimit -d; umask; pwd"], preexec_fn=begin, capture_output=True, text=True)
    assert said.stdout.split()[:2] == [str(500 * 1024), "0077"]
    assert said.stdout.split()[2].endswith("seat-01")


@pytest.mark.skipif(os.name != "posix" or os.geteuid() != 0, reason="only root can give each seat a user number")
def test_a_seat_cannot_read_anothers_folder(tmp_path):
    make_seats(2, tmp_path)
    one, begin = first(tmp_path, "seat-01", None)
    two, other = first(tmp_path, "seat-02", None)
    subprocess.run(["/bin/sh", "-c", "echo mine > answers"], preexec_fn=begin, check=True)
    assert (one.home / "answers").stat().st_uid == one.number != two.number
    spied = subprocess.run(["/bin/cat", str(one.home / "answers")], preexec_fn=other, capture_output=True, text=True)
    assert spied.stdout == ""
    assert "denied" in spied.stderr
    secret = ["/bin/cat", str(tmp_path / REGISTER)]
    assert subprocess.run(secret, preexec_fn=other, capture_output=True).stdout == b""


def lab_page(browser, address, seat, log, seconds=90):
    """JupyterLab's page, once the seat has started."""
    page, end = "", time.monotonic() + seconds
    while "drywardLessons" not in page:
        assert time.monotonic() < end, log.read_text()[-3000:]
        time.sleep(1)
        page = browser.ask(f"{address}user/{seat}/doc/tree/00-start.ipynb")[1]
    return page


@pytest.mark.slow
def test_what_nobody_uses_closes(tmp_path, command):
    ((seat, password),) = make_seats(1, tmp_path).items()
    with hub(tmp_path, command, DRYWARD_IDLE_MINUTES="0.1") as (address, log):
        browser = Browser()
        assert browser.login(address, seat, password) == 200
        browser.ask(f"{address}hub/spawn/{seat}")
        lab_page(browser, address, seat, log)
        kernels = f"{address}user/{seat}/api/kernels"
        token = browser.token(f"/user/{seat}/")
        assert browser.ask(f"{kernels}?_xsrf={token}", b"{}")[0] == 201
        assert "execution_state" in browser.ask(kernels)[1]
        end = time.monotonic() + 40
        while browser.ask(kernels)[1].strip() != "[]":
            assert time.monotonic() < end, "the lesson stays open"
            time.sleep(1)
        end = time.monotonic() + 150
        while f"User {seat} server stopped" not in log.read_text():  # asking the seat itself would keep it open
            assert time.monotonic() < end, "the seat stays open"
            time.sleep(2)
        assert browser.ask(kernels)[0] in (404, 424, 503)


@pytest.mark.slow
def test_a_class_signs_in_and_opens_its_own_lessons(tmp_path, command):
    given = make_seats(2, tmp_path)
    (seat, password), (other, second) = given.items()
    with hub(tmp_path, command) as (address, log):
        lessons = f"{address}user/{seat}/api/contents"
        assert "ipynb" not in Browser().ask(lessons)[1]
        assert Browser().login(address, seat, "not-this-one") == 403
        assert Browser().login(address, seat, given[other]) == 403
        one, two = Browser(), Browser()
        assert one.login(address, seat, password) == 200
        assert two.login(address, other, second) == 200
        one.ask(f"{address}hub/spawn/{seat}")
        page = lab_page(one, address, seat, log)
        assert re.search(r'"drywardLessons": ".*05-where-it-gets-wet', page)
        status, text = one.ask(lessons)
        assert status == 200
        assert "05-where-it-gets-wet.ipynb" in text
        assert (tmp_path / seat / "lessons" / "00-start.ipynb").is_file()
        # Messages to a second shell of the kernel could be lost; a slider would then do nothing.
        kernels = "lab/api/settings/@jupyterlab/apputils-extension:kernels-settings"
        status, text = one.ask(f"{address}user/{seat}/{kernels}")
        assert status == 200
        assert json.loads(text)["schema"]["properties"]["commsOverSubshells"]["default"] == "disabled"
        # The other has a seat too, and nothing of this one.
        status, text = two.ask(lessons)
        assert status in (403, 404)
        assert "ipynb" not in text
