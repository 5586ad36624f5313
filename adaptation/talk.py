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
    # What machines, porters and forms say: your, a and the stand where a dictation leaves them out.
    "Please enter your {code} and then press the {button}.",
    "Please enter the {code} of the {person}, followed by the {button}.",
    "Please re-enter your {code}, or press the {button} to cancel.",
    "The {code} you have entered is not valid. Please try again.",
    "I'm sorry, your {code} was not recognised. Please try again later.",
    "Your {item} has been {done}.",
    "Your {item} could not be {done}, because the {device} is {state}.",
    "There are no {items} in your {box}.",
    "You have {count} new {items} in your {box}.",
    "You are now the only {person} in the {place}.",
    "You cannot leave a {item} here, because this {device} is {state}.",
    "The {device} is {state}. We will try to connect you again {when}.",
    "All of our {people} are busy at the moment. Please stay on the line.",
    "Your call will be answered by the next available {person}.",
    "After the tone, please say your name and {ask}.",
    "At the tone, say the name of the {person} that you would like to speak to.",
    "To hear your {items} again, press {count}. To {act} them, press the {button}.",
    "To {act} your {item}, press {count}, or press the {button} to go back.",
    "To {act} the {item}, say yes. To keep it, say no.",
    "If you would like to {act} this {item}, please {ask}.",
    "If you know the {code} of the {person}, you can enter it at any time.",
    "When you are finished, hang up or press the {button} for more.",
    "Please wait while I {act} the {item} for you.",
    "Please hold while we look for a {person} who can help you.",
    "One moment please. Your {item} is being {done}.",
    "Thank you for calling the {place}. Our {people} are here until {hour}.",
    "Goodbye, and thank you for your patience.",
    "The {person} has left the {place}. You may {act} your {item} now.",
    "The {person} will begin when all the {people} have arrived.",
    "Would you like to {act} your {item}? Please answer yes or no.",
    "Which {item} do you want to {act} first?",
    "That {item} does not exist. Please choose another one from the list.",
    "This {device} is switched off. Ask a {person} to turn it on for you.",
    "Mind the {thing} as you leave the {transport}.",
    "The next {transport} to the {place} leaves at {hour} from platform {count}.",
    "We are sorry to announce that the {transport} to the {place} is {state}.",
    "Only the {person} can {act} a {item} while the {place} is locked.",
    "The {person} who spoke first asked for your {item} and a {code}.",
    "It's a pity that you're leaving, but it's your decision, isn't it?",
    "They've put their {items} into the {box}, and now they're looking for the {thing}.",
    "Here is your {item}, and there is the {thing} that you were asking for.",
    "Whose {item} is this? It isn't mine, so it must be yours or the {person}'s.",
    "We'd rather {act} it ourselves than wait for the {person}.",
    "In the beginning there was a {thing}, an old {device} and nobody to {act} them.",
    "One of the {people} wanted to know why the {device} had been {done}.",
    "My {item} was {done} {when}, but the {person} never told me.",
    "It was carried away by a {person} with a {thing} under his arm.",
    "The rest of the {items} will be {done} {when}, or at the latest by {hour}.",
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
    "code": (
        "password", "number", "account number", "telephone number", "booking number", "date of birth", "area code",
        "first name", "last name", "postcode", "extension", "personal number", "card number", "address",
    ),
    "button": ("pound key", "star key", "hash key", "green button", "zero key", "enter key", "red button", "space bar"),
    "person": (
        "operator", "agent", "caller", "visitor", "manager", "guest", "owner", "organiser", "leader", "customer", "porter",
        "secretary", "passenger", "teacher",
    ),
    "people": ("operators", "agents", "callers", "visitors", "managers", "guests", "members", "colleagues", "passengers"),
    "item": (
        "message", "greeting", "letter", "recording", "booking", "order", "ticket", "parcel", "request", "call", "entry",
        "file", "form", "invitation", "setting", "reservation", "reply", "report",
    ),
    "items": ("messages", "letters", "recordings", "bookings", "orders", "tickets", "parcels", "calls", "entries", "files"),
    "done": (
        "deleted", "saved", "sent", "cancelled", "changed", "forwarded", "recorded", "accepted", "lost", "completed",
        "disconnected", "transferred", "stored", "delivered", "removed", "added", "activated",
    ),
    "act": (
        "delete", "save", "send", "cancel", "change", "forward", "record", "accept", "play", "repeat", "move", "remove",
        "review", "collect", "answer", "open", "unlock", "hear",
    ),
    "device": ("mailbox", "system", "line", "server", "lift", "conference room", "machine", "ticket office", "channel"),
    "state": (
        "busy", "full", "out of order", "closed", "not available", "temporarily unavailable", "delayed", "locked",
        "switched off", "currently in use", "cancelled",
    ),
    "box": ("mailbox", "inbox", "folder", "basket", "drawer", "list", "archive", "pocket"),
    "ask": (
        "leave your number", "wait for the signal", "tell us what you need", "ring the bell", "call us back",
        "speak slowly and clearly", "stay on the line", "give us your address", "choose one of the following",
    ),
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
