"""Nodes dealt out to item names: every way is weighed, the best wins."""
