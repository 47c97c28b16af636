"""The way to the free page of a lesson in a browser: past its beats, and past its prediction."""

#: How long a page may take to be there, on a machine that has others to serve [ms].
PATIENCE = 120_000


def through_the_beats(window, choices=(), with_control=None):
    """Lay every bet, by `choices` as far as they go, then the last one; move what is unlocked to its end; go on.

    `with_control(beat, control)` is called where something is unlocked, before it is moved.
    """
    left = list(choices)
    while True:
        window.wait_for_selector(".dw-on-stage, .dw-prediction, .dw-said", timeout=PATIENCE)
        if not window.locator(".dw-on-stage").count():
            return
        beat = window.get_attribute(".dw-stage", "data-beat")
        while window.locator(".dw-open").count():
            offered = window.locator(".dw-open input[type=radio]")
            bet = offered.first.get_attribute("name")
            (offered.nth(left.pop(0)) if left else offered.last).check()
            window.click("[data-key=lay]")
            window.wait_for_function("bet => document.querySelector('.dw-open input')?.name !== bet", arg=bet)
        control = window.locator(".dw-card :is(.dw-range, .dw-select)")
        if control.count():
            if with_control:
                with_control(beat, control.first)
            control.first.focus()
            window.keyboard.press("End")
        window.click("[data-key=next]:not([disabled])")
        window.wait_for_function("beat => (document.querySelector('.dw-stage')?.dataset.beat ?? '') !== beat", arg=beat)


def to_the_free_page(window, choice=0):
    """From a lesson as it opens to its free page with nothing covered: every bet is made, the first one by `choice`."""
    through_the_beats(window, [choice])
    if window.locator(".dw-prediction input[type=radio]").count():
        window.click(f".dw-prediction input[type=radio] >> nth={choice}")
    window.wait_for_selector(".dw-said")
