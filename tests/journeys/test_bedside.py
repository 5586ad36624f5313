"""`dictate listen` as people run it: killed and taken up, and through a sound server's microphone."""

from __future__ import annotations

import csv
import io
import os
import random
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from by_hand import DEMOS, ROOT

from dictate.hearing.audio import RATE_HZ, Recording
from dictate.hearing.microphone import to_pcm
from dictate.live.safe_sound import HEAD_BYTES, header
from dictate.model import Examination
from dictate.settings import cache_folder

pytestmark = pytest.mark.slow  # each waits for real speech; one at a time, on a quiet machine

PATIENCE_S = 240.0
MOST_UNSAFE_S = 0.5
NEEDED = ("pulseaudio", "paplay", "pactl")
ROOM = """load-module module-native-protocol-unix
load-module module-null-sink sink_name=room rate=16000 channels=1
load-module module-remap-source source_name=bedside master=room.monitor
set-default-sink room
set-default-source bedside
"""
Start = Callable[..., "subprocess.Popen[str]"]


def excerpt(place: Path, name: str, seconds: float) -> Path:
    """The first seconds of a demonstration, as a WAV file."""
    (block,) = Recording(DEMOS / f"{name}.flac").blocks()
    pcm = to_pcm(block.samples[: int(seconds * RATE_HZ)])
    path = place / f"{name}.wav"
    path.write_bytes(header(len(pcm)) + pcm)
    return path


@pytest.fixture
def start(tmp_path: Path, cut_off: Path) -> Iterator[Start]:
    """Start the program with its own folder of sound and no network; what still runs at the end is ended."""
    running: list[subprocess.Popen[str]] = []

    def begin(*arguments: str, **more: str) -> subprocess.Popen[str]:
        path = os.pathsep.join((str(cut_off), str(ROOT)))
        own = {"DICTATE_GRAMMAR": str(tmp_path / "none"), "DICTATE_SOUND": str(tmp_path / "sound")}
        env = {**os.environ, "PYTHONPATH": path, "DICTATE_CACHE": str(cache_folder()), **own, **more}
        with (tmp_path / f"said{len(running)}").open("w") as said:
            process = subprocess.Popen(
                [sys.executable, "-m", "dictate.cli.app", *arguments],
                env=env, text=True, stdout=subprocess.PIPE, stderr=said, cwd=tmp_path,
            )  # fmt: skip
        running.append(process)
        return process

    yield begin
    for process in running:
        if process.poll() is None:
            process.kill()
        process.communicate()


def rows(process: subprocess.Popen[str]) -> list[tuple[str, ...]]:
    """Findings printed as CSV, without their times."""
    out, _ = process.communicate(timeout=PATIENCE_S)
    assert process.returncode == 0
    names = ("item", "side", "site", "position", "minutes", "status", "certainty", "value", "unit", "detail")
    return [tuple(row[name] for name in names) for row in csv.DictReader(io.StringIO(out))]


def until(condition: Callable[[], bool], process: subprocess.Popen[str]) -> None:
    """Wait, unless the program ends by itself."""
    end = time.monotonic() + PATIENCE_S
    while not condition():
        assert process.poll() is None, "ended by itself"
        assert time.monotonic() < end, "waited too long"
        time.sleep(0.02)


def killed(start: Start, source: Path, kills: int, tmp_path: Path) -> float:
    """One dictation, killed so often at random moments: its sound and its findings are those of the recording.

    Returns the most seconds of sound that were not safe on the disk yet.
    """
    expected = rows(start("note", str(source), "--format", "csv"))
    pcm = source.read_bytes()[HEAD_BYTES:]
    chance = random.Random(kills)
    most_s = len(pcm) / 2 / RATE_HZ / kills
    arguments: tuple[str, ...] = ("--source", str(source))
    unsafe_s = 0.0
    for _ in range(kills):
        process = start("listen", *arguments, "--plain")
        size = sum(path.stat().st_size for path in (tmp_path / "sound").rglob("*.wav"))
        wanted = max(HEAD_BYTES, size) + int(chance.uniform(0.05, 0.9) * most_s * RATE_HZ) * 2
        until(
            lambda wanted=wanted: sum(p.stat().st_size for p in (tmp_path / "sound").rglob("*.wav")) >= wanted, process
        )
        process.kill()
        process.wait()
        (path,) = (tmp_path / "sound").rglob("*.wav")
        sound = path.read_bytes()[HEAD_BYTES:]
        assert sound == pcm[: len(sound)]
        promised = int.from_bytes(path.read_bytes()[40:44], "little")
        assert promised <= len(sound)  # readable up to there by any program, without repair
        unsafe_s = max(unsafe_s, (len(sound) - promised) / 2 / RATE_HZ)
        arguments = ("--resume",)
    assert rows(start("listen", "--resume", "--plain", "--fast", "--format", "csv")) == expected != []
    assert path.read_bytes()[HEAD_BYTES:] == pcm
    return unsafe_s


