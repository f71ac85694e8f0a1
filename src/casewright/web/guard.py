"""The door: who may ask, from where, and how much may be sent.

A page of somebody else's that is open in the same browser can send requests here, and a name that
it owns can be made to point here. So a request must name a host that we are, must not come from
another site, and a change must carry a header that no form can send.
"""

from __future__ import annotations

import ipaddress
import json
from collections.abc import Iterable
from http.cookies import CookieError, SimpleCookie

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from casewright.web.devices import Devices

__all__ = ["COOKIE", "MARK", "MOST_BYTES", "Guard", "is_this_machine"]

MARK = "x-casewright"
"""Header that every change must carry: another site cannot send it without being asked first."""

COOKIE = "casewright_device"
MOST_BYTES = 1_000_000
"""Largest body that is taken [bytes]."""

_TOO_MUCH = f"more than {MOST_BYTES} bytes are not taken"
_HERE = ("localhost", "127.0.0.1", "[::1]")
_READING = ("GET", "HEAD")
_HEADERS = {
    "content-security-policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; "
        "font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; "
        "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
    ),
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "x-frame-options": "DENY",
}


class Guard:
    """Middleware that refuses what has no business here.

    Parameters
    ----------
    app
        What it stands before.
    devices
        Which of the home network have joined.
    hosts
        Names and addresses that this machine serves by, beside those of itself alone.
    """

    def __init__(self, app: ASGIApp, devices: Devices, hosts: Iterable[str] = ()) -> None:
        self.app = app
        self.devices = devices
        self.hosts = frozenset((*_HERE, *(host.lower() for host in hosts)))

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or answer it with what is wrong."""
        if scope["type"] == "lifespan":
            await self.app(scope, receive, send)
            return
        if scope["type"] != "http":
            return
        refused = self._refused(scope, Headers(scope=scope))
        if refused is not None:
            await _answer(send, *refused)
            return
        await self._through(scope, receive, send)

    def _refused(self, scope: Scope, headers: Headers) -> tuple[int, str] | None:
        """Status and reason where a request is not let in."""
        if _without_port(headers.get("host", "")) not in self.hosts:
            return 421, "this address is not served here; open the one that serve prints"
        if _is_foreign(headers):
            return 403, "a page of another site asked for this"
        if scope["method"] not in _READING and MARK not in headers:
            return 403, "a change must come from a page of ours"
        if not self._is_known(scope, headers):
            return 401, "this device has not joined yet; the desk shows the code"
        length = headers.get("content-length", "0")
        if not length.isdecimal() or int(length) > MOST_BYTES:
            return 413, _TOO_MUCH
        return None

    def _is_known(self, scope: Scope, headers: Headers) -> bool:
        """Whether it may ask this: the page itself holds nothing of the job, and asks the code."""
        path: str = scope["path"]
        if path == "/api/join" or not path.startswith("/api/"):
            return True
        client = scope.get("client")
        return is_this_machine(client[0] if client else "") or self.devices.knows(_key(headers))

    async def _through(self, scope: Scope, receive: Receive, send: Send) -> None:
        body = b""
        while scope["method"] not in _READING:
            message = await receive()
            body += message.get("body", b"")
            if len(body) > MOST_BYTES:
                await _answer(send, 413, _TOO_MUCH)
                return
            if not message.get("more_body", False):
                break
        given = scope["method"] in _READING

        async def replayed() -> Message:
            nonlocal given
            if given:
                return await receive()
            given = True
            return {"type": "http.request", "body": body, "more_body": False}

        async def with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                found = MutableHeaders(scope=message)
                for name, value in _HEADERS.items():
                    found.setdefault(name, value)
            await send(message)

        await self.app(scope, replayed, with_headers)


def is_this_machine(address: str) -> bool:
    """Whether a request comes from this machine itself."""
    try:
        return ipaddress.ip_address(address).is_loopback
    except ValueError:
        return False


def _is_foreign(headers: Headers) -> bool:
    """Whether a page of another site sends it."""
    if headers.get("sec-fetch-site", "same-origin") not in ("same-origin", "none"):
        return True
    origin = headers.get("origin")
    return origin is not None and origin.lower() != f"http://{headers['host'].lower()}"


def _key(headers: Headers) -> str | None:
    try:
        found = SimpleCookie(headers.get("cookie", "")).get(COOKIE)
    except CookieError:
        return None
    return found.value if found is not None else None


def _without_port(host: str) -> str:
    head, colon, port = host.lower().rpartition(":")
    return head if colon and port.isdigit() else host.lower()


async def _answer(send: Send, status: int, what: str) -> None:
    body = json.dumps({"what": what}).encode()
    headers = {"content-type": "application/json", "content-length": str(len(body)), **_HEADERS}
    raw = [(name.encode(), value.encode()) for name, value in headers.items()]
    await send({"type": "http.response.start", "status": status, "headers": raw})
    await send({"type": "http.response.body", "body": body})
