"""Numbers that sound alike: fifteen and fifty, one eighteen and one eighty, one oh eight."""

from __future__ import annotations

MOST = 4
_UNITS = {"5": "9", "9": "5", "2": "3", "3": "2", "1": "9", "4": "5", "6": "8", "8": "6", "7": "1", "0": "4"}


def number_rivals(written: str) -> tuple[str, ...]:
    """What a number of two or more digits is mistaken for, most likely first, at most four."""
    whole, _, decimals = written.partition(".")
    if decimals:
        return tuple(f"{whole}.{other}" for other in (_UNITS[decimals[-1]],) if len(decimals) == 1)
    if len(whole) == 2:
        return tuple(dict.fromkeys(map(str, _below_hundred(int(whole)))))[:MOST]
    if len(whole) == 3:
        return tuple(dict.fromkeys(_above_hundred(whole)))[:MOST]
    return ()


def _below_hundred(number: int) -> list[int]:
    """A unit that was written was heard: what drops it is no rival. A round number may be a teen."""
    tens, unit = divmod(number, 10)
    near = 10 * tens + int(_UNITS[str(unit)])
    if tens == 1 and unit >= 3:
        return [10 * unit, near]
    if unit == 0:
        return [10 + tens, *([number - 10] if tens > 2 else []), number + 10] if tens >= 3 else [12, number + 2]
    return [near, *([number + 10] if tens < 9 else []), *([number - 10] if tens > 2 else [])]


def _above_hundred(whole: str) -> list[str]:
    hundreds, tens, unit = whole[0], whole[1], whole[2]
    rest = int(whole[1:])
    if tens == "0":  # one oh eight: one eighteen, one eighty; one hundred and six: one sixteen
        return [f"{hundreds}1{unit}", f"{hundreds}{unit}0", f"{hundreds}0{_UNITS[unit]}"] if rest else [f"{hundreds}10"]
    others = [f"{hundreds}{other:02d}" for other in _below_hundred(rest) if other < 100]
    if unit == "0":  # "one forty two over": the two and the four are easily lost
        others = [others[0], f"{hundreds}{rest + 2:02d}", f"{hundreds}{rest + 4:02d}"]
    if tens == "1":  # one eighteen: one eighty, one oh eight, one nineteen
        others += [f"{hundreds}0{unit}", f"{hundreds}{min(rest + 1, 99)}"]
    return others
