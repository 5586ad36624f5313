"""Frozen: what every model of the room shares."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Frozen(BaseModel):
    """Immutable, strict, and refusing unknown fields."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)
