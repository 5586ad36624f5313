"""odd-sound: a recording that was hard to hear, and why."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import queries as say
from dictate.catalogue.note import LANGUAGES
from dictate.checks.registry import Doubt, check
from dictate.checks.wording import capital
from dictate.grammar import Grammar
from dictate.model import Examination, Sound

MOSTLY_DB = 6.0  # a quarter of the power: in noise it is under a hundredth, in music nearly all


@check("odd-sound", severity="look")
def odd_sound(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A recording that was hard to hear, or (to be settled) one in another language.

    Why: in noise, music or cut-off peaks more words are wrong than usual, and not all of them are noticed; a second
    talker's words may be read as findings; of another language English words are made that nobody said.
    Example: speech only 8 dB above the noise asks for a look at the numbers.
    """
    limits = {name: limit.at for name, limit in grammar.doubt.limits.items()}
    for number, source in enumerate(exam.transcript.sources, 1):
        faults = [] if source.sound is None else list(_faults(source.sound, limits))
        several = len(exam.transcript.sources) > 1
        which = say.RECORDING_NUMBER.format(number=number) if several else say.THE_RECORDING
        if source.sound is not None and source.sound.language != "en":
            language = LANGUAGES.get(source.sound.language, f'"{source.sound.language}"')
            message = capital(say.OTHER_LANGUAGE.format(recording=which, language=language))
            yield Doubt(None, message, ("read",), severity="must")
        if faults:
            message = capital(say.SOUND_OF.format(recording=which, faults="; ".join(faults)))
            yield Doubt(None, message, ("read",))


def _faults(sound: Sound, limits: dict[str, float]) -> Iterator[str]:
    """What is wrong with it, in words."""
    if "noise" in limits and sound.noise_db is not None and sound.level_db - sound.noise_db < limits["noise"]:
        yield say.SOUND_NOISY.format(level=sound.level_db - sound.noise_db)
    if "level" in limits and sound.level_db < limits["level"]:
        yield say.SOUND_LOW.format(level=-sound.level_db)
    if "clipped" in limits and sound.clipped > limits["clipped"]:
        yield say.SOUND_CLIPPED.format(share=sound.clipped)
    if "tones" in limits and _plays(sound, limits["tones"]):
        yield say.SOUND_TONES.format(below=sound.level_db - (sound.tones_db or 0.0))
    if "voices" in limits and sound.voices_apart > limits["voices"]:
        yield say.SOUND_VOICES.format(apart=sound.voices_apart)
    if sound.other_channel:
        yield say.SOUND_CHANNELS


def _plays(sound: Sound, most_below: float) -> bool:
    """Whether tones are loud enough, and are most of what is heard in the pauses."""
    if sound.tones_db is None or sound.noise_db is None:
        return False
    return sound.level_db - sound.tones_db < most_below and sound.noise_db - sound.tones_db < MOSTLY_DB
