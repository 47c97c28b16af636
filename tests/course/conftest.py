"""What the tests of single lessons leave behind: nothing; their browser is that of all tests."""

from chromium import no_page_left

__all__ = ["no_page_left"]
