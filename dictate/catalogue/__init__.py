"""The catalogue: every word that a note, a figure, a query or a comparison says, for translation."""
