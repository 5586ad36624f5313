"""Hearing: audio → words with times."""

from dictate.hearing.engine import Engine, fetch_from_hub
from dictate.hearing.models import ModelReport, describe_models
from dictate.model.words import Hints

__all__ = ["Engine", "Hints", "ModelReport", "describe_models", "fetch_from_hub"]
