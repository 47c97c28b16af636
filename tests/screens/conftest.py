"""The browser of the tests of what is on the screen."""

from chromium import browser, lab, no_page_left, screen

__all__ = ["browser", "lab", "no_page_left", "screen"]
