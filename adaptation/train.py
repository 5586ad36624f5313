"""Learn low-rank changes to the decoder of Whisper base from spoken clips; the encoder stays as it is.

    python train.py FOLDER --out adapter.npz [--rounds 12] [--near 1]

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

RATE, HOP, FFT = 16000, 160, 400
WINDOWS = (1500, 1500, 1500, 1800, 2100)  # frames of 10 ms: the program takes the shortest that holds a chunk
WIDTH, HEADS, LAYERS = 512, 8, 6
RANK, SCALE = 16, 2.0  # SCALE: what the program multiplies with, too
BANDED = 0.2  # share of clips through a telephone's band
PAD, SILENT = 50257, -100
STEP = 8000  # lengths of sound are filled to a multiple, so that few plans of transforms are needed
LEARNT = (
    "self_attention/linear_0", "self_attention/linear_1", "attention/linear_0", "attention/linear_1",
    "attention/linear_2", "ffn/linear_0", "ffn/linear_1",
)  # fmt: skip
HALF = 4
torch.backends.cuda.enable_cudnn_sdp(
    False
)  # it plans anew for every length of text, which takes six times the learning


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

    def decode(self, tokens: torch.Tensor, view: torch.Tensor, at: torch.Tensor | None = None) -> torch.Tensor:
        """Scores of the next token at the places `at`, row after row, or at the last place of every row."""
        w = self.weights
        x = w["decoder/embeddings/weight"][tokens] + w["decoder/position_encodings/encodings"][: tokens.shape[1]]
        for layer in range(LAYERS):
            name = f"decoder/layer_{layer}"
            x = self._self(x, name + "/self_attention", True)
            q = self._linear(self._norm(x, name + "/attention/layer_norm"), name + "/attention/linear_0")
            k, v = self._linear(view, name + "/attention/linear_1").split(WIDTH, -1)
            x = x + self._linear(self._attend(q, k, v), name + "/attention/linear_2")
            x = self._forward(x, name + "/ffn")
        return nn.linear(
            self._norm(x[:, -1] if at is None else x[at], "decoder/layer_norm"), w["decoder/embeddings/weight"]
        )


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

    def worn(self, sounds: list[torch.Tensor]) -> tuple[torch.Tensor, torch.Tensor]:
        """The clips at another speed, in a room, through a line, in noise, at another level, each at times; lengths."""
        sounds = [self._sped(each) for each in sounds]
        lengths = torch.tensor([len(each) for each in sounds], device=self.device)
        size = -(-int(lengths.max()) // STEP) * STEP
        batch = torch.stack([nn.pad(each, (0, size - len(each))) for each in sounds])
        there = torch.arange(size, device=self.device) < lengths[:, None]
        batch = torch.where(self._some(batch, 0.25), self._rooms(batch), batch)
        batch = torch.where(self._some(batch, BANDED), self._bands(batch), batch)
        loud = ((batch**2 * there).sum(1) / lengths).sqrt()
        faint = 10 ** (-self._between(batch, 3, 40) / 20) * self._some(batch, 0.6)
        batch = (batch + self._noises(batch) * loud[:, None] * faint) * there
        return batch / batch.abs().amax(1, keepdim=True).clamp(min=1e-4) * self._between(batch, 0.05, 0.95), lengths

    def _sped(self, sound: torch.Tensor) -> torch.Tensor:
        if self.chance.random() < 0.5:
            return sound[: WINDOWS[0] * HOP]
        size = min(int(len(sound) / self.chance.uniform(0.94, 1.06)), WINDOWS[0] * HOP)
        return nn.interpolate(sound[None, None], size=size, mode="linear")[0, 0]

    def _between(self, batch: torch.Tensor, low: float, high: float) -> torch.Tensor:
        """A number for each clip."""
        return torch.tensor(self.chance.uniform(low, high, (len(batch), 1)), dtype=torch.float32, device=self.device)

    def _some(self, batch: torch.Tensor, share: float) -> torch.Tensor:
        """Yes for that share of the clips."""
        return self._between(batch, 0, 1) < share

    def _spectrum(self, sounds: torch.Tensor, shape: torch.Tensor) -> torch.Tensor:
        return torch.fft.irfft(torch.fft.rfft(sounds) * shape, n=sounds.shape[1])

    def _frequencies(self, size: int) -> torch.Tensor:
        return torch.fft.rfftfreq(size, 1 / RATE, device=self.device)

    def _bands(self, batch: torch.Tensor) -> torch.Tensor:
        """Through a telephone's band."""
        f = self._frequencies(batch.shape[1])
        low, high = self._between(batch, 80, 350), self._between(batch, 3000, 4200)
        return self._spectrum(batch, torch.sigmoid((f - low) / 30) * torch.sigmoid((high - f) / 100))

    def _noises(self, batch: torch.Tensor) -> torch.Tensor:
        """White, pink or brown noise of unit power."""
        tilt = self.chance.choice((0.0, 0.5, 1.0), (len(batch), 1))
        shape = self._frequencies(batch.shape[1]).clamp(min=50) ** -torch.tensor(tilt, device=self.device).float()
        noise = self._spectrum(torch.randn_like(batch), shape)
        return noise / noise.std(1, keepdim=True)

    def _rooms(self, batch: torch.Tensor) -> torch.Tensor:
        """A decaying tail of noise after the direct sound: reverberation times of 0.15 to 0.6 s."""
        time_s = torch.arange(STEP, device=self.device) / RATE
        tails = torch.randn(len(batch), STEP, device=self.device) * torch.exp(
            -6.9 * time_s / self._between(batch, 0.15, 0.6)
        )
        tails = tails / tails.norm(dim=1, keepdim=True) * self._between(batch, 0.1, 0.7)
        tails[:, 0] = 1.0
        n = batch.shape[1] + STEP
        return torch.fft.irfft(torch.fft.rfft(batch, n) * torch.fft.rfft(tails, n), n=n)[:, : batch.shape[1]]


