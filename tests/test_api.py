"""What is typed at a prompt: from the import to the picture, in the words of the trade, and one sentence for a slip."""

import builtins
import re
import subprocess
import sys
from importlib import import_module
from pathlib import Path

import numpy as np
import pytest
from matplotlib.figure import Figure

import dryward as dw
from dryward import building, cli, verdict
from dryward.building.job import Job, Place, Tightness
from dryward.checks import OutOfRange, PlainError
from dryward.cli import api as page
from dryward.exhibit import Exhibit, NotInstalled
from dryward.report import review
from dryward.report.tables import columns
from dryward.units import to_si

ROOM, WINTER = dw.Air(21.0, 0.4), dw.Air(-7.0, 0.8)


def results():
    """One result of each kind, and a roof."""
    roof = dw.roof("vented-vault-osb")
    run = dw.hourly.simulate(roof, WINTER, ROOM, hours=72)
    return {
        "roof": roof,
        "profile": dw.profile(roof, ROOM, WINTER),
        "sweep": dw.sweep(roof, ROOM, WINTER, indoor_relative_humidity=["20 %", "40 %"]),
        "range": dw.dry_range(roof, ROOM, WINTER, "indoor_relative_humidity", ["15 %", "30 %", "45 %"]),
        "drying": dw.drying_rates(roof, "insulation", ROOM, WINTER),
        "months": dw.months(roof),
        "hours": run,
        "short": dw.hourly.simulate(building.preset("wood-frame-wall"), WINTER, ROOM, hours=24),
        "verdict": run.verdict,
    }


RESULTS = results()
KINDS = pytest.mark.parametrize("result", RESULTS.values(), ids=RESULTS)


def test_from_the_import_to_the_picture_in_five_lines():
    roof = dw.roof("vented-vault").replace("inner membrane", dw.membrane("1 perm"))
    state = dw.profile(roof, dw.Air("70 F", "40 %"), dw.Air("20 F", "80 %"))
    assert isinstance(state.plot(), Figure)
    assert "inner membrane | insulation" in state.to_table()
    assert dw.year(roof, place="cold", room="40 %", ach50=3, years=1).verdict.state == "dry"


# --- names -------------------------------------------------------------------------


def test_every_public_name_is_there_and_at_home():
    for home, names in dw.PUBLIC.items():
        for name in names:
            assert getattr(dw, name) is getattr(import_module(f"dryward.{home}"), name)
    assert {"air", "steady", "drying", "monthly", "hourly", "limits", "mold", "sky", "units", "panels"} <= set(dir(dw))
    assert dw.steady is import_module("dryward.physics.steady")


