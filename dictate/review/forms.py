"""Forms of the local page: their fields, the decisions they describe, and where they may lead."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING
from urllib.parse import parse_qs

from dictate.model import Action, Component, Decision

if TYPE_CHECKING:
    from starlette.requests import Request

MOST_FIELDS = 16
PLACE = re.compile(r"[0-9]{1,9}")
KIND = "application/x-www-form-urlencoded"
ABOUT_NOTE = ("by", "countersign", "second", "reason", "text")
OWN = re.compile(r"/|/note|/read-so|/finding/[0-9]{1,9}|/\?q=[0-9]{1,9}")  # addresses that a form may lead to


async def fields_of(request: Request) -> dict[str, str]:
    """The fields of a form. Raises ValueError when it is none, TooMuch."""
    if request.headers.get("content-type", "").split(";")[0].strip() != KIND:
        raise ValueError
    body = (await request.body()).decode("utf-8")
    fields = parse_qs(body, keep_blank_values=True, strict_parsing=bool(body), max_num_fields=MOST_FIELDS)
    return {name: values[0] for name, values in fields.items()}


def typed_in(form: dict[str, str]) -> dict[str, str]:
    """What somebody typed into the form; an answer that was a key is none."""
    names = (*ABOUT_NOTE, "answer") if form.get("typed") == "yes" else ABOUT_NOTE
    return {name: form[name] for name in names if name in form}


def decision_of(form: dict[str, str]) -> Decision:
    """The decision a form describes. Raises ValueError when it describes none."""
    query, finding, under = form.get("query", ""), form.get("finding", ""), form.get("under", "")
    return Decision(
        query=int(query) if query else None,
        finding=int(finding) if finding else None,
        answer=form.get("answer", ""),
        action=Action(form.get("action", Action.ANSWER.value)),
        component=Component(under) if under else None,
    )


def place_of(text: str) -> int:
    """The place that an address names; -1: none."""
    return int(text) if PLACE.fullmatch(text) else -1


def leads_to(path: str) -> str:
    """Where a form leads: one of the page's own addresses, whatever it says."""
    return path if OWN.fullmatch(path) else "/"
