"""A PNG written without a forecast of pixels: read back by a library, nothing is lost."""

import io

import numpy as np
import pytest
from PIL import Image

from dryward.pictures.png import png


@pytest.mark.parametrize("size", [(1, 1), (3, 2), (40, 86), (1, 300)])
def test_what_is_written_is_read(size):
    pixels = np.random.default_rng(7).integers(0, 256, (*size, 4), dtype=np.uint8)
    with Image.open(io.BytesIO(png(pixels))) as sheet:
        assert sheet.format == "PNG"
        sheet.verify()  # the check sums
    with Image.open(io.BytesIO(png(pixels))) as sheet:
        assert sheet.mode == "RGBA"
        assert np.array_equal(np.asarray(sheet), pixels)


def test_nothing_takes_next_to_nothing():
    assert len(png(np.zeros((400, 860, 4), np.uint8))) < 400 * 860 * 4 / 150
