"""grammars/ → Grammar: strict, all faults at once with file and line; SHA-256."""

from __future__ import annotations

import difflib
import hashlib
import json
from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml
from pydantic import BaseModel, ValidationError

from dictate.errors import GrammarError
from dictate.grammar.faults import Part, line_of, name_faults, unknown
from dictate.grammar.schema import (
    CommonFile,
    ComponentFile,
    ControlsFile,
    DoubtFile,
    Grammar,
    ScalesFile,
    ScopesFile,
)
from dictate.model import Component
from dictate.settings import packaged_grammar_folder

FILES: Mapping[str, type[BaseModel]] = {
    **{f"{component.value}.yaml": ComponentFile for component in Component},
    "common.yaml": CommonFile,
    "scales.yaml": ScalesFile,
    "scopes.yaml": ScopesFile,
    "doubt.yaml": DoubtFile,
    "controls.yaml": ControlsFile,
}
MAY_LACK = {"doubt.yaml", "controls.yaml"}  # only recordings and live dictation need them


_TOLD = {
    "extra_forbidden": "no such key",
    "dict_type": "must hold keys and values",
    "model_type": "must hold keys and values",
    "tuple_type": "must be a list",
    "list_type": "must be a list",
}
LEARNT = "learnt"  # folder inside the user's, written by the program

_Base: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)  # libyaml's is ten times as fast


class _Strict(_Base):  # type: ignore[misc]
    """A loader that notes every key given twice."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.twice: list[tuple[int, str]] = []  # line and key


def _mapping(loader: _Strict, node: yaml.MappingNode) -> dict[Any, Any]:
    seen: dict[Any, Any] = {}
    for key_node, value_node in node.value:
        key = loader.construct_object(key_node, deep=True)
        if key in seen:
            loader.twice.append((key_node.start_mark.line + 1, str(key)))
        seen[key] = loader.construct_object(value_node, deep=True)
    return seen


_Strict.add_constructor(yaml.resolver.BaseResolver.DEFAULT_MAPPING_TAG, _mapping)


def load_grammar(extra: Path | None = None, *, folder: Path | None = None) -> Grammar:
    """The packaged grammar, extended or overridden by the files of `extra`.

    Lists of an item given in both are joined, other fields replaced. Raises GrammarError with every fault.
    """
    places = (folder or packaged_grammar_folder(), *_own_places(extra))
    return _load(places, tuple(map(_stamp, places)))


def _own_places(extra: Path | None) -> tuple[Path, ...]:
    """The user's folder, and in it the phrases that were learnt at review."""
    if extra is None:
        return ()
    return (extra, extra / LEARNT) if (extra / LEARNT).is_dir() else (extra,)


def _stamp(place: Path) -> tuple[tuple[str, int, int], ...]:
    """Names, times and sizes of a folder's files: when they change, the grammar is loaded anew."""
    if not place.is_dir():
        return ()
    return tuple((path.name, (at := path.stat()).st_mtime_ns, at.st_size) for path in sorted(place.glob("*.y*ml")))


@lru_cache(maxsize=8)
def _load(places: tuple[Path, ...], stamps: tuple[object, ...]) -> Grammar:
    folder, *own = places
    faults: list[str] = []
    raw: dict[str, Any] = {}
    parts: list[Part] = []
    digest = hashlib.sha256()
    for place in places:
        for name, content, text in _read_folder(place, faults, required=place == folder):
            _check_alone(place / name, name, content, text, faults, partial=place != folder)
            raw[name] = _merge(raw[name], content) if name in raw else content
            digest.update(name.encode() + b"\0" + text.encode() + b"\0")
            if isinstance(content, dict):
                parts.append((place / name, content, text))
    for extra in own:
        faults.extend(name_faults(parts, extra))
        faults.extend(_unfinished(parts, extra, raw))
    if faults:
        raise GrammarError(tuple(faults))
    grammar = _assemble(raw, digest.hexdigest())
    faults.extend(_cross_faults(grammar, folder, own[0] if own else None))
    if faults:
        raise GrammarError(tuple(faults))
    return grammar


def _read_folder(place: Path, faults: list[str], *, required: bool) -> Iterator[tuple[str, Any, str]]:
    if not place.is_dir():
        faults.append(f"{place}: no such folder of grammar files: check the name")
        return
    known = set(FILES)
    for path in sorted(place.glob("*.y*ml")):
        if path.name not in known:
            near = difflib.get_close_matches(path.name, known, 1)
            faults.append(f"{path}:1: no such grammar file" + (f": did you mean {near[0]}?" if near else ""))
            continue
        try:
            text = path.read_text(encoding="utf-8")
            loader = _Strict(text)
            content = loader.get_single_data()
        except yaml.MarkedYAMLError as error:
            line = (error.problem_mark.line if error.problem_mark else 0) + 1
            faults.append(f"{path}:{line}: {error.problem or error}")
            continue
        except (OSError, UnicodeDecodeError) as error:
            faults.append(f"{path}:1: cannot be read: {error}")
            continue
        faults.extend(f"{path}:{line}: {key!r} is given twice" for line, key in loader.twice)
        yield path.name, content, text
    if required:
        faults.extend(
            f"{place}: {name} is missing" for name in sorted(known - MAY_LACK) if not (place / name).is_file()
        )


