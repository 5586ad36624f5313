"""Learn low-rank changes to the decoder of Whisper base from spoken clips; the encoder stays as it is.

    python train.py FOLDER --out adapter.npz [--rounds 12] [--workers 5]

FOLDER holds model.bin (the verified weights), mel.npy (the recogniser's mel filters, 80 x 201) and clips-*.npz (int16 sound,
ends of clips, tokens). Needs torch; a graphics card where one is at hand. Reads nothing of the program, so that it can run
on a machine of its own.
"""

from __future__ import annotations

import argparse
import itertools
import json
import math
import random
import struct
import time
from pathlib import Path
from typing import Any

import numpy as np
import torch
import torch.nn.functional as nn
from torch.utils.data import DataLoader, Dataset

RATE, HOP, FFT = 16000, 160, 400
WINDOWS = (1500, 1500, 1500, 1800, 2100)  # frames of 10 ms: the program takes the shortest that holds a chunk
WIDTH, HEADS, LAYERS = 512, 8, 6
RANK, SCALE = 16, 2.0  # SCALE: what the program multiplies with, too
PAD, SILENT = 50257, -100
STEP = 8000  # lengths of sound are filled to a multiple, so that few plans of transforms are needed
LEARNT = (
    "self_attention/linear_0", "self_attention/linear_1", "attention/linear_0", "attention/linear_1",
    "attention/linear_2", "ffn/linear_0", "ffn/linear_1",
)  # fmt: skip
HALF = 4


