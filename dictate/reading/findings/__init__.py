"""Sentence after sentence, cells become findings, and what became none is kept."""
