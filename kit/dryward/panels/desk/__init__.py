"""Benches: pages that are worked on, with layers, files and checks."""
