"""A wheel carries the page built; without it none is made. All else stands in pyproject.toml."""

from pathlib import Path

from setuptools import setup
from setuptools.command.build_py import build_py

FRONT = Path(__file__).parent / "src" / "casewright" / "web" / "built" / "index.html"


class BuildWithPage(build_py):
    """Looks for the page first; a checkout that is installed in place builds it at its start."""

    def run(self) -> None:
        """Copy the package."""
        if not self.editable_mode and not FRONT.is_file():
            message = "the page is not built yet: ./dev wheel builds it and makes the wheel"
            raise SystemExit(message)
        super().run()


setup(cmdclass={"build_py": BuildWithPage})
