"""Ordinary talk without findings: what is said around an examination, and example sentences of a dictionary."""

from __future__ import annotations

import random
import re
from pathlib import Path

# Sentences with holes; every hole is filled from its own list. Written for this folder.
SENTENCES = (
    "{hello}, my name is {name}, and I will be looking after you {when}.",
    "{hello}. Please take a seat by the {place}.",
    "Did you come by {transport} or did someone bring you?",
    "How long have you been waiting in the {place}?",
    "I am going to ask you a few questions about your {matter} and then {next}.",
    "Could you tell me again what happened {when}?",
    "She says that her {relative} noticed it first, {when}.",
    "He used to work as a {job}, and now he spends his time with {pastime}.",
    "The {relative} will bring a list of the tablets {when}.",
    "Please {command}.",
    "Now {command}, and tell me when you are ready.",
    "Very good. {command}, please.",
    "Thank you, you can {rest} now.",
    "Do not worry about the {thing}, we will find another one.",
    "The {thing} in this room is broken, so we had to borrow one from the {place}.",
    "Can somebody close the {thing}? It is rather {weather} in here.",
    "It was {weather} {when}, and the {transport} was late.",
    "We talked about {pastime} while the {thing} was being fetched.",
    "I will dictate the rest after {meal}.",
    "Next we need to write to the {job} about {matter}.",
    "Please send a copy of this letter to the {relative} as well.",
    "An appointment was made for {when}.",
    "The results should be here by {when}.",
    "I explained what we had found and answered the questions about {matter}.",
    "They live with their {relative} in a flat above the {place}.",
    "There are {count} steps up to the {place}, and no lift.",
    "She drinks {count} cups of coffee a day and has never smoked.",
    "He takes {count} tablets in the morning and one at night.",
    "My {relative} rang to ask whether {pastime} would be a good idea.",
    "The meeting in the {place} starts at {hour}.",
    "Where did I put the {thing}? It was on the {place} a minute ago.",
    "Just a moment, the telephone is ringing.",
    "Sorry, I was interrupted. Where were we?",
    "Is the recording still running? Good, then let us go on.",
    "That is all for {when}, thank you.",
    "I think {hour} would suit us better than {hour2}.",
    "You may get dressed again, and then we shall talk about {matter}.",
    "The journey took {count} hours because of the {weather} weather.",
    "I would like to know more about {matter} before we decide.",
    "He was told about {matter} by a {job} many years ago.",
)
FILLS: dict[str, tuple[str, ...]] = {
    "hello": ("Good morning", "Good afternoon", "Hello", "Welcome back", "Good evening"),
    "name": ("Doctor Field", "Mary", "Doctor Moss", "Peter", "Doctor Lane"),
    "when": ("today", "yesterday", "this week", "last summer", "this Monday", "tomorrow", "two weeks ago", "next Friday"),
    "place": ("window", "waiting room", "corridor", "bakery", "office", "library", "desk", "kitchen", "station"),
    "transport": ("bus", "train", "car", "taxi", "bicycle", "tram"),
    "matter": ("your sleep", "the insurance", "your work", "the holidays", "the scan", "driving", "the new tablets"),
    "next": ("we will have a look at you", "we will see what to do", "you can ask me anything", "we will make a plan"),
    "relative": ("daughter", "husband", "brother", "wife", "neighbour", "son", "sister", "family doctor"),
    "job": ("teacher", "carpenter", "lawyer", "gardener", "nurse", "driver", "baker", "accountant", "dentist"),
    "pastime": ("gardening", "music", "football", "fishing", "the grandchildren", "painting", "cooking", "chess"),
    "command": (
        "close your eyes", "sit on the edge of the bed", "take a deep breath", "look at my nose", "follow my finger",
        "push against my hand", "show me your teeth", "stand up for me", "walk to the door and back", "open your mouth",
        "roll up your sleeve", "hold your arms out in front of you", "say after me what I say", "relax your leg",
    ),
    "rest": ("sit down", "lie back", "put your shoes on", "get dressed", "relax", "have a drink of water"),
    "thing": ("lamp", "window", "hammer", "tuning fork", "printer", "door", "pen", "key", "chair", "computer"),
    "weather": ("cold", "hot", "windy", "rainy", "noisy", "stuffy", "foggy"),
    "meal": ("lunch", "the break", "coffee", "the ward round", "supper"),
    "count": ("two", "three", "four", "five", "six", "eight", "ten", "twelve"),
    "hour": ("nine o'clock", "half past ten", "a quarter to three", "noon", "four in the afternoon"),
    "hour2": ("one o'clock", "half past eight", "the evening", "next week"),
}  # fmt: skip
DATA = ("data.noun", "data.verb", "data.adj", "data.adv")
SHORTEST, LONGEST = 4, 22  # words


def talk(chance: random.Random) -> str:
    """One sentence that is said around an examination."""
    sentence = chance.choice(SENTENCES)
    filled = re.sub(r"\{(\w+)\}", lambda hole: chance.choice(FILLS[hole[1]]), sentence)
    return filled[0].upper() + filled[1:]


def dictionary_sentences(folder: Path, *, held_out: bool = False) -> list[str]:
    """The example sentences of WordNet 3.0 (its own permissive licence; Debian's wordnet-base), as spoken text.

    Every tenth is held out of what is learnt, and is all that `held_out` gives.
    """
    found: dict[str, None] = {}
    for name in DATA:
        for line in (folder / name).read_text(encoding="ascii").splitlines():
            for quote in re.findall(r'"([^"]+)"', line.partition("|")[2]):
                if (sentence := plain(quote)) is not None:
                    found[sentence] = None
    return [each for rank, each in enumerate(found) if (rank % 10 == 0) == held_out]


def plain(quote: str) -> str | None:
    """The sentence with a capital and a stop; None where it is not plain prose of a usable length."""
    text = " ".join(quote.split()).rstrip(" ,;:-")
    if not re.fullmatch(r"[A-Za-z][A-Za-z ,;'?!.-]*", text) or "--" in text or "..." in text:
        return None
    if not SHORTEST <= len(text.split()) <= LONGEST or re.search(r"\b[A-Z]{2,}\b", text):
        return None
    return text[0].upper() + text[1:] + ("" if text[-1] in ".?!" else ".")