def test_the_import_loads_nothing_heavy():
    ask = "import sys, dryward; print(sorted(m for m in sys.modules if m.split('.')[0] in {names}))"
    names = {"numpy", "matplotlib", "numba", "scipy", "pvlib", "pandas", "CoolProp", "fluids", "ipywidgets"}
    done = subprocess.run([sys.executable, "-c", ask.format(names=names)], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_a_roof_at_a_prompt_needs_neither_compiler_nor_pictures():
    ask = (
        "import sys, dryward as dw; repr(dw.profile('vented-vault', (21, .4), (-7, .8))); "
        "print([m for m in ('matplotlib', 'numba', 'scipy', 'pandas', 'pvlib', 'ipywidgets') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_a_name_that_is_not_there_says_which_is_near():
    with pytest.raises(AttributeError, match=r'dryward has no "profle"; did you mean profile\?'):
        _ = dw.profle
    assert not hasattr(dw, "__wrapped__")


# --- what is typed -------------------------------------------------------------------


def test_texts_mean_what_their_numbers_mean():
    typed = dw.profile("vented-vault", ("70 F", "40 %"), ("20 F", "80 %"))
    plain = dw.profile(building.preset("vented-vault"), dw.Air(to_si(70, "degF"), 0.4), dw.Air(to_si(20, "degF"), 0.8))
    assert np.array_equal(typed.vapor_pressure, plain.vapor_pressure)
    assert dw.membrane("1 perm").permeance() == to_si(1, "perm")
    assert dw.membrane(3e-11).permeance() == 3e-11
    assert dw.membrane("teaching-variable") is building.membrane("teaching-variable")
    swept = dw.sweep("vented-vault", ROOM, WINTER, indoor_temperature=["70 F", "75 F"])
    assert swept.temperature[:, 0] == pytest.approx([to_si(70, "degF"), to_si(75, "degF")])


def test_a_roof_is_an_assembly_a_preset_or_a_file(tmp_path):
    preset = building.preset("vented-vault")
    preset.save(tmp_path / "mine.toml")
    assert dw.roof(preset) is preset
    assert dw.roof("Vented vault") is preset
    assert dw.roof(tmp_path / "mine.toml").layers == preset.layers
    assert dw.roof(str(tmp_path / "mine.toml")).layers == preset.layers


def test_a_year_is_the_one_that_the_command_judges():
    job = Job(building.preset("vented-vault-osb"), Place("demo", "cold"), tightness=Tightness(3.0), years=2)
    judged = review(job, with_trials=False).verdict
    run = dw.year("vented-vault-osb", place="cold", room="40 %", ach50=3, years=2)
    assert run.leaking
    typed = dw.year("vented-vault-osb", "cold", "40 %", "3 ACH50", share="a fifth", years=2)
    assert np.array_equal(typed.water, run.water)
    assert (run.verdict.state, run.verdict.worst.value) == (judged.state, judged.worst.value)


def test_a_place_is_a_name_a_year_of_hours_or_twelve_means():
    named = dw.months("vented-vault-osb", place="very cold")
    means = dw.weather.demo_climate("very-cold")
    pair = [[f"{each} C" for each in means.temperature], [f"{each * 100} %" for each in means.relative_humidity]]
    assert dw.months("vented-vault-osb", place=means).peak == named.peak
    assert dw.months("vented-vault-osb", place=pair).peak == pytest.approx(named.peak, rel=1e-9)
    assert dw.year("vented-vault-osb", place=means).peak == named.peak  # no hours: twelve months
    hours = dw.demo("very-cold")
    assert dw.months("vented-vault-osb", place=hours).peak == pytest.approx(named.peak, rel=0.02)
    one, other = (dw.year("vented-vault-osb", place=each, years=1) for each in ("very-cold", hours))
    assert np.array_equal(one.water, other.water)


def test_a_room_is_a_humidity_an_air_or_a_rule():
    humid, dry = (dw.months("vented-vault-osb", room=each).peak for each in ("55 %", "30 %"))
    assert humid > dry
    air = dw.months("vented-vault-osb", room=ROOM).peak
    assert dw.months("vented-vault-osb", room=("21 C", "40 %")).peak == air
    assert dw.months("vented-vault-osb", room=dw.indoor.constant(ROOM)).peak == air
    damper = dw.year("vented-vault", room=ROOM, years=1, design="damp house")
    assert damper.water[-1] > dw.year("vented-vault", room=ROOM, years=1).water[-1]


@pytest.mark.parametrize(
    ("wrong", "sentence"),
    [
        (lambda: dw.roof(5), 'A roof is an assembly, the id of a preset or the path of a file, not "5".'),
        (lambda: dw.profile("vented-valt", ROOM, WINTER), 'no roof "vented-valt"; did you mean vented-vault'),
        (lambda: dw.profile("vented-vault", 70, 20), 'The room air must be an air, such as Air("70 F", "40 %"), not'),
        (
            lambda: dw.profile("vented-vault", ("70 el", "40 %"), WINTER),
            'The temperature "70 el" is not understood',
        ),
        (lambda: dw.profile("vented-vault", (None, 0.4), WINTER), "The temperature must be a number"),
        (lambda: dw.roof("no-such.toml"), "no-such.toml"),
        (lambda: dw.membrane("felt"), 'There is no membrane "felt"'),
        (lambda: dw.membrane("1 prm"), 'The permeance "1 prm" is not understood'),
        (lambda: dw.membrane(None), "The permeance must be a number"),
        (lambda: dw.months("vented-vault", place="atlantis"), 'There is no place "atlantis"'),
        (lambda: dw.months("vented-vault", place=7), "A place is one of the kit's"),
        (lambda: dw.months("vented-vault", place=[["20 F"] * 6, ["80 %"] * 12]), "needs 12 values"),
        (lambda: dw.months("vented-vault", room=[1]), "The room must be an air"),
        (lambda: dw.months("vented-vault", room="soggy"), '"soggy" is not understood'),
        (lambda: dw.sweep("vented-vault", ROOM, WINTER, paintt_permeance="1 perm"), "no thing to vary"),
        (lambda: dw.sweep("vented-vault", ROOM, WINTER, paint_permeance=None), "must be numbers or texts with units"),
        (lambda: dw.dry_range("vented-vault", ROOM, WINTER, "moon", [1]), 'There is no thing to vary "moon"'),
        (lambda: dw.drying_rates("vented-vault", "felt", ROOM, WINTER), 'There is no layer "felt"'),
        (
            lambda: dw.year("vented-vault", place=dw.weather.demo_climate("cold"), ach50=3),
            "Twelve monthly means cannot count an air leak",
        ),
        (lambda: dw.roof("vented-vault").plot("imperial"), 'There is no unit system "imperial"'),
        (lambda: dw.roof("vented-vault").to_table("csv"), 'There is no form of a table "csv"'),
    ],
)
def test_a_slip_is_one_plain_sentence(wrong, sentence):
    with pytest.raises(PlainError) as told:
        wrong()
    said = str(told.value)
    assert sentence in said
    assert "\n" not in said
    assert said.endswith((".", "?"))


# --- what comes out --------------------------------------------------------------------


@KINDS
def test_a_result_is_one_line_that_a_person_reads(result):
    line = repr(result)
    assert 20 <= len(line) <= 160
    assert "\n" not in line
    assert "array(" not in line
    assert line.startswith(f"{type(result).__name__}(")


@pytest.mark.parametrize("name", building.presets())
def test_what_a_roof_is_made_of_is_one_line_too(name):
    roof = building.preset(name)
    for thing in (roof, *roof.layers, *(layer.substance for layer in roof.layers)):
        assert len(repr(thing)) <= 160
        assert repr(thing).startswith(f"{type(thing).__name__}(")


def test_the_lines_say_what_state_it_is():
    assert "wet" in repr(RESULTS["profile"])
    assert "1 damp, 1 wet" in repr(RESULTS["sweep"])
    assert repr(RESULTS["range"]) == "Range(indoor_relative_humidity: dry 0.15, wet 0.3 to 0.45)"
    assert repr(RESULTS["roof"]).startswith("Assembly(Vented vault, OSB outer layer, ")
    assert verdict.of_months(RESULTS["months"]).state in repr(RESULTS["months"])


@KINDS
@pytest.mark.parametrize("unit_system", ["us", "si"])
def test_every_result_draws_a_figure(result, unit_system):
    drawn = result.plot(unit_system)
    assert isinstance(drawn, Figure)
    pixels = np.asarray(drawn.canvas.buffer_rgba())
    assert (pixels[..., :3].max(axis=2) < 128).sum() > 200  # ink on the paper
    assert drawn._repr_png_().startswith(b"\x89PNG")


@KINDS
def test_every_result_has_a_table_of_text_and_of_pandas(result):
    pandas = pytest.importorskip("pandas")
    lines = result.to_table(unit_system="si").splitlines()
    frame = result.to_table("pandas", "si")
    assert isinstance(frame, pandas.DataFrame)
    rows = len(columns(result)[0].values)
    assert (len(lines), len(frame)) == (rows + 1, rows)
    for column in columns(result):
        assert column.head in lines[0]


def test_a_table_tells_the_numbers_of_the_result_in_the_unit_of_its_head():
    pytest.importorskip("pandas")
    state = RESULTS["profile"]
    shown = state.to_table("pandas", "us")
    assert shown["temperature [°F]"].iloc[0] == pytest.approx(21.0 * 1.8 + 32)
    assert shown["water gained [gr/ft² day]"].max() == pytest.approx(dw.units.from_si(state.gain, "gr/ft2/day"))
    months = RESULTS["months"].to_table("pandas", "si")
    assert months["condensed [g/m²]"].sum() == pytest.approx(1000 * RESULTS["months"].condensed.sum())


def test_a_long_table_says_how_much_more_there_is():
    many = dw.sweep("vented-vault", ROOM, WINTER, indoor_relative_humidity=np.linspace(0.1, 0.9, 60))
    assert many.to_table().splitlines()[-1] == "and 36 rows more"
    assert len(many.to_table("pandas")) == 60


def test_a_notebook_shows_a_roof_as_picture_and_table():
    shown = RESULTS["roof"]._repr_html_()
    assert 'src="data:image/png;base64,' in shown
    assert 'alt="Section of Vented vault, OSB outer layer from inside to outside' in shown
    assert "<td>gypsum board</td>" in shown
    assert shown.count("<tr>") == len(RESULTS["roof"].layers) + 1


def without(monkeypatch, library):
    """As if a library were not installed."""
    real = builtins.__import__

    def fake(name, *rest):
        if name.partition(".")[0] == library:
            raise ModuleNotFoundError(f"No module named {library!r}", name=library)
        return real(name, *rest)

    for name in [n for n in sys.modules if n.partition(".")[0] == library or n.startswith("dryward.pictures")]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setattr(builtins, "__import__", fake)


def test_without_matplotlib_there_is_one_sentence_and_still_a_table(monkeypatch):
    without(monkeypatch, "matplotlib")
    with pytest.raises(NotInstalled, match=r"^A picture needs matplotlib, which is not installed here\.$"):
        RESULTS["profile"].plot()
    shown = RESULTS["roof"]._repr_html_()
    assert "<img" not in shown
    assert "<td>gypsum board</td>" in shown


def test_without_pandas_there_is_one_sentence(monkeypatch):
    monkeypatch.setitem(sys.modules, "pandas", None)
    with pytest.raises(NotInstalled, match=r"^A table of pandas needs pandas, which is not installed here\.$"):
        RESULTS["profile"].to_table("pandas")


def test_a_kind_that_nobody_draws_says_so():
    class Odd(Exhibit):
        pass

    with pytest.raises(OutOfRange, match="There is no picture of"):
        Odd().plot()
    with pytest.raises(OutOfRange, match="There is no table of"):
        Odd().to_table()


# --- the page of the names -------------------------------------------------------------


def test_the_page_is_as_it_was_made():
    """Make it anew with ``dryward api --write`` after a change of a public docstring."""
    made = Path(__file__).parents[1] / page.PAGE
    assert made.read_text("utf-8") == page.page()


def test_the_page_has_every_public_name_and_no_other():
    told = {each for _, _, each, _ in page.entries()}
    for home, names in dw.PUBLIC.items():
        if home not in ("checks", "building.job"):  # an error, and a part of a job
            assert set(names) - {"indoor"} <= told
    typed = [each for _, each, _, _ in page.entries()]
    assert len(typed) == len(set(typed))
    for name in typed:
        thing = dw
        for part in name.split(".")[1:]:
            thing = getattr(thing, part)  # it can be typed as it is told
        assert (thing.__doc__ or "").strip()


def test_the_lines_at_the_head_of_the_page_run():
    (lines,) = re.findall(r"```python\n(.*?)```", page.page().split("\n## ")[0], re.DOTALL)
    names = {}
    exec(lines, names)
    assert isinstance(names["state"], dw.Profile)


def test_one_name_is_shown_with_its_docstring(capsys):
    assert cli.main(["api", "steady.profile"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("dw.steady.profile(assembly, indoor, outdoor, saturation=None)")
    assert "ISO 13788:2012" in out
    assert cli.main(["api", "profile"]) == 0  # the one at a prompt, and the one it asks
    assert capsys.readouterr().out.count("\n    Examples\n") == 2


def test_the_list_has_a_line_for_each_name(capsys):
    assert cli.main(["api"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == "import dryward as dw"
    assert sum(line.startswith("  dw.") for line in lines) == len(page.entries())


def test_a_name_that_is_not_public_is_one_sentence(capsys):
    assert cli.main(["api", "proflie"]) == 2
    assert 'There is no public name "proflie"; did you mean profile' in capsys.readouterr().err