def weights(path: Path, device: str) -> dict[str, torch.Tensor]:
    """Every matrix of a CTranslate2 file of 16-bit floats, as 32-bit floats."""
    raw, at = path.read_bytes(), 0

    def number(code: str) -> int:
        nonlocal at
        (value,) = struct.unpack_from("<" + code, raw, at)
        at += struct.calcsize("<" + code)
        return int(value)

    def name() -> str:
        nonlocal at
        size = number("H")
        at += size
        return raw[at - size : at - 1].decode()

    number("I"), name(), number("I")
    found = {}
    for _ in range(number("I")):
        key = name()
        shape = [number("I") for _ in range(number("B"))]
        kind, size = number("B"), number("I")
        if kind == HALF:
            half = np.frombuffer(raw, np.float16, size // 2, at).reshape(shape)
            found[key] = torch.tensor(half.astype(np.float32), device=device)
        at += size
    return found


class Whisper:
    """Encoder and decoder of Whisper base, with changes A and B beside 42 matrices of the decoder."""

    def __init__(self, model: dict[str, torch.Tensor], device: str, rank: int = RANK, drop: float = 0.05) -> None:
        self.weights, self.device, self.drop = model, device, drop
        self.training = True
        self.changes: dict[str, tuple[torch.Tensor, torch.Tensor]] = {}
        for layer in range(LAYERS):
            for part in LEARNT:
                name = f"decoder/layer_{layer}/{part}"
                rows, columns = model[name + "/weight"].shape
                down = torch.randn(rank, columns, device=device) / math.sqrt(columns)
                up = torch.zeros(rows, rank, device=device)
                self.changes[name] = (down.requires_grad_(), up.requires_grad_())
        self.strength = 1.0

    def _norm(self, x: torch.Tensor, name: str) -> torch.Tensor:
        return nn.layer_norm(x, (WIDTH,), self.weights[name + "/gamma"], self.weights[name + "/beta"], 1e-5)

    def _linear(self, x: torch.Tensor, name: str) -> torch.Tensor:
        y = nn.linear(x, self.weights[name + "/weight"], self.weights.get(name + "/bias"))
        if name in self.changes and self.strength:
            down, up = self.changes[name]
            y = y + nn.linear(nn.linear(nn.dropout(x, self.drop, self.training), down), up) * (SCALE * self.strength)
        return y

    def _attend(self, q: torch.Tensor, k: torch.Tensor, v: torch.Tensor, causal: bool = False) -> torch.Tensor:
        def split(x: torch.Tensor) -> torch.Tensor:
            return x.view(x.shape[0], x.shape[1], HEADS, WIDTH // HEADS).transpose(1, 2)

        mixed = nn.scaled_dot_product_attention(split(q), split(k), split(v), is_causal=causal)
        return mixed.transpose(1, 2).reshape(q.shape)

    def _self(self, x: torch.Tensor, name: str, causal: bool) -> torch.Tensor:
        q, k, v = self._linear(self._norm(x, name + "/layer_norm"), name + "/linear_0").split(WIDTH, -1)
        return x + self._linear(self._attend(q, k, v, causal), name + "/linear_1")

    def _forward(self, x: torch.Tensor, name: str) -> torch.Tensor:
        hidden = nn.gelu(self._linear(self._norm(x, name + "/layer_norm"), name + "/linear_0"))
        return x + self._linear(hidden, name + "/linear_1")

    def encode(self, mel: torch.Tensor) -> torch.Tensor:
        """Mel frames (batch, 80, frames) → the encoder's view (batch, frames / 2, 512)."""
        w = self.weights
        x = nn.gelu(nn.conv1d(mel, w["encoder/conv1/weight"], w["encoder/conv1/bias"], padding=1))
        x = nn.gelu(nn.conv1d(x, w["encoder/conv2/weight"], w["encoder/conv2/bias"], stride=2, padding=1)).transpose(
            1, 2
        )
        x = x + w["encoder/position_encodings/encodings"][: x.shape[1]]
        for layer in range(LAYERS):
            name = f"encoder/layer_{layer}"
            x = self._forward(self._self(x, name + "/self_attention", False), name + "/ffn")
        return self._norm(x, "encoder/layer_norm")

    def decode(self, tokens: torch.Tensor, view: torch.Tensor, last: bool = False) -> torch.Tensor:
        """Scores of the next token at every place, or at the last one."""
        w = self.weights
        x = w["decoder/embeddings/weight"][tokens] + w["decoder/position_encodings/encodings"][: tokens.shape[1]]
        for layer in range(LAYERS):
            name = f"decoder/layer_{layer}"
            x = self._self(x, name + "/self_attention", True)
            q = self._linear(self._norm(x, name + "/attention/layer_norm"), name + "/attention/linear_0")
            k, v = self._linear(view, name + "/attention/linear_1").split(WIDTH, -1)
            x = x + self._linear(self._attend(q, k, v), name + "/attention/linear_2")
            x = self._forward(x, name + "/ffn")
        return nn.linear(self._norm(x[:, -1:] if last else x, "decoder/layer_norm"), w["decoder/embeddings/weight"])


class Ear:
    """Sound → mel frames as the recogniser makes them, and what rooms, lines and microphones do to sound."""

    def __init__(self, filters: np.ndarray, device: str, seed: int) -> None:
        self.filters, self.device = torch.tensor(filters, dtype=torch.float32, device=device), device
        self.window = torch.hann_window(FFT, device=device)
        self.chance = np.random.default_rng(seed)

    def mel(self, sounds: torch.Tensor, lengths: torch.Tensor) -> torch.Tensor:
        """Log-mel of clips that are filled with silence; what lies behind each is zero, as in the program."""
        power = torch.stft(sounds, FFT, HOP, window=self.window, return_complex=True)[..., :-1].abs() ** 2
        mel = torch.log10(torch.clamp(self.filters @ power, min=1e-10))
        mel = (torch.maximum(mel, mel.amax((1, 2), keepdim=True) - 8.0) + 4.0) / 4.0
        frames = torch.arange(mel.shape[2], device=self.device)
        return mel * (frames < (lengths[:, None] + HOP - 1) // HOP)[:, None]

    def worn(self, sound: torch.Tensor) -> torch.Tensor:
        """The clip at another speed, in a room, through a line, in noise, at another level: each at times."""
        roll = self.chance.random
        if roll() < 0.5:
            size = int(len(sound) / self.chance.uniform(0.94, 1.06))
            sound = nn.interpolate(sound[None, None], size=min(size, WINDOWS[0] * HOP), mode="linear")[0, 0]
        size = len(sound)
        sound = nn.pad(sound, (0, -size % STEP))
        if roll() < 0.25:
            sound = self._room(sound)
        if roll() < 0.2:
            sound = self._band(sound, self.chance.uniform(80, 350), self.chance.uniform(3000, 4200))
        if roll() < 0.6:
            sound = sound + self._noise(len(sound)) * sound.std() * 10 ** (-self.chance.uniform(3, 40) / 20)
        sound = sound[:size]
        return sound / sound.abs().max().clamp(min=1e-4) * self.chance.uniform(0.05, 0.95)

    def _spectrum(self, sound: torch.Tensor, shape: torch.Tensor) -> torch.Tensor:
        return torch.fft.irfft(torch.fft.rfft(sound) * shape, n=len(sound))

    def _frequencies(self, size: int) -> torch.Tensor:
        return torch.fft.rfftfreq(size, 1 / RATE, device=self.device)

    def _band(self, sound: torch.Tensor, low: float, high: float) -> torch.Tensor:
        f = self._frequencies(len(sound))
        return self._spectrum(sound, torch.sigmoid((f - low) / 30) * torch.sigmoid((high - f) / 100))

    def _noise(self, size: int) -> torch.Tensor:
        """White, pink or brown noise of unit power."""
        tilt = float(self.chance.choice((0.0, 0.5, 1.0)))
        white = torch.randn(size, device=self.device)
        noise = self._spectrum(white, self._frequencies(size).clamp(min=50) ** -tilt)
        return noise / noise.std()

    def _room(self, sound: torch.Tensor) -> torch.Tensor:
        """A decaying tail of noise after the direct sound: reverberation times of 0.15 to 0.6 s."""
        size = STEP
        time_s = torch.arange(size, device=self.device) / RATE
        tail = torch.randn(size, device=self.device) * torch.exp(-6.9 * time_s / self.chance.uniform(0.15, 0.6))
        tail = tail / tail.norm() * self.chance.uniform(0.1, 0.7)
        tail[0] = 1.0
        n = len(sound) + size
        return torch.fft.irfft(torch.fft.rfft(sound, n) * torch.fft.rfft(tail, n), n=n)[: len(sound)]


Row = tuple[torch.Tensor, list[int], list[int]]  # sound, prompt, target
Batch = tuple[torch.Tensor, torch.Tensor, torch.Tensor, torch.Tensor]  # sounds, their lengths, tokens in, tokens out


class Clips(Dataset[Row]):
    """All clips: sound, prompts and target tokens; worn by an ear when they are learnt from."""

    def __init__(self, folder: Path, ear: Ear | None = None) -> None:
        self.sounds: list[np.ndarray] = []
        self.tokens: list[dict[str, Any]] = []
        self.ear = ear
        for path in sorted(folder.glob("clips-*.npz")) if folder.is_dir() else [folder]:
            with np.load(path) as kept:
                ends = [0, *kept["ends"].tolist()]
                sound = kept["sound"]
                self.sounds += [sound[a:b] for a, b in itertools.pairwise(ends)]
                self.tokens += json.loads(kept["clips"].tobytes())

    def row(self, index: int) -> Row:
        """A clip as it is, without a list of terms as prompt."""
        sound = torch.tensor(self.sounds[index].astype(np.float32) / 32768)
        return sound, self.tokens[index]["prompts"][0], self.tokens[index]["target"]

    def __getitem__(self, index: int) -> Row:
        """A clip to learn from; every second one with a list of terms as prompt."""
        sound, prompt, target = self.row(index)
        if random.random() < 0.5:
            prompt = random.choice(self.tokens[index]["prompts"][1:])
        return self.ear.worn(sound) if self.ear else sound, prompt, target


def batch_of(rows: list[Row], learn: bool) -> Batch:
    """Clips of different lengths, filled to one window; a random one for learning."""
    longest = max(len(sound) for sound, _, _ in rows) / HOP
    window = random.choice(WINDOWS) if learn else next(each for each in WINDOWS if each >= longest)
    sounds = torch.stack(
        [nn.pad(sound[: window * HOP], (0, max(0, window * HOP - len(sound)))) for sound, _, _ in rows]
    )
    size = max(len(prompt) + len(target) + 1 for _, prompt, target in rows)
    given, wanted = np.full((len(rows), size), PAD), np.full((len(rows), size), SILENT)
    for row, (_, prompt, target) in enumerate(rows):
        whole = [*prompt, *target, PAD]
        given[row, : len(whole)] = whole
        wanted[row, len(prompt) - 1 : len(whole) - 1] = whole[len(prompt) :]
    lengths = torch.tensor([len(sound) for sound, _, _ in rows])
    return sounds, lengths, torch.tensor(given), torch.tensor(wanted)


def to_learn(rows: list[Row]) -> Batch:
    """A batch to learn from."""
    return batch_of(rows, learn=True)


def awake(worker: int) -> None:
    """Another seed for every worker."""
    subset: Any = torch.utils.data.get_worker_info().dataset  # type: ignore[union-attr]
    subset.dataset.ear.chance = np.random.default_rng(torch.initial_seed() % 2**32)
    random.seed(torch.initial_seed() + worker)


def loss_of(model: Whisper, ear: Ear, batch: Batch, reduction: str = "mean") -> torch.Tensor:
    """Cross entropy of the text's tokens; the encoder gets no gradient."""
    sounds, lengths, given, wanted = (each.to(model.device) for each in batch)
    mel = ear.mel(sounds, lengths)
    with torch.autocast(model.device, torch.bfloat16, enabled=model.device == "cuda"):
        with torch.no_grad():
            view = model.encode(mel)
        scores = model.decode(given, view)
    return nn.cross_entropy(scores.float().flatten(0, 1), wanted.flatten(), ignore_index=SILENT, reduction=reduction)


def checked(model: Whisper, clips: Clips, chosen: list[int], ear: Ear, size: int) -> str:
    """Loss per token on clips that are not learnt from, at several strengths."""
    model.training, told = False, []
    with torch.no_grad():
        for model.strength in (0.0, 0.5, 0.75, 1.0):
            total, count = 0.0, 0
            for start in range(0, len(chosen), size):
                batch = batch_of([clips.row(index) for index in chosen[start : start + size]], learn=False)
                total += loss_of(model, ear, batch, "sum").item()
                count += int((batch[3] != SILENT).sum())
            told.append(f"{model.strength}: {total / max(count, 1):.3f}")
    model.training, model.strength = True, 1.0
    return ", ".join(told)


def save(model: Whisper, path: Path) -> None:
    """The changes as 16-bit floats, named as the program reads them."""
    kept = {}
    for name, (down, up) in model.changes.items():
        key = name.replace("/", "|")
        kept[key + "|A"] = down.detach().cpu().numpy().astype(np.float16)
        kept[key + "|B"] = up.detach().cpu().numpy().astype(np.float16)
    np.savez(path, **kept)


def main() -> None:
    """Learn, and write the adapter."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("folder", type=Path)
    ask.add_argument("--out", type=Path, required=True)
    ask.add_argument("--rounds", type=int, default=12)
    ask.add_argument("--batch", type=int, default=32)
    ask.add_argument("--rate", type=float, default=1e-3)
    ask.add_argument("--decay", type=float, default=0.01)
    ask.add_argument("--kept-back", type=int, default=96)
    ask.add_argument("--rank", type=int, default=RANK)
    ask.add_argument("--drop", type=float, default=0.05, help="share of what goes into the changes that is left out")
    ask.add_argument("--workers", type=int, default=0, help="processes that wear the clips")
    given = ask.parse_args()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(0), random.seed(0)
    model = Whisper(weights(given.folder / "model.bin", device), device, given.rank, given.drop)
    filters = np.load(given.folder / "mel.npy")
    ear, clips = Ear(filters, device, seed=0), Clips(given.folder, Ear(filters, "cpu", seed=0))
    order = list(range(len(clips.sounds)))
    random.shuffle(order)
    check, learn = order[: given.kept_back], order[given.kept_back :]
    print(len(learn), "clips,", f"{sum(len(clips.sounds[i]) for i in learn) / RATE / 3600:.2f} h", device, flush=True)
    numbers = [each for pair in model.changes.values() for each in pair]
    steps, step, began = given.rounds * (len(learn) // given.batch), 0, time.monotonic()
    optimizer = torch.optim.AdamW(numbers, given.rate, weight_decay=given.decay)
    print("before", checked(model, clips, check, ear, given.batch), flush=True)
    for turn in range(given.rounds):
        loader = DataLoader(
            torch.utils.data.Subset(clips, learn), given.batch, shuffle=True, drop_last=True, num_workers=given.workers,
            collate_fn=to_learn, worker_init_fn=awake, prefetch_factor=4 if given.workers else None,
        )  # fmt: skip
        for batch in loader:
            for group in optimizer.param_groups:
                group["lr"] = given.rate * min(1.0, step / 40) * 0.5 * (1 + math.cos(math.pi * step / steps))
            loss = loss_of(model, ear, batch)
            optimizer.zero_grad()
            loss.backward()
            torch.nn.utils.clip_grad_norm_(numbers, 1.0)
            optimizer.step()
            step += 1
        print(
            turn,
            f"{loss.item():.3f}",
            checked(model, clips, check, ear, given.batch),
            f"{time.monotonic() - began:.0f} s",
            flush=True,
        )
        save(model, given.out)


if __name__ == "__main__":
    main()
