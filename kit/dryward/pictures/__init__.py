"""What is drawn: one file per kind of picture, on one style."""
