"""A title and how long it is in force: the walk over a text's sentences that limbs and organs share."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from dictate.model import Side
from dictate.reading.marks import Mark
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.titles.title_style import ends_line
from dictate.reading.tokens import Token


@dataclass(frozen=True)
class LimbTitle:
    """The side and limb of a title, or the segment, and the tokens that said it; of an eye or ear, the organ.

    A side without a limb is of all that has sides: "On the right. Biceps jerk 3+. Knee jerk 4+."
    """

    side: Side | None
    site: str
    span: tuple[int, int]
    organ: str = ""
    part: str = ""  # the hand or foot, where only that was named


@dataclass
class TitleWalk:
    """The titles of a text, gone through from its first sentence to its last."""

    sentences: Sequence[Sequence[Mark]]
    tokens: Sequence[Token]
    lexicon: Lexicon
    titles: Sequence[LimbTitle | None]
    sure: Mapping[int, LimbTitle | None]
    are_titles: list[bool] = field(init=False)
    last: int = field(init=False)
    current: LimbTitle | None = field(default=None, init=False)
    alone: bool = field(default=False, init=False)  # the title stood alone on its line
    style: bool = field(default=False, init=False)  # a title stood in front of its findings on this line

    def __post_init__(self) -> None:
        self.are_titles = [title is not None for title in self.titles]
        self.last = max(at for at, title in enumerate(self.titles) if title is not None)

    def end_sentence(self, at: int) -> None:
        """A line ends what stands on it; a title alone on its line holds for the lines below it."""
        if ends_line(self.sentences[at], self.tokens):
            self.alone = self.titles[at] is not None or self.alone
            self.current, self.style = (self.current if self.alone else None), False
        self.alone = self.alone and self.current is not None

    def is_doubtful(self, at: int) -> bool:
        """Whether no title is known to hold for the sentence, though one stands there."""
        start = self.sentences[at][0].start
        return start in self.sure and self.sure[start] is None
