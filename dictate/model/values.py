"""One class per value kind: Pressure, Quantity, Grade, Score, Acuity, Choice, Text; told apart by `kind`."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from dictate.model.base import Frozen


def number_text(number: float) -> str:
    """A number without a trailing `.0`: 36.0 → `36`, 14.5 → `14.5`."""
    return str(int(number)) if number == int(number) else repr(number)


class Pressure(Frozen):
    """Blood pressure in mm[Hg]; diastolic None: only palpable."""

    kind: Literal["pressure"] = "pressure"
    systolic: int
    diastolic: int | None = None

    def __str__(self) -> str:
        return f"{self.systolic}/{'palpable' if self.diastolic is None else self.diastolic}"


class Quantity(Frozen):
    """A number with its UCUM unit; `then` is the second of a change (pupil 4 → 2), `upto` the end of a range."""

    kind: Literal["quantity"] = "quantity"
    number: float
    then: float | None = None
    upto: float | None = None
    note: str = ""  # words that belong to the number: "beats", "steps", "10 m in"

    def __str__(self) -> str:
        text = number_text(self.number)
        if self.then is not None:
            text += "->" + number_text(self.then)
        if self.upto is not None:
            text += "-" + number_text(self.upto)
        return text


class Grade(Frozen):
    """A grade of a named ordinal scale, as dictated (`4-`, `2+`, `trace`); never rounded."""

    kind: Literal["grade"] = "grade"
    scale: str
    grade: str

    def __str__(self) -> str:
        return self.grade


class Score(Frozen):
    """Points, of a maximum when one was said; `mark` is the T of an untestable part."""

    kind: Literal["score"] = "score"
    points: float | None
    of: float | None = None
    mark: str = ""

    def __str__(self) -> str:
        text = ("" if self.points is None else number_text(self.points)) + self.mark
        return text if self.of is None else f"{text}/{number_text(self.of)}"


class Acuity(Frozen):
    """Visual acuity: a fraction (20/30, 6/9) or words (counting fingers)."""

    kind: Literal["acuity"] = "acuity"
    text: str

    def __str__(self) -> str:
        return self.text


class Choice(Frozen):
    """One of the closed list of an item (flexor, extensor; brisk, sluggish)."""

    kind: Literal["choice"] = "choice"
    choice: str

    def __str__(self) -> str:
        return self.choice.replace("_", " ")


class Text(Frozen):
    """The descriptor as said, short."""

    kind: Literal["text"] = "text"
    words: str

    def __str__(self) -> str:
        return self.words


Value = Annotated[Pressure | Quantity | Grade | Score | Acuity | Choice | Text, Field(discriminator="kind")]