Row = tuple[torch.Tensor, list[int], list[int], bool]  # sound, prompt, target, whether it is ordinary talk
# Sounds, their lengths, tokens in, tokens out, which rows are ordinary talk.
Batch = tuple[torch.Tensor, torch.Tensor, torch.Tensor, torch.Tensor, torch.Tensor]


class Clips:
    """All clips: sound, prompts and target tokens."""

    def __init__(self, folder: Path, device: str = "cpu") -> None:
        self.sounds: list[torch.Tensor] = []
        self.tokens: list[dict[str, Any]] = []
        for path in sorted(folder.glob("clips-*.npz")) if folder.is_dir() else [folder]:
            with np.load(path) as kept:
                ends = [0, *kept["ends"].tolist()]
                sound = torch.tensor(kept["sound"], device=device)
                self.sounds += [sound[a:b] for a, b in itertools.pairwise(ends)]
                self.tokens += json.loads(kept["clips"].tobytes())

    def row(self, index: int, *, learn: bool = False) -> Row:
        """A clip without a list of terms as prompt; to learn from, every second one has one."""
        clip = self.tokens[index]
        prompt = random.choice(clip["prompts"][1:]) if learn and random.random() < 0.5 else clip["prompts"][0]
        return self.sounds[index].float() / 32768, prompt, clip["target"], clip.get("ordinary", False)


def batch_of(rows: list[Row], ear: Ear | None = None) -> Batch:
    """Clips of different lengths, filled to one window; with an ear, worn and in a random window, to learn from."""
    sounds, lengths = [row[0] for row in rows], torch.tensor([len(row[0]) for row in rows])
    if ear:
        batch, lengths = ear.worn(sounds)
    else:
        batch = torch.nn.utils.rnn.pad_sequence(sounds, batch_first=True)
    longest = int(lengths.max()) / HOP
    window = HOP * (random.choice(WINDOWS) if ear else next(each for each in WINDOWS if each >= longest))
    batch = nn.pad(batch[:, :window], (0, max(0, window - batch.shape[1])))
    size = max(len(prompt) + len(target) + 1 for _, prompt, target, _ in rows)
    given, wanted = np.full((len(rows), size), PAD), np.full((len(rows), size), SILENT)
    for row, (_, prompt, target, _) in enumerate(rows):
        whole = [*prompt, *target, PAD]
        given[row, : len(whole)] = whole
        wanted[row, len(prompt) - 1 : len(whole) - 1] = whole[len(prompt) :]
    return batch, lengths, torch.tensor(given), torch.tensor(wanted), torch.tensor([row[3] for row in rows])


