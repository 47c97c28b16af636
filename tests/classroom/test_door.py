"""Who gets in and what they get: strangers nothing, learners only their own, nobody a file or a line of code."""

import asyncio
import json
import re
import signal

import pytest
from served import ask, cookies_of, enter, served, stop
from tornado.httpclient import HTTPClientError
from visitor import Visitor

from dryward.checks import BadFile, OutOfRange
from dryward.cli import pages
from dryward.school.learners import Learners
from dryward.school.server import RULES
from dryward.teaching import lessons
from dryward.teaching.progress import FILE, Progress

LESSON = "where-it-gets-wet"
#: What a stranger or a curious learner may try.
ADDRESSES = (
    "", "lesson/where-it-gets-wet", "lesson/start", "voila/static/voila.js", "voila/static/watch.js",
    "api/kernels", "api/contents", "voila/tree", "voila/files/05-where-it-gets-wet.ipynb", "voila/labextensions/x/y.js",
)  # fmt: skip
OUTSIDE = (
    "lesson/no-such-lesson", "lesson/../pyproject.toml", "lesson/05-where-it-gets-wet.ipynb", "lesson/guide", "lessons",
    "voila/files/05-where-it-gets-wet.ipynb", "voila/files/05-where-it-gets-wet.png", "voila/tree", "voila/tree/guide",
    "voila/render/05-where-it-gets-wet.ipynb", "voila/api/contents", "api/contents", "api/kernels", "api/kernelspecs",
    "api/sessions", "api/terminals", "tree", "lab", "files/etc/passwd", "voila/static/../../../page.css",
    "voila/static/%2e%2e/page.css", "voila/static/", "voila/static", "voila/labextensions/",
    "voila/labextensions/anywidget", "etc/passwd", "%2e%2e/%2e%2e/etc/passwd",
    "api/kernels/00000000-0000-0000-0000-000000000000",
)  # fmt: skip


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    with served(tmp_path_factory.mktemp("door"), "--ready", "2") as found:
        yield found


@pytest.mark.parametrize("path", ADDRESSES)
def test_a_stranger_gets_nothing(server, path):
    status, headers, text = ask(server.address + path)
    assert status in (302, 403)
    assert status == 403 or headers["Location"].startswith("/enter")
    assert "lesson/" not in text
    assert "Set-Cookie" not in headers


@pytest.mark.parametrize("key", ["", "x", "é", "0" * 24])
def test_a_wrong_key_gets_nothing(server, key):
    status, headers, _ = ask(f"{server.address}?key={key.encode().hex()}")
    assert (status, headers["Location"]) == (302, "/enter")


def test_a_forged_cookie_gets_nothing(server):
    cookies = enter(server)
    forged = re.sub(r'(dryward-entered=.*?)[0-9a-f]{8}("?)(;|$)', r"\g<1>00000000\2\3", cookies)
    assert forged != cookies
    assert ask(server.address, cookies=cookies)[0] == 200
    assert ask(server.address, cookies=forged)[0] == 302


@pytest.mark.parametrize("path", OUTSIDE)
def test_what_is_no_lesson_is_not_there(server, path):
    status, _, text = ask(server.address + path, cookies=enter(server))
    assert status == 404
    assert "Traceback" not in text
    assert "root:" not in text


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH"])
def test_nothing_can_be_written(server, method):
    for path in ("", f"lesson/{LESSON}", "api/contents/x.ipynb", "voila/static/watch.js"):
        assert ask(server.address + path, method, enter(server), b"{}")[0] in (403, 404, 405)


def test_every_answer_carries_the_rules(server):
    cookies = enter(server)
    for path in ("", "enter", f"lesson/{LESSON}", "voila/static/voila.js", "no-such-page"):
        _, headers, _ = ask(server.address + path, cookies=cookies)
        for name, value in RULES.items():
            assert headers.get_all(name) == [value], (path, name)
        assert "Server" not in headers


def test_an_error_is_said_in_plain_words(server):
    _, _, text = ask(server.address + "lesson/roof", cookies=enter(server))
    assert "There is no such page here. The first page lists every lesson." in text
    assert '<main id="inside"' in text


def test_the_first_page_lists_every_lesson_by_pathway(server):
    cookies = enter(server)
    _, _, alone = ask(f"{server.address}?way=self-study", cookies=cookies)
    assert re.findall(r'lesson/([a-z-]+)\?way=self-study">\d', alone) == list(lessons.pages())
    _, _, half = ask(f"{server.address}?way=half-day", cookies=cookies)
    assert "Four-hour day" in half
    assert "lesson/july?way=half-day" in half
    assert "lesson/twelve-months" not in half
    assert ask(f"{server.address}?way=%3Cscript%3E", cookies=cookies)[0] == 200


