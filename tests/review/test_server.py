"""The page as a running server: loopback only, one port, one address."""

from __future__ import annotations

import socket
from collections.abc import Callable, Iterator

import httpx
import pytest
from review.serving import serving

from dictate.errors import MachineError
from dictate.review.server import HOST, serve
from dictate.review.sitting import Sitting

pytestmark = pytest.mark.enable_socket


@pytest.fixture
def address(sitting_of: Callable[..., Sitting]) -> Iterator[str]:
    """The address of a server that runs beside the test."""
    with serving(sitting_of("Biceps reflex two plus.")) as one:
        yield one


def test_address_opens_the_page(address: str) -> None:
    """On the loopback address, with the token, once."""
    assert address.startswith(f"http://{HOST}:")
    with httpx.Client(follow_redirects=True, timeout=30) as client:
        assert "which side?" in client.get(address).text
        assert client.get(address).status_code == 403
    assert httpx.get(address.split("/open")[0] + "/", timeout=30).status_code == 403


def test_body_of_a_hundred_megabytes_is_cut_off(address: str) -> None:
    """The answer comes before the body is sent."""
    port = int(address.split(":")[2].split("/")[0])
    with httpx.Client(timeout=30) as client:
        cookie = client.get(address).headers["set-cookie"].split(";")[0]
    head = (
        f"POST /decide HTTP/1.1\r\nHost: {HOST}:{port}\r\nOrigin: http://{HOST}:{port}\r\nCookie: {cookie}\r\n"
        f"Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {100 * 1024 * 1024}\r\n\r\n"
    )
    with socket.create_connection((HOST, port), timeout=30) as link:
        link.sendall(head.encode())
        assert link.recv(4096).startswith(b"HTTP/1.1 413")


def test_port_that_is_taken_is_said(sitting_of: Callable[..., Sitting]) -> None:
    """In one line, with the option's name."""
    with socket.socket() as taken:
        taken.bind((HOST, 0))
        taken.listen()
        port = taken.getsockname()[1]
        with pytest.raises(MachineError, match=f"--port {port}: cannot be used: address already in use"):
            serve(sitting_of("Gait normal."), port=port, announce=lambda _: None)
