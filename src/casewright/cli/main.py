"""`casewright`: all its commands."""

from __future__ import annotations

from casewright.cli import plan_commands, shop_commands  # they put themselves into the program
from casewright.cli.app import app

__all__ = ["app", "main"]

_ = plan_commands, shop_commands


def main(arguments: list[str] | None = None) -> None:
    """Run a command and leave with its exit code; no traceback for anything a person can do."""
    app(args=arguments)


if __name__ == "__main__":
    main()
