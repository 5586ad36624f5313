"""The local page: one question at a time, the whole note, clips; loopback only, one-time token."""

from __future__ import annotations

import functools
import secrets
import socket
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

from dictate.errors import DictateError, MachineError
from dictate.review.door import OPENING, App, Door
from dictate.review.pages import Pages
from dictate.review.sitting import Sitting

if TYPE_CHECKING:
    from jinja2 import Environment

HOST = "127.0.0.1"
INSTALL = "pip install 'dictate[web]'"
PAGE = Path(__file__).parent / "page"


def serve(
    sitting: Sitting, *, port: int = 0, announce: Callable[[str], None], stop: Callable[[Any], None] | None = None
) -> None:
    """Serve the page until it is stopped. port: 0 picks a free one. announce: gets the address to open.

    stop: gets the server when it is about to run, so that a test can end it. Raises MachineError.
    """
    try:
        import uvicorn
    except ImportError as fault:
        raise MachineError(f"the page needs uvicorn: {INSTALL}, or use --terminal") from fault
    listener = _listener(port)
    port, token = listener.getsockname()[1], secrets.token_urlsafe(24)
    config = uvicorn.Config(
        door_to(sitting, port=port, token=token), log_level="critical", access_log=False, server_header=False,
        lifespan="off", ws="none", timeout_graceful_shutdown=1,
    )  # fmt: skip
    server = uvicorn.Server(config)
    if stop is not None:
        stop(server)
    announce(f"http://{HOST}:{port}{OPENING}?token={token}")
    server.run(sockets=[listener])


def _listener(port: int) -> socket.socket:
    listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    try:
        listener.bind((HOST, port))
        listener.listen()
    except OSError as fault:
        listener.close()
        raise MachineError(f"--port {port}: cannot be used: {(fault.strerror or str(fault)).lower()}") from fault
    return listener


@functools.cache  # compiled once, however many pages a process serves
def _templates() -> Environment:
    from jinja2 import Environment, FileSystemLoader

    return Environment(loader=FileSystemLoader(PAGE), autoescape=True, trim_blocks=True, lstrip_blocks=True)


def door_to(sitting: Sitting, *, port: int, token: str) -> Door:
    """The page behind its door."""
    try:
        import jinja2  # noqa: F401
        from starlette.applications import Starlette
        from starlette.routing import Mount, Route
        from starlette.staticfiles import StaticFiles
    except ImportError as fault:
        raise MachineError(f"the page needs starlette and jinja2: {INSTALL}, or use --terminal") from fault
    page = Pages(sitting, _templates())
    routes = [
        Route("/", page.ask),
        Route("/note", page.note),
        Route("/note.txt", page.text),
        Route("/finding/{at}", page.finding),
        Route("/clip", page.clip),
        Route("/read-so", page.read_so),
        Route("/decide", page.decide, methods=["POST"]),
        Route("/check", page.check, methods=["POST"]),
        Route("/undo", page.undo, methods=["POST"]),
        Route("/learn", page.learn, methods=["POST"]),
        Route("/forget", page.forget, methods=["POST"]),
        Route("/again", page.again, methods=["POST"]),
        Route("/sign", page.sign, methods=["POST"]),
        Route("/countersign", page.countersign, methods=["POST"]),
        Route("/amend", page.amend, methods=["POST"]),
        Route("/withdraw", page.withdraw, methods=["POST"]),
        Mount("/page", StaticFiles(directory=PAGE / "static")),
    ]
    app: App = Starlette(routes=routes, exception_handlers={DictateError: page.fault})
    return Door(app, port=port, token=token)
