"""Faults of grammar files that only all files together show: names that point nowhere, terms of two items."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

import yaml

Part = tuple[Path, dict[str, Any], str]  # a file, what it holds, its text
Place = tuple[int | str, ...]


def name_faults(parts: list[Part], extra: Path) -> Iterator[str]:
    """Names in the files of a user's folder that point nowhere, and terms that name another item already."""
    items = {name for _, content, _ in parts for name in _dict(content, "items")}
    scales = {name for _, content, _ in parts for name in _dict(content, "scales")}
    homes = {name: path.name for path, content, _ in parts if path.parent != extra for name in _dict(content, "items")}
    owners: dict[str, str] = {}
    for path, content, _ in parts:
        if path.parent != extra:
            owners.update((t.lower(), name) for name, item in _items(content) for t in _texts(item, "terms"))
    for path, content, text in parts:
        if path.parent != extra:
            continue
        for name, item in _items(content):
            if homes.get(name, path.name) != path.name:
                yield f"{path}:{line_of(text, ('items', name))}: {name} belongs to {homes[name]}: give it there"
            for place, what, named, known in _named(name, item, items, scales):
                if named not in known:
                    yield f"{path}:{line_of(text, place)}: {unknown(what, named, known)}"
            if item.get("terms") == []:
                yield f"{path}:{line_of(text, ('items', name, 'terms'))}: {name}: terms holds no phrase"
            for at, term in enumerate(_texts(item, "terms")):
                owner = owners.setdefault(term.lower(), name)
                if owner != name:
                    line = line_of(text, ("items", name, "terms", at))
                    yield f'{path}:{line}: "{term}" names {owner} already: one term, one item'
        for name, scope in _dict(content, "scopes").items():
            for at, wanted in enumerate(_list(scope, "expects")):
                if isinstance(wanted, dict) and wanted.get("item") not in items:
                    line = line_of(text, ("scopes", name, "expects", at, "item"))
                    yield f"{path}:{line}: {unknown('item', str(wanted.get('item')), items)}"


def _named(
    name: str, item: dict[str, Any], items: set[str], scales: set[str]
) -> Iterator[tuple[Place, str, str, set[str]]]:
    """(place, kind of thing, name, names known) of whatever an item names."""
    here: Place = ("items", name)
    if isinstance(item.get("scale"), str):
        yield (*here, "scale"), "scale", item["scale"], scales
    for at, other in enumerate(_texts(item, "covers")):
        yield (*here, "covers", at), "item", other, items
    for site, other in _dict(item, "site_items").items():
        yield (*here, "site_items", site), "item", str(other), items
    for at, example in enumerate(_list(item, "examples")):
        for place, expected in enumerate(_list(example, "find")):
            if isinstance(expected, dict) and isinstance(expected.get("item"), str):
                yield (*here, "examples", at, "find", place, "item"), "item", expected["item"], items


def line_of(text: str, loc: Place) -> int:
    """Line of the deepest part of `loc` that stands in the file."""
    node = yaml.compose(text, Loader=yaml.SafeLoader)
    line = 1
    for part in loc:
        if isinstance(node, yaml.MappingNode):
            found = next(((k, v) for k, v in node.value if k.value == str(part)), None)
            if found is None:
                break
            line, node = found[0].start_mark.line + 1, found[1]
        elif isinstance(node, yaml.SequenceNode) and isinstance(part, int) and part < len(node.value):
            node = node.value[part]
            line = node.start_mark.line + 1
        else:
            break
    return line


def unknown(what: str, name: str, known: Iterable[str]) -> str:
    """That a name is not known, and the nearest that is."""
    near = difflib.get_close_matches(name, list(known), 1)
    return f'{what} "{name}" is not known' + (f": did you mean {near[0]}?" if near else "")


def _dict(content: Any, key: str) -> dict[str, Any]:
    found = content.get(key) if isinstance(content, dict) else None
    return found if isinstance(found, dict) else {}


def _list(content: Any, key: str) -> list[Any]:
    found = content.get(key) if isinstance(content, dict) else None
    return found if isinstance(found, list) else []


def _texts(content: Any, key: str) -> list[str]:
    return [text for text in _list(content, key) if isinstance(text, str)]


def _items(content: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    return ((name, item) for name, item in _dict(content, "items").items() if isinstance(item, dict))
