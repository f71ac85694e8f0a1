"""The schema of all requests, from which the page's types are made."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi

from casewright.web.application import application
from casewright.web.built_page import BuiltPage, PageFile

__all__ = ["main", "schema"]


def schema() -> dict[str, Any]:
    """OpenAPI 3.1 of the server."""
    page = BuiltPage({"index.html": PageFile(b"", "text/html")}, "")
    app: FastAPI = application(Path("job.toml"), page)
    return get_openapi(title="Casewright", version="1", routes=app.routes)


def main() -> None:
    """Print it."""
    sys.stdout.write(json.dumps(schema(), indent=1) + "\n")


if __name__ == "__main__":
    main()