def test_no_code_is_in_a_lesson(server):
    status, _, text = ask(f"{server.address}lesson/{LESSON}?way=half-day", cookies=enter(server))
    assert status == 200
    assert "<title>5. Where it gets wet · dryward</title>" in text
    assert not re.search(r"\b(from|import) dryward|prompt", text)
    assert "panels.page" not in text
    assert str(server.folder) not in text
    assert "Next: 8. The film that changes" in text


def test_a_password_is_asked_for_and_guessing_is_slow(tmp_path):
    with served(tmp_path, "--share", "--address", "127.0.0.1", "--ready", "1") as server:
        said = server.said()
        assert re.fullmatch(r"([2-9a-z]{4}-){2}[2-9a-z]{4}", server.secret)
        assert "What is shared" in said
        assert "No file, no code" in " ".join(said.split())
        _, headers, form = ask(server.address + "enter")
        cookies = cookies_of(headers)
        token = re.search(r'name="_xsrf" value="([^"]+)"', form).group(1)

        def enter(password, onward="/"):
            body = f"_xsrf={token}&password={password}&next={onward}".encode()
            return ask(server.address + "enter", "POST", cookies, body, Referer=server.address)

        status, headers, _ = enter(server.secret.upper(), "/lesson/july")
        assert (status, headers["Location"]) == (302, "/lesson/july")
        assert all("HttpOnly" in line for line in headers.get_all("Set-Cookie") if line.startswith("dryward"))
        assert ask(server.address, cookies=cookies_of(headers))[0] == 200
        for onward in ("//example.org/", "https://example.org/", "/lesson/\\example.org", "/enter"):
            assert enter(server.secret, onward)[1]["Location"] == "/"
        tries = [enter(f"wrong{number}")[0] for number in range(12)]
        assert tries == [401] * 10 + [429] * 2
        assert enter(server.secret)[0] == 429
        assert ask(server.address + "enter", "POST", "", f"password={server.secret}".encode())[0] == 403


@pytest.mark.parametrize(
    ("share", "address", "mine", "kind", "sentence"),
    [
        (False, "0.0.0.0", False, pages.Open, "others on the network could open the pages; add --share"),
        (False, "192.0.2.7", False, pages.Open, "add --share, which asks for a password"),
        (True, None, True, pages.Open, "it cannot be shared"),
        (True, "my.computer", False, OutOfRange, "The address my.computer is not understood; write numbers"),
    ],
)
def test_it_refuses_to_run_open(share, address, mine, kind, sentence):
    with pytest.raises(kind, match=re.escape(sentence)):
        pages.where(share, address, mine)


def test_a_short_password_is_refused(monkeypatch):
    monkeypatch.setenv("DRYWARD_PAGES_PASSWORD", "roof")
    with pytest.raises(pages.Open, match="has 4 signs; it must have 10 or more"):
        pages.chosen_password()


def test_a_folder_that_cannot_be_used_is_one_sentence(tmp_path):
    (tmp_path / "file").write_text("")
    with pytest.raises(BadFile, match="cannot be used: Not a directory"):
        Learners(tmp_path / "file" / "class")


def test_learners_never_meet(server):
    async def both():
        one, two = (Visitor(server.address, enter(server), LESSON) for _ in range(2))
        await one.open()
        await one.predict(0)
        await two.open()
        assert one.frame["prediction"]["chosen"] == 0
        assert two.frame["prediction"]["chosen"] is None
        await two.predict(2)
        one.say({"kind": "answer", "number": 0, "choice": 0})
        await one.wait(lambda: one.frame["questions"][0]["reply"])
        # The other's kernel does not exist for a learner, whatever is done with its name.
        stranger = Visitor(server.address, two.cookies, LESSON)
        stranger.kernel = one.kernel
        with pytest.raises(HTTPClientError, match="404"):
            await stranger.connect()
        address = f"{server.address}api/kernels/{one.kernel}"
        assert ask(address, cookies=two.cookies)[0] == 404
        assert ask(address, cookies=one.cookies)[0] == 200
        assert ask(address, "DELETE", one.cookies)[0] in (403, 405)
        assert ask(f"{server.address}voila/api/shutdown/{one.kernel}", "POST", two.cookies, b"")[0] == 404
        await one.moved(**{one.slider()[0]: one.slider()[1]})
        await one.close()
        await two.close()
        return one, two

    one, two = asyncio.run(both())
    found = {}
    for folder in Learners(server.folder / "class").folders().values():
        if (folder / FILE).is_file():
            found[folder.name] = [each["choice"] for each in Progress(folder).events("prediction", LESSON)]
    keys = [choice.key for choice in lessons.lesson(LESSON).prediction.choices]
    assert sorted(found.values()) == [[keys[0]], [keys[2]]]
    # Each comes back to its own.
    for each, chosen in ((one, 0), (two, 2)):

        async def again(each=each):
            visitor = Visitor(server.address, each.cookies, LESSON)
            await visitor.open()
            await visitor.close()
            return visitor.frame["prediction"]["chosen"]

        assert asyncio.run(again()) == chosen


