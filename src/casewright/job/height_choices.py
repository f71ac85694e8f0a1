"""Accepted heights of a room: as the style of the job, and written into its file."""

from __future__ import annotations

from casewright.dims import Given, Origin
from casewright.job.content import Content
from casewright.job.heights import RoomHeights
from casewright.job.origins import Origins
from casewright.job.problems import Reporter
from casewright.job.section_edits import put_section
from casewright.job.splicing import basic_string
from casewright.style import Style

__all__ = ["accepted_heights", "check_heights", "with_solved_heights"]

_NAMES = ("wall_bottom", "wall_height")


def with_solved_heights(style: Style, content: Content, origins: Origins) -> Style:
    """The style with the heights that an accepted answer gave."""
    table = content.heights
    return style.changed({
        name: Given(value, Origin("solved", table.because or "layout",
                                  where=origins.where(("heights", name))))
        for name in _NAMES
        if (value := getattr(table, name)) is not None
    })  # fmt: skip


def check_heights(content: Content, reporter: Reporter) -> None:
    """Tell heights that are said twice."""
    for name in _NAMES:
        if getattr(content.heights, name) is not None and getattr(content.style, name) is not None:
            what = f"{name} is said twice, here and in [style]"
            reporter.tell(("heights", name), what, f"take {name} out of [style]", key=True)


def accepted_heights(text: str, heights: RoomHeights, number: int) -> str:
    """The text of a job file with an answer written into it, and what bound it.

    Parameters
    ----------
    number
        Of the answer, from 1.

    Raises
    ------
    EditError
        When the section cannot be edited.
    """
    answer = heights.answers[number - 1]
    lines = (
        f'wall_bottom = "{heights.text(answer.bottom)}"',
        f'wall_height = "{heights.text(answer.uppers)}"',
        f"because = {basic_string(heights.because(answer))}",
    )
    return put_section(text, ("heights",), lines)
