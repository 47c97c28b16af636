"""Each pathway from start to end in a browser, as a learner walks it: bets, controls, checks, the way on."""

import re

import pytest
from opening import to_the_free_page
from served import served

from dryward.teaching import lessons, pathways

pytestmark = pytest.mark.browser


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
        window.wait_for_url(f"**/lesson/{order[0]}?**")
        while True:
            id = re.search(r"/lesson/([\w-]+)", window.url)[1]
            walked.append(id)
            to_the_free_page(window)
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
