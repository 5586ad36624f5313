"""What the recogniser hears of the held-out clips with each adapter and strength: greedy, all clips at once, on a GPU.

    python listen.py FOLDER HELD-OUT.npz OUT.json --adapter new=a.npz@0.3,0.5,0.75,1 --adapter old=b.npz@0.5

FOLDER as for train.py, with suppressed.npy: the tokens that are no speech. HELD-OUT.npz comes from sound.py.
"""

from __future__ import annotations

import argparse
import json
import time
from pathlib import Path

import numpy as np
import torch
from train import PAD, Clips, Ear, Whisper, batch_of, weights

MOST_TOKENS = 90
BLANK = 220
BATCH = 160


def changes_of(path: Path, device: str) -> dict[str, tuple[torch.Tensor, torch.Tensor]]:
    """The matrices of an adapter."""
    with np.load(path) as kept:
        names = {key.rsplit("|", 1)[0] for key in kept.files}
        return {
            name.replace("|", "/"): tuple(  # type: ignore[misc]
                torch.tensor(kept[f"{name}|{part}"].astype(np.float32), device=device) for part in "AB"
            )
            for name in names
        }


@torch.no_grad()
def heard(model: Whisper, views: torch.Tensor, prompt: list[int], barred: torch.Tensor) -> list[list[int]]:
    """The likeliest next token, again and again, until all texts have ended."""
    rows = torch.tensor([prompt] * len(views), device=views.device)
    done = torch.zeros(len(views), dtype=torch.bool, device=views.device)
    for step in range(MOST_TOKENS):
        with torch.autocast(model.device, torch.bfloat16, enabled=model.device == "cuda"):
            scores = model.decode(rows, views).float()
        scores[:, barred] = -torch.inf
        if step == 0:
            scores[:, [BLANK, PAD]] = -torch.inf
        following = scores.argmax(-1).masked_fill(done, PAD)
        done |= following == PAD
        rows = torch.cat([rows, following[:, None]], 1)
        if bool(done.all()):
            break
    return [[token for token in row if token != PAD] for row in rows[:, len(prompt) :].tolist()]


def main() -> None:
    """Write the tokens heard, by adapter, strength and prompt."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("folder", type=Path)
    ask.add_argument("clips", type=Path)
    ask.add_argument("out", type=Path)
    ask.add_argument("--adapter", action="append", default=[])
    given = ask.parse_args()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    model = Whisper(weights(given.folder / "model.bin", device), device)
    model.training, plain = False, model.changes
    ear, clips = Ear(np.load(given.folder / "mel.npy"), device, seed=0), Clips(given.clips)
    barred = torch.tensor(np.load(given.folder / "suppressed.npy"), device=device)
    ways = [("base", plain, 0.0)]
    for each in given.adapter:
        name, _, rest = each.partition("=")
        path, _, strengths = rest.partition("@")
        ways += [(name, changes_of(Path(path), device), float(s)) for s in strengths.split(",")]
    out: dict[str, list[list[int]]] = {}
    began = time.monotonic()
    for start in range(0, len(clips.sounds), BATCH):
        chosen = list(range(start, min(start + BATCH, len(clips.sounds))))
        sounds, lengths, *_ = batch_of([clips.row(index) for index in chosen])
        with torch.no_grad(), torch.autocast(device, torch.bfloat16, enabled=device == "cuda"):
            views = model.encode(ear.mel(sounds.to(device), lengths.to(device)))
        for name, changes, strength in ways:
            model.changes, model.strength = changes, strength
            for label, prompt in zip(("plain", "list"), clips.tokens[start]["prompts"], strict=False):
                found = heard(model, views, prompt, barred)
                out.setdefault(f"{name} {strength:g} {label}", []).extend(found)
    given.out.write_text(json.dumps(out))
    print(len(clips.sounds), "clips,", len(out), "ways,", f"{time.monotonic() - began:.0f} s")


if __name__ == "__main__":
    main()
