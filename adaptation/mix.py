"""Adapters as one: each change times its share, ranks side by side, or cut to the directions that matter most.

    python adaptation/mix.py OUT.npz FIRST.npz SHARE SECOND.npz SHARE ... [--rank 32]

The shares are strengths; the program multiplies what it finds by `STRENGTH` of `dictate/hearing/trade.py`, so they are
divided by it here.
"""

from __future__ import annotations

import argparse
from pathlib import Path

import numpy as np

from dictate.hearing.trade import STRENGTH

Changes = dict[str, "np.ndarray"]  # "matrix|A": rank x columns, "matrix|B": rows x rank


def mixed(parts: list[tuple[Changes, float]]) -> Changes:
    """One adapter whose changes are the sum of the parts' changes, each times its share."""
    names = sorted({key.rsplit("|", 1)[0] for changes, _ in parts for key in changes})
    result: Changes = {}
    for name in names:
        held = [(changes, share) for changes, share in parts if f"{name}|A" in changes]
        downs = [changes[f"{name}|A"].astype(np.float32) for changes, _ in held]
        ups = [changes[f"{name}|B"].astype(np.float32) * (share / STRENGTH) for changes, share in held]
        result[f"{name}|A"] = np.concatenate(downs, axis=0).astype(np.float16)
        result[f"{name}|B"] = np.concatenate(ups, axis=1).astype(np.float16)
    return result


def cut(changes: Changes, rank: int) -> Changes:
    """The adapter of that rank which is nearest to it, by the singular values of each change."""
    result: Changes = {}
    for name in sorted({key.rsplit("|", 1)[0] for key in changes}):
        left, upper = np.linalg.qr(changes[f"{name}|B"].astype(np.float32))
        right, lower = np.linalg.qr(changes[f"{name}|A"].astype(np.float32).T)
        turned, size, back = np.linalg.svd(upper @ lower.T)
        root = np.sqrt(size[:rank])
        result[f"{name}|A"] = (root[:, None] * (back[:rank] @ right.T)).astype(np.float16)
        result[f"{name}|B"] = ((left @ turned[:, :rank]) * root).astype(np.float16)
    return result


def main() -> None:
    """Write the mixture."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("out", type=Path)
    ask.add_argument("parts", nargs="+", help="adapter and share, again and again")
    ask.add_argument("--rank", type=int, help="cut to this rank")
    given = ask.parse_args()
    pairs = zip(given.parts[::2], given.parts[1::2], strict=True)
    whole = mixed([(dict(np.load(Path(path))), float(share)) for path, share in pairs])
    np.savez_compressed(given.out, **(cut(whole, given.rank) if given.rank else whole))


if __name__ == "__main__":
    main()
