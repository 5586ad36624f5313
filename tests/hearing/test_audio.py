"""Recordings are read whole or refused in one line."""

from __future__ import annotations

import os
import re
import wave
from pathlib import Path

import numpy as np
import pytest
from hearing.sounds import noise, silence, tone, write_silent_film, write_sound

from dictate.errors import InputError
from dictate.hearing.audio import RATE_HZ, Recording, Samples


def whole(path: Path, **options: float) -> Samples:
    return np.concatenate([block.samples for block in Recording(path, **options).blocks()])


def fault(path: Path) -> str:
    """The one line a recording is refused with."""
    with pytest.raises(InputError) as raised:
        whole(path)
    assert "\n" not in str(raised.value)
    return str(raised.value)


@pytest.mark.parametrize("ending", [".wav", ".flac", ".mp3", ".m4a", ".mp4", ".ogg", ".opus", ".webm"])
def test_every_container_gives_the_same_sound(tmp_path: Path, ending: str) -> None:
    """Mono, 16 kHz, float32; length and level as recorded."""
    rate_hz = 48_000
    path = write_sound(tmp_path / f"tone{ending}", tone(2.0, rate_hz=rate_hz), rate_hz=rate_hz)
    samples = whole(path)
    assert samples.dtype == np.float32
    assert samples.ndim == 1
    assert len(samples) / RATE_HZ == pytest.approx(2.0, abs=0.15)  # an encoder adds up to two frames
    middle = samples[RATE_HZ // 2 : RATE_HZ]
    assert np.sqrt(np.mean(middle**2)) == pytest.approx(0.3 / np.sqrt(2), rel=0.1)


@pytest.mark.parametrize("rate_hz", [8_000, 11_025, 16_000, 22_050, 44_100, 48_000])
def test_every_sampling_rate_keeps_the_pitch(tmp_path: Path, rate_hz: int) -> None:
    samples = whole(write_sound(tmp_path / "tone.wav", tone(1.0, rate_hz=rate_hz, hz=1000.0), rate_hz=rate_hz))
    strength = np.abs(np.fft.rfft(samples))
    assert np.fft.rfftfreq(len(samples), 1 / RATE_HZ)[np.argmax(strength)] == pytest.approx(1000.0, abs=2.0)


@pytest.mark.parametrize("voice_on", [0, 1])
def test_a_voice_on_one_channel_is_taken_as_it_is(tmp_path: Path, voice_on: int) -> None:
    """Halving it with the silent channel would make it faint."""
    sound = np.zeros((2, RATE_HZ), np.float32)
    sound[voice_on] = tone(1.0)
    assert np.max(np.abs(whole(write_sound(tmp_path / "one.wav", sound)))) == pytest.approx(0.3, abs=0.01)


def test_channels_that_cancel_each_other_do_not_give_silence(tmp_path: Path) -> None:
    sound = np.stack([tone(1.0), -tone(1.0)])
    assert np.max(np.abs(whole(write_sound(tmp_path / "cancel.wav", sound)))) == pytest.approx(0.3, abs=0.01)


def test_two_like_channels_are_averaged(tmp_path: Path) -> None:
    """Noise that differs between them gets less."""
    hiss = np.stack([tone(1.0) + noise(1.0), tone(1.0) - noise(1.0)])
    assert whole(write_sound(tmp_path / "two.wav", hiss)) == pytest.approx(tone(1.0), abs=0.01)


def test_blocks_join_to_the_recording(tmp_path: Path) -> None:
    """Nothing is lost or doubled between blocks, and each knows its time."""
    path = write_sound(tmp_path / "long.wav", noise(10.0))
    blocks = list(Recording(path, block_s=3.0).blocks())
    assert len(blocks) > 3
    assert max(len(block.samples) for block in blocks) <= 3.0 * RATE_HZ
    assert np.array_equal(np.concatenate([block.samples for block in blocks]), whole(path))
    ends = [block.end_s for block in blocks]
    assert [block.start_s for block in blocks] == pytest.approx([0.0, *ends[:-1]])


def test_a_block_ends_in_a_pause(tmp_path: Path) -> None:
    """A word must not be cut in two."""
    sound = np.concatenate([tone(4.0), silence(1.0), tone(5.0)])
    first, *_ = Recording(write_sound(tmp_path / "pause.wav", sound), block_s=6.0).blocks()
    assert 4.0 < first.end_s < 5.0


def test_no_block_is_longer_than_memory_bears(tmp_path: Path) -> None:
    """Five minutes come in blocks of two minutes at the most: four took 746 MB and more (docs/hearing.md)."""
    path = write_sound(tmp_path / "long.wav", tone(300.0))
    lengths = [len(block.samples) / RATE_HZ for block in Recording(path).blocks()]
    assert max(lengths) <= 120
    assert sum(lengths) == pytest.approx(300.0)


def test_the_source_says_what_was_read_and_when_it_was_made(tmp_path: Path) -> None:
    path = write_sound(tmp_path / "made.m4a", tone(1.0), made="2026-03-04T14:30:00")
    recording = Recording(path)
    list(recording.blocks())
    source = recording.source()
    assert (source.name, source.kind) == ("made.m4a", "recording")
    assert source.duration_s == pytest.approx(1.0, abs=0.1)
    assert source.created_at is not None
    assert source.created_at.isoformat().startswith("2026-03-04T14:30")
    assert re.fullmatch("[0-9a-f]{64}", source.sha256)


@pytest.mark.parametrize("made", ["1970-01-01T00:00:00", "1904-01-01T00:00:00"])
def test_a_clock_that_was_never_set_is_no_time(tmp_path: Path, made: str) -> None:
    assert Recording(write_sound(tmp_path / "unset.m4a", tone(0.5), made=made)).created_at is None


def test_a_recording_without_a_time_has_none(tmp_path: Path) -> None:
    assert Recording(write_sound(tmp_path / "plain.wav", tone(0.5))).created_at is None


def test_a_very_short_recording_is_read(tmp_path: Path) -> None:
    assert len(whole(write_sound(tmp_path / "short.wav", tone(0.1)))) == RATE_HZ // 10


def test_no_file(tmp_path: Path) -> None:
    assert "no such file" in fault(tmp_path / "none.wav")


def test_a_folder(tmp_path: Path) -> None:
    assert "is a folder" in fault(tmp_path)


def test_an_empty_file(tmp_path: Path) -> None:
    (tmp_path / "empty.wav").touch()
    assert fault(tmp_path / "empty.wav").startswith("empty.wav: the file is empty")


def test_a_pipe(tmp_path: Path) -> None:
    """It could not be read a second time, and would wait for ever."""
    os.mkfifo(tmp_path / "pipe.wav")
    assert "not a regular file" in fault(tmp_path / "pipe.wav")


def test_a_name_with_a_null_byte() -> None:
    assert "no such file" in fault(Path("a\0b.wav"))


def test_a_text_with_the_ending_of_a_recording(tmp_path: Path) -> None:
    (tmp_path / "text.wav").write_text("Biceps two plus on the right.\n" * 50, encoding="utf-8")
    assert "not a recording this program can read" in fault(tmp_path / "text.wav")


@pytest.mark.parametrize("seed", range(5))
def test_random_bytes(tmp_path: Path, seed: int) -> None:
    (tmp_path / "random.mp3").write_bytes(np.random.default_rng(seed).bytes(20_000))
    assert fault(tmp_path / "random.mp3").startswith("random.mp3: ")


def test_a_play_list_opens_no_other_file(tmp_path: Path) -> None:
    """A list renamed to a recording must not make the decoder follow it."""
    inner = write_sound(tmp_path / "inner.wav", tone(1.0))
    (tmp_path / "list.wav").write_text(f"ffconcat version 1.0\nfile '{inner.name}'\n", encoding="utf-8")
    (tmp_path / "list.m4a").write_text(f"#EXTM3U\n#EXTINF:1,\n{inner.name}\n", encoding="utf-8")
    assert "not a recording" in fault(tmp_path / "list.wav")
    assert "not a recording" in fault(tmp_path / "list.m4a")


def test_a_film_without_sound(tmp_path: Path) -> None:
    assert "holds no sound track" in fault(write_silent_film(tmp_path / "film.mp4"))


@pytest.mark.parametrize("ending", [".wav", ".flac", ".mp3", ".m4a", ".ogg", ".webm"])
@pytest.mark.parametrize("share", [0.01, 0.5, 0.9])
def test_a_file_cut_short_is_refused(tmp_path: Path, ending: str, share: float) -> None:
    """Half an examination must never pass for a whole one."""
    data = write_sound(tmp_path / f"whole{ending}", noise(6.0)).read_bytes()
    (tmp_path / f"cut{ending}").write_bytes(data[: int(len(data) * share)])
    assert fault(tmp_path / f"cut{ending}").startswith(f"cut{ending}: ")


def test_a_damaged_middle_is_refused(tmp_path: Path) -> None:
    path = write_sound(tmp_path / "hurt.flac", noise(6.0))
    data = bytearray(path.read_bytes())
    middle = len(data) // 2
    data[middle : middle + 20_000] = bytes(20_000)
    path.write_bytes(data)
    assert "hurt.flac: damaged or cut short" in fault(path)


def test_a_header_without_sound_is_refused(tmp_path: Path) -> None:
    with wave.open(str(tmp_path / "none.wav"), "wb") as file:
        file.setparams((1, 2, RATE_HZ, 0, "NONE", ""))
    assert fault(tmp_path / "none.wav").startswith("none.wav: ")


def test_sound_that_is_no_number_is_silence(tmp_path: Path) -> None:
    """A broken driver writes NaN into float recordings; the recogniser must not see it."""
    header = (
        b"RIFF\x00\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x03\x00\x01\x00\x80>\x00\x00\x00\xfa\x00\x00\x04\x00 \x00data"
    )
    sound = np.full(16_000, np.nan, np.float32).tobytes()
    data = bytearray(header + len(sound).to_bytes(4, "little") + sound)
    data[4:8] = (len(data) - 8).to_bytes(4, "little")
    (tmp_path / "nan.wav").write_bytes(data)
    assert np.array_equal(whole(tmp_path / "nan.wav"), silence(1.0))