def test_a_page_may_not_run_code(server):
    async def tried():
        visitor = Visitor(server.address, enter(server), LESSON)
        await visitor.open()
        await visitor.predict(1)
        mark = server.folder / "was-here"
        code = f"open({str(mark)!r}, 'w').write('x')"
        for channel_message in ("execute_request", "inspect_request", "complete_request"):
            visitor.send(channel_message, {"code": code, "silent": False, "cursor_pos": 3, "detail_level": 0})
        await visitor.moved(**{visitor.slider()[0]: visitor.slider()[2]})
        await visitor.close()
        return mark.exists()

    assert not asyncio.run(tried())


def test_a_code_brings_back_and_only_a_known_one(server):
    async def answered():
        visitor = Visitor(server.address, enter(server), LESSON)
        await visitor.open()
        await visitor.predict(1)
        await visitor.close()
        return visitor.cookies

    mine = asyncio.run(answered())
    code = re.search(r"Your code is <code>([^<]+)</code>", ask(server.address, cookies=mine)[2]).group(1)

    def change(typed):
        cookies = enter(server)
        _, headers, page = ask(server.address, cookies=cookies)
        cookies = cookies_of(headers, cookies)
        token = re.search(r'name="_xsrf" value="([^"]+)"', page).group(1)
        status, headers, text = ask(
            server.address + "afresh", "POST", cookies, f"_xsrf={token}&code={typed}".encode(), Referer=server.address
        )
        return status, cookies_of(headers, cookies), text

    status, cookies, _ = change(code.upper())
    assert status == 302
    assert "Go on with" in ask(server.address, cookies=cookies)[2]
    for wrong in ("aaaaa-aaaaa", "..%2F..%2Fetc", code[:-1]):
        assert change(wrong)[0] == 404
    status, cookies, _ = change("")
    assert status == 302
    assert "Go on with" not in ask(server.address, cookies=cookies)[2]


def test_a_new_start_shuts_the_door_and_knows_the_browser_again(tmp_path):
    with served(tmp_path, "--ready", "1") as server:
        cookies = enter(server)
        page = ask(server.address, cookies=cookies)[2]
        first = re.search(r"Your code is <code>([^<]+)", page).group(1)
    with served(tmp_path, "--ready", "1") as server:
        assert ask(server.address, cookies=cookies)[0] == 302  # the password is another one
        _, headers, _ = ask(server.entry, cookies=cookies)
        page = ask(server.address, cookies=cookies_of(headers, cookies))[2]
        assert re.search(r"Your code is <code>([^<]+)", page).group(1) == first
        key = server.folder / "class" / ".dryward-key"
        assert key.stat().st_mode & 0o077 == 0


def test_a_full_house_says_so(tmp_path):
    with served(tmp_path, "--ready", "1", "--most", "1") as server:

        async def two():
            first = Visitor(server.address, enter(server), LESSON)
            await first.open()
            status, _, text = await asyncio.to_thread(ask, f"{server.address}lesson/july", cookies=enter(server))
            await first.close()
            return status, text

        status, text = asyncio.run(two())
        assert status == 503
        assert "All places on this computer are taken" in text


def test_a_stopped_server_leaves_no_kernel_behind(tmp_path):
    with served(tmp_path, "--ready", "2") as server:

        async def one():
            visitor = Visitor(server.address, enter(server), LESSON)
            await visitor.open()
            await visitor.close()

        asyncio.run(one())
        kernels = server.kernels()
        assert kernels
        server.process.send_signal(signal.SIGTERM)
        server.process.wait(30)
        assert not [each for each in kernels if each.is_running() and each.status() != "zombie"]
        stop(server.process)


def test_what_a_kernel_is_given_names_no_password(server):
    async def one():
        visitor = Visitor(server.address, enter(server), LESSON)
        await visitor.open()
        await visitor.close()

    asyncio.run(one())
    for kernel in server.kernels():
        told = json.dumps(kernel.environ()) + " ".join(kernel.cmdline())
        assert server.secret not in told
