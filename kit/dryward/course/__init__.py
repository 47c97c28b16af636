"""The lessons: a folder each, with its words, its checks, its page and its drawing.

Nothing here is imported by name from below; `dryward.teaching.lessons` finds
the folders by looking, and loads their code when it is wanted.  Each has an
empty ``__init__.py``: without it the code would load all the same, but the
rules of the floors and the tests that go through all modules would pass it by.
"""
