"""A year as a film: it plays by itself and stops where one taps; keys, less motion, and what it costs."""

import json

import pytest
from bare import SIZES, Bare
from lesson_page import first_visit

ID = "hour-by-hour"
AT = "Number(document.querySelector('.dw-reel').value)"


def shown(browser, tmp_path, size="laptop", bets=(2,), reduced_motion="no-preference"):
    """A window in which the first film of the lesson stands."""
    window = Bare(browser, reduced_motion=reduced_motion)
    page = first_visit(ID, tmp_path)
    for choice in bets:
        page.hear({"kind": "bet", "choice": choice})
    window.show(page, SIZES[size])
    return window, page


@pytest.fixture(scope="module")
def film(browser, tmp_path_factory):
    found = shown(browser, tmp_path_factory.mktemp("film"))
    yield found
    found[0].window.close()


def seen(window):
    """The gauge, the reading over it and the sentence."""
    return [window.window.inner_text(one) for one in ("[data-film=moisture]", ".dw-film-said")]


def go(window, time):
    window.window.evaluate(
        """(t) => { const reel = document.querySelector('.dw-reel');
        reel.value = t; reel.dispatchEvent(new Event('input')); }""",
        time,
    )


@pytest.mark.browser
def test_it_runs_by_itself_stops_at_a_tap_and_says_what_is_so(film):
    window, page = film
    window.show(page)
    first = window.window.evaluate(AT)
    window.window.wait_for_function(f"{AT} > {first} + 0.3")
    assert window.window.locator(".dw-reply").evaluate("(e) => getComputedStyle(e).visibility") == "hidden"
    window.window.click(".dw-box", position={"x": 300, "y": 60})
    stands = window.window.evaluate(AT)
    window.window.wait_for_timeout(250)
    assert window.window.evaluate(AT) == stands
    assert window.window.locator(".dw-reply").evaluate("(e) => getComputedStyle(e).visibility") == "visible"
    reading, said = seen(window)
    assert reading in said
    assert said.endswith(".")
    assert window.errors == []


@pytest.mark.browser
def test_a_tap_on_a_month_goes_there_and_the_space_bar_plays(film):
    window, page = film
    window.show(page)
    frames = page.widget.live["stage"]["scenes"][0]["film"]
    for k, name in ((0, "September"), (6, "March"), (10, "July")):
        place = window.window.locator(".dw-tag-letter").nth(k).bounding_box()
        window.window.mouse.click(place["x"] + place["width"] / 2, place["y"])
        reading, said = seen(window)
        assert said.startswith(name)
        day = sum(frames["months"][:k]) + frames["months"][k] // 2
        assert abs(float(reading.split()[0]) - frames["moisture"][day]) < 1.5
    stands = window.window.evaluate(AT)
    window.press("Space")
    window.window.wait_for_function(f"{AT} > {stands} + 0.1")
    window.press("Space")
    assert window.window.locator("[data-key=film]").inner_text() == "Play the year"


@pytest.mark.browser
def test_with_less_motion_it_stands_and_goes_by_month_with_the_arrows(browser, tmp_path):
    window, _ = shown(browser, tmp_path, reduced_motion="reduce")
    stands = window.window.evaluate(AT)
    window.window.wait_for_timeout(250)
    assert window.window.evaluate(AT) == stands
    assert window.window.locator("[data-key=film]").is_hidden()
    assert window.window.locator(".dw-reply").is_visible()
    reel = window.window.locator(".dw-reel")
    reel.focus()
    heard = []
    for _ in range(12):
        heard.append((reel.get_attribute("aria-valuetext"), seen(window)[1]))
        window.press("ArrowRight")
    assert [month for month, _ in heard][:3] == ["September", "October", "November"]
    assert len({month for month, _ in heard}) == 12
    assert all(said.startswith(month) for month, said in heard), "a sentence a month"
    assert window.window.get_attribute(".dw-film-said", "aria-live") == "polite"
    window.press("Home")
    assert reel.get_attribute("aria-valuetext") == "September"
    window.window.close()


@pytest.mark.browser
def test_its_dots_are_those_of_the_mean_day(film):
    """At a time the two faces of the wood have the rates of that month and hour, and as many dots cross."""
    window, page = film
    window.show(page)
    frames = page.widget.live["stage"]["scenes"][0]["film"]
    for month, step in ((4, 0), (6, 4), (9, 4)):
        go(window, month + (step + 0.5) / 8)
        rates = window.window.evaluate("document.querySelector('.dw-vapor').film.flows.flows.map((each) => each.rate)")
        told = [abs(frames["inner"][month][step]), abs(frames["outer"][month][step])]
        assert rates == pytest.approx(told, abs=12)  # the slider stands at a hundredth of a month
        crossed = window.window.evaluate("""() => { const flows = document.querySelector(".dw-vapor").film.flows;
            for (let k = 0; k < 300; k += 1) flows.step(0.1);
            const before = [...flows.crossed];
            for (let k = 0; k < 600; k += 1) flows.step(0.1);
            return flows.crossed.map((each, k) => each - before[k]); }""")
        assert crossed == pytest.approx(rates, abs=1)


@pytest.mark.browser
def test_it_is_light(film):
    """The year is sent once, in few bytes; a frame is drawn well within a sixtieth of a second."""
    window, page = film
    window.show(page)
    assert len(json.dumps(page.widget.live["stage"]["scenes"][0]["film"])) < 14_000
    took = window.window.evaluate("""() => {
        const { film } = document.querySelector(".dw-vapor"), tags = document.querySelector(".dw-tags");
        const from = performance.now();
        for (let k = 0; k < 300; k += 1) film.show(k / 25, tags);
        return (performance.now() - from) / 300; }""")
    assert took < 8.0  # ms, with room for a machine that does other things


@pytest.mark.browser
def test_nothing_of_the_year_is_there_before_the_bet(browser, tmp_path):
    window, page = shown(browser, tmp_path, bets=())
    assert "film" not in page.widget.live["stage"]["scenes"][0]
    assert window.window.locator(".dw-film").is_hidden()
    window.window.close()
