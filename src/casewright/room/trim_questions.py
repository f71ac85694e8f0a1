"""Questions about trims: each is cut to what stands, so its lengths are read then."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from casewright.findings import Question
from casewright.room.model import Room, Run
from casewright.room.trims.model import Trim

__all__ = ["held_pieces", "open_trims", "trim_questions", "what_to_read"]

_WHERE = {
    ("toe skin", "along"): "the length of the toe space, once the floor is laid",
    ("light rail", "along"): "the length along the fronts under the cases, outside to outside",
    ("crown", "along"): "the length along the frieze board, corner to corner",
}
_ACROSS = {
    "toe skin": "along the toe space across the corner at the {side} end, once the floor is laid",
    "light rail": "along the fronts across the corner at the {side} end, from one inside corner "
    "to the other",
    "crown": "along the frieze board across the corner at the {side} end, corner to corner",
}
_KEYS = {"along": "as_built", "return": "return", "high": "height", "across": "across"}


def _name(path: str) -> tuple[str, str]:
    """What a length is, and at which end: ('return', 'left')."""
    what, _, side = path.rpartition(".")[2].partition("_")
    return what, side


def _at_hood(path: str) -> str:
    """Key of the hood that something is read at; empty: at none."""
    return path.split(".")[2].partition("_at_")[2]


def what_to_read(trim: Trim, path: str) -> str:
    """What to measure, in words: 'the height of the left end'."""
    what, side = _name(path)
    if what == "high":
        return f"the height of the {side} end, once it stands"
    if what == "return":
        face = "frieze board's face" if trim.kind == "crown" else "front"
        ends = (each for each in trim.pieces if each.read is not None and each.read.path == path)
        hood = _at_hood(path)
        end = f"at the {side} {f'side of {hood}' if hood else 'end'}"
        if any(piece.rear is not None for piece in ends):
            return f"from the {face} of the cases beside it to its own {end}"
        return f"from the wall to the {face} {end}"
    if what == "across":
        return _ACROSS[trim.kind].format(side=side)
    words = _WHERE[trim.kind, what]
    if not any(cut.is_bend for piece in trim.along for cut in (piece.left, piece.right)):
        return words
    return words.replace("outside to outside", "to the corner with a diagonal face")


def _asked(room: Room) -> Iterator[tuple[str, Run, Trim]]:
    """Every length that is still open, once, with the run and the trim it is read for."""
    seen: set[str] = set()
    for run in room.runs:
        for trim in sorted(run.trims, key=lambda trim: trim.kind in ("backing", "frieze")):
            for length in trim.open_lengths:
                if length.built is None and length.path not in seen:
                    seen.add(length.path)
                    yield length.path, run, trim


def open_trims(room: Room) -> tuple[str, ...]:
    """Paths of the lengths that are read once the cases stand, and are not yet."""
    return tuple(path for path, _, _ in _asked(room))


def held_pieces(room: Room) -> dict[str, tuple[str, ...]]:
    """By the path of a piece what it waits for besides the numbers its size rests on.

    Where a trim is joined is marked once its length is read.
    """
    held: dict[str, tuple[str, ...]] = {}
    for run in room.runs:
        for trim in run.trims:
            along = [d.path for d in trim.open_lengths if _name(d.path)[0] == "along"]
            if along and trim.open_lengths[0].built is None:
                for part in trim.parts:
                    if not part.turned and not part.path.endswith("_return"):
                        held[part.path] = (along[0],)
    return held


def trim_questions(room: Room, waiting: Mapping[str, Sequence[str]]) -> Iterator[Question]:
    """One question for each, with the pieces that are cut to it."""
    for path, run, trim in _asked(room):
        what, side = _name(path)
        key = _KEYS[what] if not side else f"{side}_{_KEYS[what]}"
        table = path.rpartition(".")[0]
        yield Question(
            path=path,
            needs=f"measure {what_to_read(trim, path)}, for the {trim.title} of {run.spec.title}",
            because="it is cut to what stands, not to what was planned; buy it now, cut it then",
            waiting=tuple(waiting[path]),
            how=_how(run, table, key),
        )


def _how(run: Run, table: str, key: str) -> str:
    """Where the length is written; of several skins of a run all in one list."""
    for kind, word in (
        ("toe skin", "toe_skin"), ("crown", "crown"), ("light rail", "light_rail"),
    ):  # fmt: skip
        hood = _at_hood(f"{table}.")
        if hood and table == f"run.{run.spec.key}.{word}_at_{hood}":
            return f'under [run.{run.spec.key}.{word}.at.{hood}] write {key} = "..."'
        parted = sum(trim.kind == kind and not _at_hood(trim.path) for trim in run.trims)
        if f".{word}" in table and parted > 1 and key == "as_built":
            each = ", ".join(['"..."'] * parted)
            return f"under [run.{run.spec.key}.{word}] write {key} = [{each}], from the left"
        if table.startswith(f"run.{run.spec.key}.{word}_"):
            table = f"run.{run.spec.key}.{word}"
    return f'under [{table}] write {key} = "..."'
