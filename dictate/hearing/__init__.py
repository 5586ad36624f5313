"""The hearing room."""
