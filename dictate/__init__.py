"""Spoken neurological examinations become checked notes."""

__version__ = "0.1.0"

__all__ = ["__version__"]
