"""Cells: one reading each, with the side, the site and the words that go with it; corrections applied."""
