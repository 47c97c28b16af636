"""The browser of the tests of single lessons."""

from chromium import browser, lab, no_page_left, screen

__all__ = ["browser", "lab", "no_page_left", "screen"]