def _check_alone(path: Path, name: str, content: Any, text: str, faults: list[str], *, partial: bool) -> None:
    """Validate one file by itself; a user's file may hold only what it changes."""
    model = FILES[name]
    try:
        model.model_validate_json(json.dumps(content, default=str))
    except ValidationError as error:
        for one in error.errors():
            if partial and one["type"] in {"missing", "too_short"}:
                continue
            told = _TOLD.get(one["type"], "") or one["msg"].lower()
            if one["type"] == "string_type" and not isinstance(one["input"], list | dict | None):
                told = f"{json.dumps(one['input'])} is no text: put it in quotes"
            faults.append(f"{path}:{line_of(text, one['loc'])}: {_say(one['loc'])}{told}")


def _unfinished(parts: list[Part], extra: Path, raw: dict[str, Any]) -> Iterator[str]:
    """What an item of the user's still lacks when it is joined with the packaged one."""
    for path, _, text in parts:
        if path.parent != extra:
            continue
        try:
            FILES[path.name].model_validate_json(json.dumps(raw[path.name], default=str))
        except ValidationError as error:
            for one in error.errors():
                if one["type"] == "missing":
                    yield f"{path}:{line_of(text, one['loc'])}: {_say(one['loc'])}must be given for a new one"


def _say(loc: tuple[int | str, ...]) -> str:
    return ".".join(str(part) for part in loc) + ": " if loc else ""


def _merge(old: Any, new: Any) -> Any:
    """Dicts are merged, lists joined, anything else replaced."""
    if isinstance(old, dict) and isinstance(new, dict):
        return {**old, **{key: _merge(old[key], value) if key in old else value for key, value in new.items()}}
    if isinstance(old, list) and isinstance(new, list):
        return [*old, *(value for value in new if value not in old)]
    return new


def _assemble(raw: dict[str, Any], sha256: str) -> Grammar:
    def one(name: str) -> Any:
        return FILES[name].model_validate_json(json.dumps(raw[name]))

    return Grammar(
        components={component: one(f"{component.value}.yaml") for component in Component},
        common=one("common.yaml"),
        scales=one("scales.yaml").scales,
        scopes=one("scopes.yaml").scopes,
        controls=one("controls.yaml").controls if "controls.yaml" in raw else {},
        sha256=sha256,
        doubt=one("doubt.yaml") if "doubt.yaml" in raw else DoubtFile(),
    )


def _cross_faults(grammar: Grammar, folder: Path, extra: Path | None) -> Iterator[str]:
    """Names that point nowhere, items that stand twice."""
    items = grammar.items
    count = sum(len(part.items) for part in grammar.components.values())
    if count != len(items):
        seen: set[str] = set()
        for component, part in grammar.components.items():
            for name in part.items:
                if name in seen:
                    yield _fault(folder, extra, f"{component.value}.yaml", ("items", name), f"{name} is given twice")
                seen.add(name)
    for component, part in grammar.components.items():
        file = f"{component.value}.yaml"
        for name, item in part.items.items():
            place: tuple[int | str, ...] = ("items", name)
            if item.kind == "grade" and item.scale not in grammar.scales:
                yield _fault(folder, extra, file, (*place, "scale"), unknown("scale", item.scale, grammar.scales))
            for scale, named in item.named.items():
                for term in named.terms:
                    if term not in item.terms:
                        yield _fault(folder, extra, file, (*place, "named", scale), unknown("term", term, item.terms))
            for other in (*item.covers, *item.site_items.values()):
                if other not in items:
                    yield _fault(folder, extra, file, place, unknown("item", other, items))
            for example in item.examples:
                for expected in example.find:
                    if expected.item and expected.item not in items:
                        yield _fault(folder, extra, file, place, unknown("item", expected.item, items))
    for name, scope in grammar.scopes.items():
        for wanted in scope.expects:
            if wanted.item not in items:
                yield _fault(folder, extra, "scopes.yaml", ("scopes", name), unknown("item", wanted.item, items))


def _fault(folder: Path, extra: Path | None, file: str, loc: tuple[int | str, ...], message: str) -> str:
    """Name the file the fault stands in: the user's, when it has that place."""
    for place in filter(None, (extra, folder)):
        path = place / file
        if path.is_file():
            line = line_of(path.read_text(encoding="utf-8"), loc)
            if line > 1 or place == folder:
                return f"{path}:{line}: {message}"
    return f"{folder / file}:1: {message}"
