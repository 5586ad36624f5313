"""The note as PDF, made of its page by WeasyPrint (extra `pdf`)."""

from __future__ import annotations

import io
import logging
from typing import Any

from dictate.errors import MachineError
from dictate.grammar import Grammar
from dictate.model import Around, Examination
from dictate.notes.html import note_html


def note_pdf(exam: Examination, grammar: Grammar, *, brief: bool = False, around: Around | None = None) -> bytes:
    """The note as it is printed. Raises: MachineError when the extra is missing."""
    return page_pdf(note_html(exam, grammar, brief=brief, around=around))


def page_pdf(page: str) -> bytes:
    """A page as PDF; nothing is fetched for it. Raises: MachineError when the extra is missing."""
    try:
        from weasyprint import HTML
    except (ImportError, OSError) as fault:  # OSError: the package is there, and its drawing library is not
        raise MachineError("--format pdf: WeasyPrint is missing: pip install 'dictate[pdf]'") from fault
    logging.getLogger("weasyprint").setLevel(logging.ERROR)  # it remarks on styles meant for screens
    out = io.BytesIO()
    HTML(string=page, url_fetcher=_refuse).write_pdf(out, finisher=_ungroup)
    return out.getvalue()


def _ungroup(_: Any, pdf: Any) -> None:
    """Let the labels of drawings be plain content.

    WeasyPrint makes a transparency group of each label that ends or is centred at a place, and viewers that draw such
    a group as an image of its own cut the edge of its first sign: 84 looked like 54. No note has see-through groups.
    """
    for one in pdf.objects:
        extra = getattr(one, "extra", {})
        if extra.get("Subtype") == "/Form":
            extra.pop("Group", None)


def _refuse(url: str, *_: Any, **__: Any) -> Any:
    """A page carries all it needs."""
    raise ValueError(f"{url.partition(':')[0]}: a note fetches nothing")