def test_killed_twice_and_taken_up(start: Start, tmp_path: Path) -> None:
    """kill -9, also while the model loads."""
    assert killed(start, excerpt(tmp_path, "postural-series", 16.0), 2, tmp_path) <= MOST_UNSAFE_S


def test_killed_a_hundred_times(start: Start, tmp_path: Path, record_property: Callable[[str, object], None]) -> None:
    """Over the whole of a dictation."""
    unsafe_s = killed(start, excerpt(tmp_path, "postural-series", 71.0), 100, tmp_path)
    record_property("most seconds not safe", unsafe_s)
    assert unsafe_s <= MOST_UNSAFE_S


@pytest.fixture
def room(tmp_path: Path) -> Iterator[dict[str, str]]:
    """A sound server of its own: what is played into the room comes out of the bedside microphone."""
    missing = [name for name in NEEDED if shutil.which(name) is None]
    if missing:
        pytest.skip(f"{', '.join(missing)} not installed (Debian: pulseaudio, pulseaudio-utils)")
    pytest.importorskip("sounddevice", reason="the extra `live` is not installed", exc_type=(ImportError, OSError))
    home = tmp_path / "home"
    (home / "run").mkdir(parents=True)
    (home / "run").chmod(0o700)
    (home / ".asoundrc").write_text("pcm.!default { type pulse }\nctl.!default { type pulse }\n")
    (home / "room.pa").write_text(ROOM)
    env = {"HOME": str(home), "XDG_RUNTIME_DIR": str(home / "run"), "XDG_CONFIG_HOME": str(home / "config")}
    options = ("-n", "-F", str(home / "room.pa"), "--daemonize=no", "--exit-idle-time=-1", "--use-pid-file=no")
    server = subprocess.Popen(
        ["pulseaudio", *options], env={**os.environ, **env}, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    try:
        until(lambda: control(env, "info").returncode == 0, server)
        code = "import sounddevice as s; print(s.query_devices(None, 'input')['name'])"
        found = subprocess.run(
            [sys.executable, "-c", code], env={**os.environ, **env}, capture_output=True, check=False
        )
        if found.returncode:
            pytest.skip("PortAudio does not reach the sound server (Debian: libasound2-plugins)")
        yield env
    finally:
        server.terminate()
        server.wait(10)


def control(env: dict[str, str], *words: str) -> subprocess.CompletedProcess[str]:
    """Ask the sound server."""
    return subprocess.run(["pactl", *words], env={**os.environ, **env}, capture_output=True, text=True, check=False)


def play(env: dict[str, str], path: Path) -> None:
    """Into the room, at the pace of speech."""
    subprocess.run(["paplay", str(path)], env={**os.environ, **env}, check=True, timeout=PATIENCE_S)


def listening(start: Start, tmp_path: Path, number: int, env: dict[str, str], *more: str) -> subprocess.Popen[str]:
    """The program, once it listens."""
    process = start("listen", "--plain", "--format", "csv", *more, **env)
    until(lambda: "> listening" in (tmp_path / f"said{number}").read_text(), process)
    return process


def ended(process: subprocess.Popen[str]) -> list[tuple[str, ...]]:
    """Ctrl-C once."""
    time.sleep(1.0)
    process.send_signal(signal.SIGINT)
    return rows(process)


def microphone_path(start: Start, tmp_path: Path, room: dict[str, str], seconds: float, cut_s: float) -> None:
    """Played into the room, killed in a pause, taken up, played on, ended; tones sound into the same room."""
    source = excerpt(tmp_path, "postural-series", seconds)
    expected = rows(start("note", str(source), "--format", "csv"))
    pcm, cut = source.read_bytes()[HEAD_BYTES:], int(cut_s * RATE_HZ) * 2
    for name, part in (("one.wav", pcm[:cut]), ("two.wav", pcm[cut:])):
        (tmp_path / name).write_bytes(header(len(part)) + part)
    first = listening(start, tmp_path, 1, room)
    play(room, tmp_path / "one.wav")
    time.sleep(1.0)
    first.kill()
    second = listening(start, tmp_path, 2, room, "--resume")
    play(room, tmp_path / "two.wav")
    assert ended(second) == expected != []


def test_microphone_path(start: Start, tmp_path: Path, room: dict[str, str]) -> None:
    """A quarter of a minute of it."""
    microphone_path(start, tmp_path, room, 15.7, 10.4)


def test_microphone_path_of_a_whole_dictation(start: Start, tmp_path: Path, room: dict[str, str]) -> None:
    """Over a minute."""
    microphone_path(start, tmp_path, room, 71.8, 43.6)


def test_microphone_unloaded_and_given_back(start: Start, tmp_path: Path, room: dict[str, str]) -> None:
    """Said when it goes and when it is back; what is dictated after that is in the note."""
    source = excerpt(tmp_path, "postural-series", 9.5)
    process = listening(start, tmp_path, 0, room, "--quiet")
    for line in modules(room):  # the last source goes: from one to another the server would move the stream unasked
        if "remap-source" in line or "null-sink" in line:
            control(room, "unload-module", line.split()[0])
    said = tmp_path / "said0"
    until(lambda: "the microphone is gone" in said.read_text(), process)
    control(room, "load-module", "module-null-sink", "sink_name=room", "rate=16000", "channels=1")
    control(room, "load-module", "module-remap-source", "source_name=bedside", "master=room.monitor")
    control(room, "set-default-sink", "room")
    control(room, "set-default-source", "bedside")
    until(lambda: "the microphone is back" in said.read_text(), process)
    play(room, source)
    assert ("blood_pressure", "148/86") in [(row[0], row[7]) for row in ended(process)]


def test_two_voices_in_the_room(start: Start, tmp_path: Path) -> None:
    """The examiner dictates and talks to the patient, a second voice answers: only dictation is taken unasked."""
    for name in ("flite", "espeak-ng"):
        if shutil.which(name) is None:
            pytest.skip(f"{name} not installed (Debian: {name})")
    told = (
        ("slt", "Motor. Deltoid four on the left."), ("slt", "Can you look over here, please."),
        ("patient", "It's weaker on the left."), ("slt", "Does that hurt?"), ("patient", "No pain."),
        ("slt", "Can you see one pen or two?"), ("patient", "No double vision."),
        ("slt", "Reflexes. Biceps reflex two plus on the right."), ("patient", "My left leg is weak."),
    )  # fmt: skip
    parts = []
    for voice, text in told:
        path = tmp_path / "said.wav"
        by_patient = ["espeak-ng", "-v", "en-us", "-w", str(path), text]
        command = by_patient if voice == "patient" else ["flite", "-voice", voice, "-t", text, "-o", str(path)]
        subprocess.run(command, check=True)
        parts += [to_pcm(block.samples) for block in Recording(path).blocks()] + [bytes(RATE_HZ)]
    source, pcm = tmp_path / "room.wav", b"".join(parts)
    source.write_bytes(header(len(pcm)) + pcm)
    process = start("listen", "--source", str(source), "--fast", "--plain", "--out", str(tmp_path / "out"))
    process.communicate(timeout=PATIENCE_S)
    assert process.returncode == 0
    exam = Examination.model_validate_json((tmp_path / "out" / "room.exam.json").read_text(encoding="utf-8"))
    asked = {at for query in exam.open_musts if query.code == "whose-words" for at in query.findings}
    dictated = {"strength_deltoid", "reflex_biceps"}
    assert {one.item for at, one in enumerate(exam.findings) if at not in asked} <= dictated
    assert dictated <= {one.item for one in exam.findings}


def modules(room: dict[str, str]) -> list[str]:
    """What the server has loaded."""
    return control(room, "list", "short", "modules").stdout.splitlines()
