"""A slider's move: the page's own update beside the usual ways to draw."""

import io

from dryward.cli.bench.timing import Measurement, medians

_PAGE = "where-it-gets-wet"
_MOVED = "RH_in"


def _inline(state):
    """What a notebook does with pyplot at each move: a new figure, two axes, its labels, a PNG."""
    import matplotlib as mpl

    mpl.use("agg")
    from matplotlib import pyplot

    profile = state.profile
    figure, (left, right) = pyplot.subplots(1, 2, figsize=(9, 4.5))
    left.plot(profile.depth, profile.temperature, label="temperature")
    left.axvspan(profile.depth[1], profile.depth[-2], alpha=0.2)
    left.set(xlabel="depth", ylabel="temperature")
    left.legend()
    right.plot(profile.vapor_resistance, profile.vapor_pressure, label="vapor")
    right.plot(profile.vapor_resistance, profile.saturation_vapor_pressure, label="saturation")
    right.set(xlabel="vapor resistance", ylabel="pressure")
    right.legend()
    figure.savefig(io.BytesIO(), format="png")
    pyplot.close(figure)


def measurements():
    """Milliseconds from a slider's new value to the picture's bytes.

    Yields
    ------
    Measurement
    """
    from dryward import panels

    page = panels.page(_PAGE, unit_system="us")
    control = page.controls[_MOVED]
    values = [control.min + (control.max - control.min) * share for share in (0.35, 0.45, 0.55, 0.65)]
    turn = iter(range(10**9))

    def update():
        control.value = values[next(turn) % len(values)]

    drawing, again_drawing = page.draws(), page.draws()
    state = page.views(page.state)

    def whole():
        again_drawing.redraw(state)
        again_drawing.canvas.print_png(io.BytesIO())

    ours, kept, again, usual = medians(update, lambda: drawing.layers(state), whole, lambda: _inline(page.state))
    yield Measurement("slider to picture, strips and words included", ours * 1e3, "ms", rule="at most", target=15.0)
    yield Measurement("one picture, its ground kept", kept * 1e3, "ms", "the whole drawn again", again * 1e3)
    yield Measurement("one picture, its ground kept", kept * 1e3, "ms", "a new figure by pyplot", usual * 1e3)