def loss_of(model: Whisper, ear: Ear, batch: Batch, reduction: str = "mean", near: float = 0.0) -> torch.Tensor:
    """Cross entropy of the text's tokens; the encoder gets no gradient.

    With `near`, so much of how far what is expected of ordinary talk is from what the base expects (Kullback-Leibler,
    nats a token of ordinary talk) is added: to hear such talk as the base does is then part of what is learnt.
    """
    sounds, lengths, given, wanted, ordinary = (each.to(model.device) for each in batch)
    mel, spoken = ear.mel(sounds, lengths), wanted != SILENT
    with torch.autocast(model.device, torch.bfloat16, enabled=model.device == "cuda"):
        with torch.no_grad():
            view = model.encode(mel)
        scores = model.decode(given, view, spoken).float()
    loss = nn.cross_entropy(scores, wanted[spoken], reduction=reduction)
    if not near or not bool(ordinary.any()):
        return loss
    strength, model.strength = model.strength, 0.0
    with torch.no_grad(), torch.autocast(model.device, torch.bfloat16, enabled=model.device == "cuda"):
        base = model.decode(given[ordinary], view[ordinary], spoken[ordinary]).float()
    model.strength = strength
    found = scores[(spoken & ordinary[:, None])[spoken]]
    return loss + near * nn.kl_div(found.log_softmax(-1), base.log_softmax(-1), reduction="batchmean", log_target=True)


def checked(model: Whisper, clips: Clips, chosen: list[int], ear: Ear, size: int) -> str:
    """Loss per token on clips that are not learnt from, at several strengths."""
    model.training, told = False, []
    with torch.no_grad():
        for model.strength in (0.0, 0.5, 0.75, 1.0):
            total, count = 0.0, 0
            for start in range(0, len(chosen), size):
                batch = batch_of([clips.row(index) for index in chosen[start : start + size]])
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
    ask.add_argument("--start", type=Path, help="learn on from this adapter, of the same rank")
    ask.add_argument("--near", type=float, default=0.0, help="weight of keeping to the base in ordinary talk")
    given = ask.parse_args()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(0), random.seed(0)
    model = Whisper(weights(given.folder / "model.bin", device), device, given.rank, given.drop)
    if given.start:
        with np.load(given.start) as kept, torch.no_grad():
            for name, pair in model.changes.items():
                for part, numbers in zip("AB", pair, strict=True):
                    numbers.copy_(torch.tensor(kept[f"{name.replace('/', '|')}|{part}"].astype(np.float32)))
    filters = np.load(given.folder / "mel.npy")
    ear, clips = Ear(filters, device, seed=0), Clips(given.folder, device)
    order = list(range(len(clips.sounds)))
    random.shuffle(order)
    check, learn = order[: given.kept_back], order[given.kept_back :]
    print(len(learn), "clips,", f"{sum(len(clips.sounds[i]) for i in learn) / RATE / 3600:.2f} h", device, flush=True)
    numbers = [each for pair in model.changes.values() for each in pair]
    steps, step, began = given.rounds * (len(learn) // given.batch), 0, time.monotonic()
    optimizer = torch.optim.AdamW(numbers, given.rate, weight_decay=given.decay)
    print("before", checked(model, clips, check, ear, given.batch), flush=True)
    for turn in range(given.rounds):
        random.shuffle(learn)
        for start in range(0, len(learn) - given.batch + 1, given.batch):
            batch = batch_of([clips.row(index, learn=True) for index in learn[start : start + given.batch]], ear)
            for group in optimizer.param_groups:
                group["lr"] = given.rate * min(1.0, step / 40) * 0.5 * (1 + math.cos(math.pi * step / steps))
            loss = loss_of(model, ear, batch, near=given.near)
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
