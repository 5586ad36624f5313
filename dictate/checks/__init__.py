"""Doubts about an examination become queries."""

from dictate.checks import conflicts, heard, place, ranges, scope, sound, totals, voices  # noqa: F401 - they register their checks
from dictate.checks.registry import Check, Doubt, catalogue, check, run_checks
from dictate.checks.whole import whole_queries

__all__ = ["Check", "Doubt", "catalogue", "check", "run_checks", "whole_queries"]
