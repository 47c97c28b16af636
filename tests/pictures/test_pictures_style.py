"""Colors that can be seen, and quantities that differ by more than color."""

import pytest

from dryward.pictures import style


@pytest.mark.parametrize("quantity", list(style.LOOKS))
def test_every_color_stands_out_from_the_paper(quantity):
    this = style.look(quantity)
    assert style.contrast(this.color, style.PAPER) >= 3.0
    assert style.contrast(this.color, "#ffffff") >= 3.0
    assert style.contrast(this.gray, "#ffffff") >= 3.0


def test_words_are_readable():
    assert style.contrast(style.INK, style.PAPER) >= 4.5
    assert style.contrast(style.QUIET, style.PAPER) >= 4.5


def test_black_and_white_by_the_definition():
    assert style.contrast("#ffffff", "#000000") == pytest.approx(21.0)
    # A gray of 118 of 255 is the lightest that reaches 4.5 on white (WCAG 2.2, a value often quoted; from memory).
    assert style.contrast("#767676", "#ffffff") >= 4.5
    assert style.contrast("#777777", "#ffffff") < 4.5


def test_no_two_quantities_look_the_same():
    looks = [(this.color, str(this.line), this.shape, this.marker, this.hatch) for this in style.LOOKS.values()]
    assert len(set(looks)) == len(looks)
    lines = [(this.gray, str(this.line), this.shape, this.marker, this.hatch) for this in style.LOOKS.values()]
    assert len(set(lines)) == len(lines)


def test_a_label_names_one_quantity():
    labels = [this.label for this in style.LOOKS.values()]
    assert len(set(labels)) == len(labels)
