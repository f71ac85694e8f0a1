"""Set-ups: the numbers a tool is set to make the feature they belong to."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.features import Bores, Cut, Feature
from casewright.casework.parts import Part
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.dims import Dim

__all__ = ["check_setups"]


def check_setups(case: Assembled) -> Iterator[Failure]:
    """Every number of a set-up that is not one of its feature's."""
    for solid in case.solids.values():
        for feature in solid.part.features:
            for word, dim, right in _numbers(feature, solid.part):
                if dim is not None and dim.value not in right:
                    off = min((abs(dim.value - value) for value in right), default=Fraction(0))
                    says = f"the {word} of the set-up does not make the {feature.kind}"
                    yield Failure("set-up", (feature.path, solid.part.path), says, off)


_Number = tuple[str, Dim | None, tuple[Fraction, ...]]


def _numbers(feature: Feature, part: Part) -> Iterator[_Number]:
    """A set-up's numbers in words, with the values of the feature that each may have."""
    return _of_cut(feature, part) if isinstance(feature, Cut) else _of_bores(feature, part)


def _of_cut(cut: Cut, part: Part) -> Iterator[_Number]:
    at, width, depth = cut.at.value, cut.width.value, cut.depth.value
    setup = cut.setup
    if cut.kind == "notch":
        start = Fraction(0) if cut.start is None else cut.start.value
        deep = cut.end.value - start if cut.end is not None else start
        yield "fence", setup.fence, (deep,)
        yield "depth", setup.depth, (deep,)
        yield "stop", setup.stop, (width,)
        yield "check", setup.check, (width, deep)
        return
    if cut.kind == "finger":
        long = _along(cut, part)
        yield "depth", setup.depth, (long,)
        yield "check", setup.check, (long,)
        return
    if cut.kind == "mitre":
        whole = (part.finished.length.value,)
        yield "stop", setup.stop, whole
        yield "check", setup.check, whole
        return
    if cut.kind == "bevel":
        yield "check", setup.check, (part.finished.width.value - width,)
        return
    if cut.kind == "clip":
        yield "stop", setup.stop, (width,)
        yield "check", setup.check, _slants(width, setup.check)
        return
    yield "fence", setup.fence, (at,)
    yield "depth", setup.depth, (depth,)
    yield "stop", setup.stop, (at + width,)
    yield "check", setup.check, (width if setup.fence is None else at + width,)


def _slants(leg: Fraction, check: Dim | None) -> tuple[Fraction, ...]:
    """The slant of a clip: its square is twice that of its leg, to one part in half a million."""
    if check is None or abs(check.value**2 - 2 * leg**2) * 500_000 > leg**2:
        return ()
    return (check.value,)


def _along(cut: Cut, part: Part) -> Fraction:
    """How long a cut along its part is [mm]."""
    start = Fraction(0) if cut.start is None else cut.start.value
    return (part.finished.length.value if cut.end is None else cut.end.value) - start


def _of_bores(bores: Bores, part: Part) -> Iterator[_Number]:
    setup = bores.setup
    along = tuple(place[0].value for place in bores.places)
    across = tuple(place[1].value for place in bores.places)
    if bores.kind == "pocket":
        thickness = (part.finished.thickness.value,)
        yield "fence", setup.fence, along if bores.toward in ("l0", "l1") else across
        yield "depth", setup.depth, thickness
        yield "collar", setup.collar, thickness
        yield "check", setup.check, thickness
        return
    depth = () if bores.depth is None else (bores.depth.value,)
    yield "fence", setup.fence, across
    yield "depth", setup.depth, depth
    yield "collar", setup.collar, depth
    yield "bit", setup.bit_size, (bores.diameter.value,)
    if bores.kind == "hinge cup":
        radius = bores.diameter.value / 2
        along = (*along, *(value - radius for value in across))
    yield "check", setup.check, along
