"""Each pathway from start to end in a browser, as a learner walks it: bets, controls, checks, the way on."""

import re

import pytest
from served import served

from dryward.teaching import lessons, pathways

pytestmark = pytest.mark.browser

#: How long a page may take to be there, on a machine that has others to serve [ms].
PATIENCE = 120_000


def gone_on(window, beat):
    """Wait until another beat, or the free page, is shown."""
    window.wait_for_function("beat => (document.querySelector('.dw-stage')?.dataset.beat ?? '') !== beat", arg=beat)


def through_the_beats(window):
    """Make every bet, move what is unlocked to its end, and go on until the free page stands there."""
    while True:
        window.wait_for_selector(".dw-on-stage, .dw-check-row", timeout=PATIENCE)
        if not window.locator(".dw-on-stage").count():
            return
        beat = window.get_attribute(".dw-stage", "data-beat")
        while window.locator(".dw-open").count():
            choices = window.locator(".dw-open input[type=radio]")
            bet = choices.first.get_attribute("name")
            choices.last.check()
            window.click("[data-key=lay]")
            window.wait_for_function("bet => document.querySelector('.dw-open input')?.name !== bet", arg=bet)
        control = window.locator(".dw-card :is(.dw-range, .dw-select)")
        if control.count():
            control.first.focus()
            window.keyboard.press("End")
        window.click("[data-key=next]:not([disabled])")
        gone_on(window, beat)


def answered_right(window):
    """Try the choices of each check until it is right: what is wrong is met on the way."""
    for number in range(window.locator(".dw-check-row").first.locator(".dw-check").count()):
        check = window.locator(".dw-check-row").first.locator(".dw-check").nth(number)
        for choice in range(check.locator("input[type=radio]").count()):
            if check.locator(".dw-reply.dw-right").count():
                break
            before = check.locator(".dw-reply").inner_text()
            check.locator("input[type=radio]").nth(choice).click()
            window.wait_for_function(
                "([n, before]) => document.querySelector('.dw-check-row')?.children[n]?.querySelector('.dw-reply')"
                "?.textContent.trim() !== before.trim()",
                arg=[number, before],
            )
        assert check.locator(".dw-reply.dw-right").count(), f"check {number + 1} is never right"


def left_behind(window):
    """Say of each belief that it is held no more."""
    for each in window.locator("[data-key^=still-][data-key$=-no]").all():
        each.click()


@pytest.mark.slow
@pytest.mark.parametrize("way", [each.id for each in pathways.pathways()])
def test_a_pathway_is_walked_from_start_to_end(screen, tmp_path, way):
    """The first lesson is opened by the contents, every other by the way on at the end of the one before."""
    walked = []
    with served(tmp_path) as server:
        window = screen
        window.goto(server.entry)
        window.goto(f"{server.address}?way={way}")
        order = [id for id in pathways.order(way) if lessons.lesson(id).number]
        window.click(f'a[href*="lesson/{order[0]}?way={way}"] >> nth=0')
        while True:
            window.wait_for_selector(".dw-on-stage, .dw-prediction, .dw-said", timeout=PATIENCE)
            id = re.search(r"/lesson/([\w-]+)", window.url)[1]
            walked.append(id)
            through_the_beats(window)
            answered_right(window)
            left_behind(window)
            window.wait_for_selector(".dw-on a")
            assert not window.errors, (id, window.errors)
            assert not window.locator(".dw-trouble:visible").count(), id
            on = window.locator(".dw-on a")
            if on.get_attribute("href").startswith("start") or len(walked) > len(order):
                break
            on.click()
            window.wait_for_url(lambda address, id=id: f"/lesson/{id}" not in address)
    assert walked == order
