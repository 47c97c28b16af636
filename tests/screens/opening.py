"""The way to the free page of a lesson in a browser: past its beats, and past its prediction."""


def to_the_free_page(window, choice=0):
    """From a lesson as it opens to its free page with nothing covered: every bet is made, the first one by `choice`."""
    first = True
    while True:
        window.wait_for_selector(".dw-on-stage, .dw-prediction, .dw-said", timeout=90_000)
        if not window.locator(".dw-on-stage").count():
            break
        beat = window.get_attribute(".dw-stage", "data-beat")
        while window.locator(".dw-open").count():
            choices = window.locator(".dw-open input[type=radio]")
            bet = choices.first.get_attribute("name")
            choices.nth(choice if first else 0).check()
            first = False
            window.click("[data-key=lay]")
            window.wait_for_function("bet => document.querySelector('.dw-open input')?.name !== bet", arg=bet)
        window.click("[data-key=next]:not([disabled])")
        window.wait_for_function("beat => (document.querySelector('.dw-stage')?.dataset.beat ?? '') !== beat", arg=beat)
    if window.locator(".dw-prediction input[type=radio]").count():
        window.click(f".dw-prediction input[type=radio] >> nth={choice}")
    window.wait_for_selector(".dw-said")
