"""The door of the local page: who may come in, from where, and with how much."""

from __future__ import annotations

import secrets
from collections.abc import Awaitable, Callable, MutableMapping
from http.cookies import CookieError, SimpleCookie
from typing import Any
from urllib.parse import parse_qs

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

MOST_BYTES = 64 * 1024  # of one answer
OPENING = "/open"
HEADERS = {
    "content-security-policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; media-src 'self'; "
        "form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
    ),
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",  # with no-referrer a browser sends its own forms with the origin "null"
    "cache-control": "no-store",
    "cross-origin-resource-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
}


class Door:
    """Lets in whoever brings the token once, then whoever brings the cookie given for it; nobody else.

    Checked in this order: Host (a page of another name that points here), Origin of what changes something (another
    page in the same browser), token or cookie (another user of the machine), size.
    """

    def __init__(self, app: App, *, port: int, token: str) -> None:
        self._app = app
        self._hosts = (f"127.0.0.1:{port}", f"localhost:{port}")
        self._cookie = f"dictate_review_{port}"  # ports share their cookies
        self._token: str | None = token
        self._pass = secrets.token_urlsafe(32)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """One request."""
        if scope["type"] == "lifespan":
            await self._app(scope, receive, send)
            return
        if scope["type"] != "http":
            return
        headers = {name.decode("latin-1").lower(): value.decode("latin-1") for name, value in scope["headers"]}
        refusal = self._refusal(scope, headers)
        if refusal is not None:
            await _answer(send, *refusal)
        elif scope["path"] == OPENING:
            await self._let_in(send)
        else:
            await self._app(scope, _Limited(receive), _with_headers(send))

    def _refusal(self, scope: Scope, headers: dict[str, str]) -> tuple[int, str] | None:
        if headers.get("host") not in self._hosts:
            return 421, "This address answers only as 127.0.0.1."
        origin = headers.get("origin")
        own = {f"http://{host}" for host in self._hosts}
        if origin is not None and origin not in own:
            return 403, "Another page may not speak to this one."
        if scope["method"] not in ("GET", "HEAD") and origin is None:
            return 403, "Changes are taken from this page only."
        if scope["path"] == OPENING:
            given = parse_qs(scope["query_string"].decode("latin-1")).get("token", [""])[0]
            if self._token is None or not secrets.compare_digest(given.encode(), self._token.encode()):
                return 403, "This address was used already, or is not whole. Go on in the open window, or start anew."
        elif not self._knows(headers.get("cookie", "")):
            return 403, "Open the address that `dictate review` printed."
        if not headers.get("content-length", "0").isdigit() or int(headers.get("content-length", "0")) > MOST_BYTES:
            return 413, "More than one answer holds."
        return None

    def _knows(self, cookies: str) -> bool:
        try:
            given = SimpleCookie(cookies).get(self._cookie)
        except CookieError:
            return False
        return given is not None and secrets.compare_digest(given.value.encode(), self._pass.encode())

    async def _let_in(self, send: Send) -> None:
        """The token is used up; the cookie stays in this browser until it is closed."""
        self._token = None
        cookie = f"{self._cookie}={self._pass}; Path=/; HttpOnly; SameSite=Strict"
        headers = [(b"location", b"/"), (b"set-cookie", cookie.encode()), *_header_list()]
        await send({"type": "http.response.start", "status": 303, "headers": headers})
        await send({"type": "http.response.body", "body": b""})


class TooMuch(Exception):
    """The body is longer than one answer can be."""


class _Limited:
    """Stops reading a body that is longer than announced or allowed."""

    def __init__(self, receive: Receive) -> None:
        self._receive, self._bytes = receive, 0

    async def __call__(self) -> Message:
        message = await self._receive()
        self._bytes += len(message.get("body", b""))
        if self._bytes > MOST_BYTES:
            raise TooMuch
        return message


def _header_list() -> list[tuple[bytes, bytes]]:
    return [(name.encode(), value.encode()) for name, value in HEADERS.items()]


def _with_headers(send: Send) -> Send:
    async def sending(message: Message) -> None:
        if message["type"] == "http.response.start":
            message = {**message, "headers": [*message.get("headers", []), *_header_list()]}
        await send(message)

    return sending


async def _answer(send: Send, status: int, text: str) -> None:
    headers = [(b"content-type", b"text/plain; charset=utf-8"), (b"connection", b"close"), *_header_list()]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": text.encode()})
