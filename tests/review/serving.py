"""The page of a sitting, served beside the test: the server is real, the process is the test's own."""

from __future__ import annotations

import contextlib
import threading
from collections.abc import Iterator
from typing import Any

from dictate.review.server import serve
from dictate.review.sitting import Sitting


@contextlib.contextmanager
def serving(sitting: Sitting) -> Iterator[str]:
    """The address to open, once."""
    said: list[str] = []
    ready = threading.Event()
    servers: list[Any] = []

    def announce(address: str) -> None:
        said.append(address)
        ready.set()

    thread = threading.Thread(target=lambda: serve(sitting, announce=announce, stop=servers.append), daemon=True)
    thread.start()
    assert ready.wait(30)
    try:
        yield said[0]
    finally:
        servers[0].should_exit = True
        thread.join(30)
    assert not thread.is_alive()
