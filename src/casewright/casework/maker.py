"""The maker of one case: collects parts, joints and steps in the order of making."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Literal

from casewright.casework.cases import AssemblyStep, Drawer, Face, Front, StepVerb
from casewright.casework.features import Cut, Feature, Plane
from casewright.casework.house import House
from casewright.casework.joints import Fastening, Joint, JointForm, Surface
from casewright.casework.naming import name_feature, name_once
from casewright.casework.parts import EdgeTreatment, Part, PlacedAt, Size
from casewright.casework.specs import CaseSpec, EdgeKind, Hand
from casewright.dims import Dim, Given, Place, Way
from casewright.findings import Finding, Question, Reckoning
from casewright.geometry import Direction, Orientation
from casewright.shop import ToolKind

__all__ = ["Maker", "Outline"]

_LOOSE = Fraction(2, 5)
"""What a dado may be too wide before glue fails it: about 1/64 in (common practice) [mm]."""

_EDGE_AXIS: Mapping[str, Literal["length", "width"]] = {
    "l0": "length", "l1": "length", "w0": "width", "w1": "width",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Outline:
    """A piece cut to its outline, before it has a place and features.

    Parameters
    ----------
    path, place
        Permanent name, and its place on the chain.
    finished, blank
        Sizes as made.
    edges
        Treatments that count in the finished size.
    """

    path: str
    place: Place
    stock: str
    finished: Size
    blank: Size
    edges: tuple[EdgeTreatment, ...]

    @property
    def length(self) -> Dim:
        """Finished length [mm]."""
        return self.finished.length

    @property
    def width(self) -> Dim:
        """Finished width [mm]."""
        return self.finished.width

    @property
    def thickness(self) -> Dim:
        """Thickness [mm]."""
        return self.finished.thickness


@dataclass(slots=True)
class Maker:
    """Everything made so far of one case.

    Parts are cut (`outline`), then given their place (`add`), then machined (`machine`): the
    order of making, so that what is made later is computed from what was made before.
    """

    spec: CaseSpec
    house: House
    place: Place
    parts: dict[str, Part] = field(default_factory=dict)
    joints: list[Joint] = field(default_factory=list)
    fronts: list[Front] = field(default_factory=list)
    faces: list[Face] = field(default_factory=list)
    drawers: list[Drawer] = field(default_factory=list)
    steps: list[AssemblyStep] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)
    turned: bool = False
    """Whether what is placed now lies in the mouth of a diagonal corner, in that mouth's axes."""
    _own: dict[str, Dim] = field(default_factory=dict)
    _early: dict[str, list[Feature]] = field(default_factory=dict)
    _lengths: dict[str, tuple[Dim, Dim]] = field(default_factory=dict)

    @property
    def zero(self) -> Dim:
        """Nothing, as a length."""
        return self.house.zero

    def path(self, name: str) -> str:
        """Full path of a name inside the case."""
        return f"{self.place.path}.{name}"

    def style(self, key: str) -> Dim:
        """A style value: the case's own when it sets one, else the house's."""
        own = self.spec.overrides.get(key)
        if own is None:
            return self.house.style_dim(key)
        known = self._own.get(key)
        if known is None:
            known = self._own[key] = self.place.given(key, own)
        return known

    def number(self, name: str, given: Given) -> Dim:
        """A number of the case from outside, entered the first time it is asked for."""
        known = self._own.get(name)
        if known is None:
            known = self._own[name] = self.place.given(name, given)
        return known

    def reckoning(self, rule: str, path: str = "") -> Reckoning:
        """Where the numbers of a finding are worked out.

        Parameters
        ----------
        path
            Of what it is about; empty: the case.
        """
        house = self.house
        return Reckoning(rule, path or self.place.path, house.unit, house.chain.nodes)

    def on_grid(self, name: str, wished: Dim, *, parts: int = 1) -> Dim:
        """A size that several pieces must share, on the grid they are cut to.

        What is left over is kept as `<name>_to_cut_rest`; it goes into the size of the case or of
        an opening, and never between two pieces that meet.

        Parameters
        ----------
        wished
            [mm].
        parts
            By how many steps the grid is finer: 2 where two such sizes make one length.
        """
        key = f"{name}_to_cut"
        if key not in self._own:
            step = self.style("cut_step").value / parts
            on_it = not step or not wished.value % step
            way = Way.NEAREST
            self._own[key] = wished if on_it else self.place.rounded(key, wished, step, way)[0]
        return self._own[key]

    def outline(
        self,
        name: str,
        stock: str,
        length: Dim,
        width: Dim,
        *,
        edges: tuple[Plane, ...] = (),
        edge: EdgeKind | None = None,
        setting: str = "",
        way: Way | None = Way.DOWN,
        length_way: Way | None = None,
        matched: bool = False,
        planed: Dim | None = None,
    ) -> Outline:
        """Cut a piece.

        Parameters
        ----------
        name
            Name inside the case: 'side_left', 'shelf.1'.
        length, width
            Finished size wanted [mm]; the blank is smaller by what the edges add.
        edges
            Edges that are treated.
        edge
            How; None: as the case's spec says.
        setting
            Pieces that name the same setting are cut in one and share its deviation.
        way, length_way
            Which way the size goes onto the cutting grid; None: a width marked from its edge.
        matched
            The length is marked from the pieces it meets, so it is kept off the grid.
        planed
            Thickness it is planed to [mm]; None: that of its stock.
        """
        place = self.place.at(name)
        house = self.house
        own = house.own_thickness_cause(place.path)
        if planed is None:
            thickness = place.follows("thickness", house.thickness(stock), own)
        else:
            thickness = place.made("thickness", planed, own)
        treated = self._treatments(stock, edges, edge or self.spec.edge)
        known = self._lengths.get(name)
        finished_l, blank_l = known or self._cut(
            place, "length", length, treated, setting, None if matched else length_way or way
        )
        finished_w, blank_w = self._cut(place, "width", width, treated, setting, way)
        return Outline(
            place.path,
            place,
            stock,
            Size(finished_l, finished_w, thickness),
            Size(blank_l, blank_w, thickness),
            treated,
        )

    def cut_first(self, name: str, length: Dim, setting: str) -> Dim:
        """Length of a piece that others are cut to before its turn comes [mm]."""
        place = self.place.at(name)
        sizes = self._cut(place, "length", length, (), setting, Way.NEAREST)
        self._lengths[name] = sizes
        return sizes[0]

    def _treatments(
        self, stock: str, edges: tuple[Plane, ...], kind: EdgeKind
    ) -> tuple[EdgeTreatment, ...]:
        if not edges:
            return ()
        if kind == "painted":
            paint = self.house.painted_edge(stock)
            return tuple(EdgeTreatment(e, kind, paint, "") for e in edges)
        thickness = self.style("band" if kind == "band" else "lip")
        source = self.spec.band_stock if kind == "band" else self.spec.strip_stock
        return tuple(EdgeTreatment(e, kind, thickness, source) for e in edges)

    def _cut(
        self,
        place: Place,
        name: Literal["length", "width"],
        wanted: Dim,
        treated: tuple[EdgeTreatment, ...],
        setting: str,
        way: Way | None,
    ) -> tuple[Dim, Dim]:
        added = [t.thickness for t in treated if _EDGE_AXIS[t.edge] == name and t.thickness.path]
        blank = wanted
        for thickness in added:
            blank = blank - thickness
        step = self.style("cut_step")
        if way and step.value and blank.value % step.value:
            blank, _ = place.rounded(f"{name}_to_cut", blank, step.value, way)
        causes = self.house.causes(f"{place.path}.{name}", f"{setting} {name}" if setting else "")
        if not added:
            cut = place.made(name, blank, causes)
            return cut, cut
        cut = place.made(f"blank_{name}", blank, causes)
        total = cut
        for thickness in added:
            total = total + thickness
        return place.follows(name, total, how="cut, then its edges treated"), cut

    def add(
        self,
        outline: Outline,
        *,
        role: str,
        title: str,
        lies: str,
        at: tuple[Dim, Dim, Dim],
        ends: tuple[str, str, str, str],
        hand: Hand | None = None,
        shows: tuple[Plane, ...] = (),
        group: str = "",
        front: str = "",
        grain: bool | None = None,
        milled_from: str = "",
        diagonal: bool = False,
    ) -> Part:
        """Give a piece its place in the case.

        Parameters
        ----------
        lies
            Directions of length, width and thickness: '+y -z +x'.
        at
            Case position of its corner l0, w0, t0.
        ends
            Words for l0, l1, w0, w1.
        grain
            None: as the stock has one.
        diagonal
            Lies at 45 degrees across a mitre.
        """
        part = Part(
            path=outline.path,
            mark=self.house.next_mark(),
            case=self.spec.key,
            role=role,
            title=title,
            hand=hand,
            stock=outline.stock,
            finished=outline.finished,
            blank=outline.blank,
            grain=self._has_grain(outline.stock) if grain is None else grain,
            ends=ends,
            edges=outline.edges,
            shows=shows,
            features=tuple(self._early.pop(outline.path, ())),
            placed=PlacedAt(*at, Orientation.of(lies)),
            group=group,
            front=front,
            milled_from=milled_from,
            diagonal=diagonal,
            turned=self.turned,
        )
        self.parts[part.path] = part
        return part

    def _has_grain(self, stock: str) -> bool:
        return bool(getattr(self.house.stock[stock], "grain", False))

    def machined(self, place: Place, name: str, dim: Dim, *, tool: ToolKind | None = None) -> Dim:
        """A size of a cut, made by a setting of its own: with the saw, or the tool named.

        What a setting gives is tried on a test piece first, so that only the cut's own straying
        is left.
        """
        return place.made(name, dim, self.house.causes(f"{place.path}.{name}", "", tool))

    def board_fit(self, place: Place, width: Dim, thickness: Dim) -> None:
        """Declare that a board goes into its dado or groove, and is not loose there."""
        gap = place.let("board_play", width - thickness)
        most = self.style("dado_clearance").value + _LOOSE
        place.fit("board_play_fit", gap, Fraction(0), most, place.path)

    def machine(self, path: str, *features: Feature) -> None:
        """Add features to a piece, whether it has its place yet or not."""
        for feature in features:
            name_feature(self.house.chain.place(feature.path), feature)
        part = self.parts.get(path)
        if part is None:
            self._early.setdefault(path, []).extend(features)
            return
        self.parts[path] = replace(part, features=(*part.features, *features))

    def cuts_of(self, path: str) -> tuple[Cut, ...]:
        """Cuts in a piece so far, whether it has its place yet or not."""
        part = self.parts.get(path)
        features = part.features if part is not None else self._early.get(path, ())
        return tuple(feature for feature in features if isinstance(feature, Cut))

    def join(
        self,
        name: str,
        form: JointForm,
        one: tuple[str, Plane] | tuple[str, Plane, str],
        other: tuple[str, Plane] | tuple[str, Plane, str],
        *,
        gap: Dim | None = None,
        fastenings: tuple[Fastening, ...] = (),
    ) -> str:
        """Record a joint; returns its path."""
        joint = Joint(
            self.path(name), form, Surface(*one), Surface(*other), gap or self.zero, fastenings
        )
        self.joints.append(joint)
        return joint.path

    def step(
        self,
        verb: StepVerb,
        part: str,
        enters: str | None,
        words: str,
        *,
        joints: tuple[str, ...] = (),
        marks: tuple[tuple[str, Dim], ...] = (),
        planes: tuple[tuple[Surface, Surface], ...] = (),
        check: Dim | None = None,
        check_words: str = "",
        cautions: tuple[str, ...] = (),
    ) -> None:
        """Record a step of the assembly."""
        for number, (_, dim) in enumerate(marks, start=1):
            name_once(self.house.chain.place(part), f"mark_{number}", dim)
        name_once(self.house.chain.place(part), "check", check)
        self.steps.append(
            AssemblyStep(
                verb,
                part,
                Direction.of(enters) if enters else None,
                joints,
                words,
                marks,
                check,
                check_words,
                cautions,
                planes,
            )
        )
