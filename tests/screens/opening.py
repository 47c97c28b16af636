"""The way to the free page of a lesson in a browser: past its beats, and past its prediction."""


def to_the_free_page(window, choice=0):
    """From a lesson as it opens to its free page with nothing covered, the switches as they were."""
    window.wait_for_selector(".dw-on-stage, .dw-prediction", timeout=90_000)
    if window.locator(".dw-on-stage").count():
        window.click("[data-key=instructor]")  # who goes on without betting
        window.wait_for_selector("[data-key=instructor][aria-pressed=true]")
        while window.locator(".dw-on-stage").count():
            beat = window.get_attribute(".dw-stage", "data-beat")
            window.click("[data-key=next]:not([disabled])")
            window.wait_for_function("beat => document.querySelector('.dw-stage')?.dataset.beat !== beat", arg=beat)
        window.click("[data-key=instructor]")
        window.wait_for_selector("[data-key=instructor][aria-pressed=false]")
    if window.locator(".dw-prediction input[type=radio]").count():
        window.click(f".dw-prediction input[type=radio] >> nth={choice}")
    window.wait_for_selector(".dw-said")
