"""The door: who may come in, and who may not."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import httpx
import pytest
from starlette.testclient import TestClient

from dictate.review.door import MOST_BYTES, Door
from dictate.review.server import door_to
from dictate.review.sitting import Sitting

PORT, TOKEN = 8765, "the-token"
HERE = f"http://127.0.0.1:{PORT}"


@pytest.fixture
def door(sitting_of: Callable[..., Sitting]) -> Door:
    """The page of a small examination behind its door."""
    return door_to(sitting_of("Biceps reflex two plus."), port=PORT, token=TOKEN)


@pytest.fixture
def outside(door: Door) -> Iterator[TestClient]:
    """A browser without the cookie."""
    with TestClient(door, base_url=HERE, follow_redirects=False) as client:
        yield client


@pytest.fixture
def inside(outside: TestClient) -> TestClient:
    """A browser that opened the address."""
    assert outside.get("/open", params={"token": TOKEN}).status_code == 303
    return outside


def test_token_opens_once(outside: TestClient) -> None:
    """It is exchanged for a cookie that scripts cannot read and other sites do not send."""
    reply = outside.get("/open", params={"token": TOKEN})
    assert (reply.status_code, reply.headers["location"]) == (303, "/")
    cookie = reply.headers["set-cookie"]
    assert {"HttpOnly", "SameSite=Strict", "Path=/"} <= set(cookie.split("; "))
    assert TOKEN not in cookie
    assert outside.get("/").status_code == 200
    assert outside.get("/open", params={"token": TOKEN}).status_code == 403


@pytest.mark.parametrize("token", ["", "wrong", TOKEN[:-1], TOKEN + "x", "thé"])
def test_wrong_token_stays_outside(outside: TestClient, token: str) -> None:
    """And uses nothing up."""
    assert outside.get("/open", params={"token": token}).status_code == 403
    assert "set-cookie" not in outside.get("/open", params={"token": token}).headers
    assert outside.get("/open", params={"token": TOKEN}).status_code == 303


PATHS = ["/", "/note", "/note.txt", "/finding/0", "/clip?source=0&start=0&end=1", "/read-so", "/page/review.js", "/x"]


@pytest.mark.parametrize("path", PATHS)
def test_nothing_is_shown_without_the_cookie(outside: TestClient, path: str) -> None:
    """Neither to another user of the machine nor to a guessed cookie."""
    for cookie in ("", f"dictate_review_{PORT}=guess", "dictate_review_1=x", "=;;;"):
        reply = outside.get(path, headers={"cookie": cookie})
        assert reply.status_code == 403
        assert "Biceps" not in reply.text


@pytest.mark.parametrize(
    "host", ["example.org", f"example.org:{PORT}", "127.0.0.1", f"127.0.0.1:{PORT + 1}", "[::1]", ""]
)
def test_other_host_is_refused(inside: TestClient, host: str) -> None:
    """A name of somebody else's that points here gets nothing, cookie or not."""
    assert inside.get("/", headers={"host": host}).status_code == 421


@pytest.mark.parametrize(
    "origin", ["http://example.org", "null", f"http://127.0.0.1:{PORT + 1}", f"https://127.0.0.1:{PORT}"]
)
def test_other_origin_is_refused(inside: TestClient, origin: str) -> None:
    """Another page in the same browser changes nothing and reads nothing."""
    assert inside.post("/undo", data={"revision": "0"}, headers={"origin": origin}).status_code == 403
    assert inside.get("/", headers={"origin": origin}).status_code == 403


def test_change_needs_an_origin(inside: TestClient) -> None:
    """A browser always sends it with a form."""
    assert inside.post("/decide", data={"revision": "0"}).status_code == 403


def test_headers_keep_scripts_and_frames_out(inside: TestClient) -> None:
    """No inline script, nothing from elsewhere, no frame, nothing kept."""
    for path in ("/", "/page/review.css", "/nothing-here"):
        headers = inside.get(path).headers
        policy = headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "script-src 'self'" in policy
        assert "frame-ancestors 'none'" in policy
        assert "unsafe" not in policy
        assert "http" not in policy
        assert headers["cache-control"] == "no-store"
        assert headers["x-content-type-options"] == "nosniff"


def test_announced_body_that_is_too_long_is_not_read(inside: TestClient) -> None:
    """100 MB are refused by their length alone."""
    body = (b"x" * 1024 for _ in range(100))
    length = str(100 * 1024 * 1024)
    reply = inside.post("/decide", content=body, headers={"origin": HERE, "content-length": length})
    assert reply.status_code == 413


def test_body_longer_than_announced_is_cut_off(door: Door, inside: TestClient) -> None:
    """Sent in pieces without a length: reading stops at the limit."""
    pieces = [b"answer=" + b"x" * MOST_BYTES, b"x" * MOST_BYTES]
    headers = {"origin": HERE, "content-type": "application/x-www-form-urlencoded"}
    reply: httpx.Response = inside.post("/decide", content=iter(pieces), headers=headers)
    assert reply.status_code == 413


def test_nonsense_length_is_refused(inside: TestClient) -> None:
    """Neither negative nor words."""
    for length in ("-1", "many"):
        reply = inside.post("/decide", content=b"x", headers={"origin": HERE, "content-length": length})
        assert reply.status_code == 413
