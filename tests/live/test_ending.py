"""The whole heard again: less what was said to the program, and nothing else less."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import numpy as np
import pytest

from dictate.errors import MachineError
from dictate.grammar import Grammar
from dictate.live.ending import clean_piece, drop_orders, hear_whole, rescue
from dictate.live.kept import Facts, Kept, Mute, Said
from dictate.live.safe_sound import HEAD_BYTES, header
from dictate.model import Source, Transcript, Word

NOW = datetime(2026, 3, 4, 14, 30)


def words(text: str, start_s: float = 0.0) -> tuple[Word, ...]:
    """Half a second each."""
    return tuple(
        Word(text=w, start_s=start_s + at / 2, end_s=start_s + at / 2 + 0.4) for at, w in enumerate(text.split())
    )


def order(control: str, start_s: float) -> Said:
    """As live hearing took it."""
    return Said(words=(), start_s=start_s, end_s=start_s + 1, done=0, control=control)


def test_orders_are_no_dictation(grammar: Grammar) -> None:
    """Only where live hearing took one, of that kind, at about that time."""
    said = words("Gait normal. Start the clock. Reflexes normal.")
    left = drop_orders(said, grammar, [order("start_clock", 1.2)])
    assert " ".join(word.text for word in left) == "Gait normal. Reflexes normal."
    assert drop_orders(said, grammar, [order("start_clock", 9.0)]) == said
    assert drop_orders(said, grammar, [order("end", 1.2)]) == said
    assert drop_orders(said, grammar, [order("start_clock", 61.2)], start_s=60.0) == left
    assert left[2].lead == "\n\n"  # no statement runs on over what was taken out


def test_an_order_that_is_heard_again_inside_a_sentence(grammar: Grammar) -> None:
    """The second hearing puts commas where the first put full stops."""
    said = words("Pulse 72, what is still open? Gait normal.")
    left = drop_orders(said, grammar, [order("still_open", 1.2)])
    assert " ".join(word.text for word in left) == "Pulse 72, Gait normal."


def test_two_pieces_and_a_pause(tmp_path: Path, grammar: Grammar) -> None:
    """Pieces are joined as two recordings are; a stretch that was paused is silent to the recogniser."""
    kept = Kept.begin(tmp_path, Facts(started_at=NOW))
    sound = np.full(32_000, 900, "<i2").tobytes()
    for _ in range(2):
        kept.next_piece().write_bytes(header(len(sound)) + sound)
    kept.log(Mute(start_s=3.0, end_s=3.5, why="paused"))
    heard: list[np.ndarray] = []

    def hear(path: Path) -> Transcript:
        heard.append(np.frombuffer(path.read_bytes()[HEAD_BYTES:], "<i2"))
        source = Source(name=path.name, kind="recording", sha256="0" * 64)
        return Transcript(words=words("Gait normal."), sources=(source,))

    whole, sounds = hear_whole(kept, hear, grammar, name="", created_at=NOW)
    assert [word.source for word in whole.words] == [0, 0, 1, 1]
    assert whole.words[2].lead == "\n\n"
    assert [source.created_at for source in whole.sources] == [NOW, NOW]
    assert (heard[0] == 900).all()
    assert (heard[1][16_000:24_000] == 0).all()
    assert (heard[1][:16_000] == 900).all()
    assert (heard[1][24_000:] == 900).all()
    assert [path.name for path in sounds] == ["dictation-001.wav", "heard-dictation-002.wav"]  # what the note is of


def test_cleaning_keeps_the_length(tmp_path: Path) -> None:
    """Times stay what they were."""
    piece = tmp_path / "a.wav"
    piece.write_bytes(header(8_002) + bytes(range(250)) * 32 + b"\x01\x02")
    clean_piece(piece, [Mute(start_s=0.0, end_s=0.05, why="own tone")], tmp_path / "b.wav")
    assert (tmp_path / "b.wav").stat().st_size == piece.stat().st_size
    assert (tmp_path / "b.wav").read_bytes()[HEAD_BYTES + 3200 :] == piece.read_bytes()[HEAD_BYTES + 3200 :]


def test_rescued_sound(tmp_path: Path) -> None:
    """Sound its own disk refused is written elsewhere, or that is said."""
    path = rescue(b"\x01\x02" * 1600, tmp_path)
    assert path.read_bytes()[HEAD_BYTES:] == b"\x01\x02" * 1600
    assert path.stat().st_mode & 0o777 == 0o600
    with pytest.raises(MachineError, match="make room"):
        rescue(b"", tmp_path / "none")
