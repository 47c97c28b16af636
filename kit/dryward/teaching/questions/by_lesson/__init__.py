"""The three checks of each lesson: one module a lesson, named like its page."""
