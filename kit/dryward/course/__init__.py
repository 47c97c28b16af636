"""The lessons: a folder each, with its words, its checks, its page and its drawing.

Nothing here is imported by name from below; `dryward.teaching.lessons` finds
the folders by looking, and loads their code when it is wanted.
"""
