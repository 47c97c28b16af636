"""The kinds of the generator: one module a topic."""
