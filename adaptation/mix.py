"""Two adapters as one: each change times its share, ranks side by side.

    python adaptation/mix.py FIRST.npz SHARE SECOND.npz SHARE OUT.npz

The shares are strengths; the program multiplies what it finds by `STRENGTH` of `dictate/hearing/trade.py`, so they are
divided by it here.
"""

from __future__ import annotations

import sys
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


def main() -> None:
    """Write the mixture."""
    first, one, second, two, out = sys.argv[1:]
    parts = [(dict(np.load(Path(path))), float(share)) for path, share in ((first, one), (second, two))]
    np.savez_compressed(out, **mixed(parts))


if __name__ == "__main__":
    main()
