"""How fast the screens are: a slider's move, and the start of a lesson."""

import io
from collections.abc import Iterator
from typing import Any

from dryward.cli.bench.timing import Measurement, in_a_new_process, medians
from dryward.language import message

_MOVED_PAGE = "where-it-gets-wet"
_MOVED = "RH_in"


def _inline(state: Any) -> None:
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


def pictures() -> Iterator[Measurement]:
    """A slider's move to the picture's bytes, beside the usual ways to draw: milliseconds."""
    from dryward import panels  # the widgets are not needed to measure anything else
    from dryward.panels.controls import SliderControl

    page = panels.page(_MOVED_PAGE, unit_system="us")
    control = page.controls[_MOVED]
    assert isinstance(control, SliderControl)
    values = [control.min + (control.max - control.min) * share for share in (0.35, 0.45, 0.55, 0.65)]
    turn = iter(range(10**9))

    def update() -> None:
        control.value = values[next(turn) % len(values)]

    drawing, again_drawing = page.kinds[0](), page.kinds[0]()
    state = page.views(page.state)

    def whole() -> None:
        again_drawing.redraw(state)
        again_drawing.canvas.print_png(io.BytesIO())

    ours, kept, again, usual = medians(update, lambda: drawing.layers(state), whole, lambda: _inline(page.state))
    yield Measurement(message("cli.bench-slider"), ours * 1e3, "ms", rule="at most", target=15.0)
    yield Measurement(message("cli.bench-picture"), kept * 1e3, "ms", message("cli.bench-drawn-again"), again * 1e3)
    yield Measurement(message("cli.bench-picture"), kept * 1e3, "ms", message("cli.bench-pyplot"), usual * 1e3)


_CLOCK = "import time; start = time.perf_counter()\n{code}\nprint(time.perf_counter() - start)"
_PAGE = "from dryward import panels; page = panels.page('{id}'); page.picture"
#: Private and shared memory of the process, by its share [MB].
_MEMORY = """
{code}
import os, sys
try:
    lines = open(f"/proc/{{os.getpid()}}/smaps_rollup").read().splitlines()
    print(next(int(line.split()[1]) for line in lines if line.startswith("Pss:")) / 1000)
except OSError:
    import resource
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    print(most / (1e6 if sys.platform == "darwin" else 1e3))
"""


def start() -> Iterator[Measurement]:
    """Import, first picture, memory; each in new processes: seconds, MB."""
    steady = _PAGE.format(id=_MOVED_PAGE)
    seconds = in_a_new_process(_CLOCK.format(code="import dryward.panels"))
    yield Measurement(message("cli.bench-import"), seconds, "s")
    seconds = in_a_new_process(_CLOCK.format(code=steady))
    yield Measurement(message("cli.bench-first-picture"), seconds, "s", rule="at most", target=2.5)
    bare = in_a_new_process(_MEMORY.format(code="import matplotlib.figure, ipywidgets"))
    ours = in_a_new_process(_MEMORY.format(code=steady))
    yield Measurement(message("cli.bench-memory"), ours, "MB", rule="at most", target=100.0)
    yield Measurement(message("cli.bench-memory-bare"), bare, "MB")
