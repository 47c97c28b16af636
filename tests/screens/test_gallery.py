"""The instructor's page of pictures can be made, is whole, and is light."""

import io
import re
from pathlib import Path

import pytest
from PIL import Image

from dryward.checks import PlainError
from dryward.panels import gallery
from dryward.teaching import lessons

GUIDE = Path(__file__).parents[2] / "lessons" / "guide"


def test_a_picture_is_made_from_the_page_itself():
    made = gallery.pages(["read-the-air"])
    picture = Image.open(io.BytesIO(made["pictures/read-the-air.webp"]))
    assert picture.width == gallery.WIDTH
    assert len(made["pictures/read-the-air.webp"]) <= gallery.HEAVIEST
    text = made["pictures.md"]
    assert "## 1. Read the air" in text
    assert re.search(r"!\[.{40,}\]\(pictures/read-the-air\.webp\)", text)
    assert "times the water of air" in text


def test_a_very_busy_picture_is_made_light():
    noise = io.BytesIO()
    Image.effect_noise((1720, 800), 90).save(noise, "PNG")
    assert len(gallery.small(noise.getvalue())) < len(noise.getvalue()) / 10


def test_the_page_in_the_guide_has_every_lesson():
    text = (GUIDE / "pictures.md").read_text("utf-8")
    for id in lessons.pages():
        this = lessons.lesson(id)
        assert f"## {this.number}. {this.title}\n" in text
        picture = GUIDE / "pictures" / f"{id}.webp"
        assert f"(pictures/{id}.webp)" in text
        assert picture.stat().st_size <= gallery.HEAVIEST
        assert Image.open(io.BytesIO(picture.read_bytes())).width == gallery.WIDTH


def test_the_picture_of_a_lesson_that_is_gone_is_removed(tmp_path, monkeypatch):
    monkeypatch.setattr(gallery, "pages", lambda: {"pictures.md": "text", "pictures/july.webp": b"new"})
    pictures = tmp_path / "pictures"
    pictures.mkdir()
    for name in ("gone.webp", "july.webp", "moving.gif"):
        (pictures / name).write_bytes(b"old")
    gallery.write(tmp_path)
    assert {each.name: each.read_bytes() for each in pictures.iterdir()} == {"july.webp": b"new", "moving.gif": b"old"}


def test_where_it_cannot_be_written_is_one_sentence(tmp_path, monkeypatch):
    (tmp_path / "guide").write_text("a file, not a folder")
    monkeypatch.setattr(gallery, "pages", lambda: {"pictures.md": "text"})
    with pytest.raises(PlainError, match=r"^The pictures cannot be written to .*guide: Not a directory\.$"):
        gallery.write(tmp_path / "guide")
