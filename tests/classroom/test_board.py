"""The instructor's board: counted from the learners' files, on the screen and as a page, for nobody else."""

import re
from datetime import UTC, datetime, timedelta

import pytest
from served import ask, cookies_of, enter, served

from dryward import cli
from dryward.checks import BadFile
from dryward.school.standing import board, learner_folders
from dryward.teaching import lessons, questions
from dryward.teaching.progress import FILE, Progress

LESSON = "where-it-gets-wet"
#: Checks of that lesson.
COUNT = len(questions.checks(LESSON))
NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)


def learner(folder, choice, right=(), wrong=(), lesson=LESSON, minutes=0):
    """A learner who predicted and answered."""
    progress = Progress(folder, now=lambda: NOON - timedelta(minutes=minutes))
    progress.opened(lesson)
    progress.predicted(lesson, choice)
    for number, question in enumerate(questions.checks(lesson, 1)):
        if number in (*right, *wrong):
            wanted = number in right
            progress.answered(lesson, question, next(each for each in question.choices if each.right == wanted))
    return progress


@pytest.fixture
def klass(tmp_path):
    """Three who answered, and a folder that is somebody else's."""
    keys = [each.key for each in lessons.lesson(LESSON).prediction.choices]
    learner(tmp_path / "aaaaaaaaaa", keys[0], right=(0,), wrong=(1,), minutes=7)
    learner(tmp_path / "bbbbbbbbbb", keys[0], right=range(COUNT)).said_of(LESSON, "no-drops-no-problem", True)
    learner(tmp_path / "cccccccccc" / "lessons", keys[1], lesson="july")
    (tmp_path / "empty").mkdir()
    return tmp_path


def test_who_is_where(klass):
    found = board(learner_folders(klass), now=NOON)
    assert [each.label for each in found.learners] == ["aaaaaaaaaa", "bbbbbbbbbb", "cccccccccc"]
    one, two, three = found.learners
    assert (one.lesson, one.right, one.answered, one.finished, one.minutes) == (LESSON, 1, 2, 0, 7)
    assert (two.right, two.answered, two.finished, two.minutes) == (COUNT, COUNT, 1, 0)
    assert (three.lesson, three.prediction, three.answered) == (
        "july",
        lessons.lesson("july").prediction.choices[1].key,
        0,
    )


def test_counts_of_each_choice(klass):
    wet, july = board(learner_folders(klass), now=NOON).groups
    assert (wet.lesson, wet.here, july.lesson, july.here) == (LESSON, 2, "july", 1)
    assert [count for *_, count in wet.choices][:2] == [2, 0]
    assert sum(right for _, _, right, _ in wet.choices) == 1
    assert (wet.right, wet.answered) == (COUNT + 1, COUNT + 2)
    assert [times for _, times in wet.beliefs] == [1]


def test_the_last_answer_counts(tmp_path):
    learner(tmp_path / "aaaaaaaaaa", "a", wrong=(0,), minutes=2)
    progress = Progress(tmp_path / "aaaaaaaaaa", now=lambda: NOON)
    question = questions.checks(LESSON, 1)[0]
    progress.answered(LESSON, question, next(each for each in question.choices if each.right))
    (one,) = board(learner_folders(tmp_path), now=NOON).learners
    assert (one.right, one.answered) == (1, 1)
    assert (one.first, one.tried) == (0, 1), "and the first try is not forgotten"


def test_a_file_that_cannot_be_read_does_not_stop_the_board(klass):
    (klass / "aaaaaaaaaa" / FILE).write_text("{ broken")
    found = board(learner_folders(klass), now=NOON)
    assert "cannot be read as a progress file" in found.learners[0].trouble
    assert found.learners[1].finished == 1


def test_the_command_prints_it(klass, capsys):
    assert cli.main(["board", "--folder", str(klass)]) == 0
    said = capsys.readouterr().out
    assert re.search(r"aaaaaaaaaa +5\. Where it gets wet +\w +1 of 2 +1 of 2 +0", said)
    assert "5. Where it gets wet: 2 here now" in said
    assert f"checks: {COUNT + 1} of {COUNT + 2} right, {COUNT + 1} of {COUNT + 2} at the first try" in said
    assert re.search(r"If I see no drops, there is no problem\. +0 of 2 +1 of 1", said)
    assert re.search(r"The dew point is a place .+\. +2 of 2\s*\n", said)
    assert cli.main(["board", "--folder", str(klass / "empty")]) == 0
    assert "Nobody has opened a lesson yet" in capsys.readouterr().out


def test_a_missing_folder_is_one_sentence(tmp_path):
    with pytest.raises(BadFile, match=r"There is no folder .*nowhere; name the one in which"):
        learner_folders(tmp_path / "nowhere")


def test_the_page_is_for_the_instructor_alone(tmp_path):
    with served(tmp_path, "--ready", "1") as server:
        for number in range(2):
            code = "abcdefghj" + "km"[number]
            learner(server.folder / "class" / code, "ab"[number])
        address = re.search(r"(\S+/board)\?key=(\S+)", server.said())
        assert ask(address.group(1))[0] == 404
        assert ask(address.group(1), cookies=enter(server))[0] == 404
        assert ask(f"{address.group(1)}?key={server.secret}")[0] == 404
        status, headers, _ = ask(address.group())
        cookies = cookies_of(headers)
        assert (status, headers["Location"]) == (302, "/board")
        status, _, page = ask(address.group(1), cookies=cookies)
        assert status == 200
        assert "5. Where it gets wet: 2 here now" in page
        assert "At first try" in page
        assert page.count('<th scope="row">abcde</th>') == 2
        assert "abcdefghjk" not in page  # the rest of the code would let anybody be that learner
        assert ask(server.address, cookies=cookies)[0] == 302  # the board is no way in
        assert ask(f"{server.address}voila/static/board.js", cookies=cookies)[0] == 200
