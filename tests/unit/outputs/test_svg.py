"""SVG read back by an XML library and measured."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lxml import etree

from casewright.dims import Measure
from casewright.drawing import (
    HIDDEN,
    Arc,
    Dimensions,
    Element,
    Scene,
    Span,
    Tag,
    Text,
    circle,
    plot,
    rectangle,
)
from casewright.outputs.svg import svg_text

INCH = Fraction("25.4")
SVG = "{http://www.w3.org/2000/svg}"


def _read(*elements: Element, scale: int = 1, title: str = "") -> etree._Element:
    text = svg_text(plot(Scene(elements, title), scale))
    return etree.fromstring(text.encode())


def _box(width: Fraction, height: Fraction) -> tuple[Element, ...]:
    return (
        rectangle((0, 0), (width, height), tag=Tag(path="sink.side", key="side")),
        Dimensions("below", 0, (Span(0, width, Measure(width, "in", "sink.width")),)),
        Dimensions("left", 0, (Span(0, height, Measure(height, "in", "sink.height")),)),
    )


def _points(path: etree._Element) -> list[tuple[float, float]]:
    found = re.findall(r"(-?[\d.]+) (-?[\d.]+)", path.get("d", ""))
    return [(float(x), float(y)) for x, y in found]


def _straight(root: etree._Element, of: str, axis: int) -> float:
    """Length of the longest line along an axis in the group of a path."""
    (group,) = root.findall(f"{SVG}g[@data-path='{of}']")
    lengths = [0.0]
    for path in group.iter(f"{SVG}path"):
        points = _points(path)
        if len(points) == 2 and points[0][1 - axis] == points[1][1 - axis]:
            lengths.append(abs(points[1][axis] - points[0][axis]))
    return max(lengths)


_SIZES = st.integers(8 * 32, 96 * 32).map(lambda n: Fraction(n, 32) * INCH)


@given(_SIZES, _SIZES, st.sampled_from([4, 8, 12, 16]))
def test_a_dimension_is_as_long_as_its_text_at_the_scale(
    width: Fraction, height: Fraction, scale: int
) -> None:
    """What is written times the scale is what is drawn, to a thousandth of a millimetre."""
    root = _read(*_box(width, height), scale=scale)
    assert _straight(root, "sink.width", 0) == pytest.approx(float(width / scale), abs=0.0011)
    assert _straight(root, "sink.height", 1) == pytest.approx(float(height / scale), abs=0.0011)


def test_the_picture_is_as_large_as_its_millimetres_say() -> None:
    """One unit of the view box is one millimetre of paper."""
    root = _read(rectangle((0, 0), (800, 400)), scale=8)
    assert root.get("width") == "101mm"
    assert root.get("height") == "51mm"
    assert root.get("viewBox") == "0 0 101 51"


def test_up_is_up() -> None:
    """The model's y points up, the paper's down."""
    root = _read(Text((0, 0), "floor"), Text((0, 100), "ceiling"))
    floor, ceiling = (float(t.get("y", "")) for t in root.iter(f"{SVG}text"))
    assert ceiling < floor


def test_turned_lettering_reads_from_below_upward() -> None:
    """Counter-clockwise in the model is a negative turn where y points down."""
    root = _read(Text((10, 20), "stile", rotation_deg=90))
    (text,) = root.iter(f"{SVG}text")
    x, y = text.get("x"), text.get("y")
    assert text.get("transform") == f"rotate(-90 {x} {y})"


def test_elements_keep_path_title_target_and_id() -> None:
    """A page can ask why for what is touched, and lead on."""
    tag = Tag(path="sink.side", title="left side", target="card 3", key="side")
    root = _read(rectangle((0, 0), (10, 10), tag=tag))
    (group,) = root.findall(f"{SVG}g")
    assert group.get("id") == "side"
    assert group.get("data-path") == "sink.side"
    assert group.get("data-target") == "card 3"
    assert group.findtext(f"{SVG}title") == "left side"


def test_ids_can_be_left_off() -> None:
    """Several drawings on one page must not share ids."""
    drawn = plot(Scene((rectangle((0, 0), (10, 10), tag=Tag(key="side")),)))
    assert 'id="side"' in svg_text(drawn)
    assert "id=" not in svg_text(drawn, with_ids=False)


def test_a_fraction_is_two_words_and_a_bar() -> None:
    """11 7/8 cannot be read as 117/8."""
    root = _read(Text((0, 0), Measure(Fraction(95, 8) * INCH, "in")))
    assert [t.text for t in root.iter(f"{SVG}text")] == ["11", "7", "8"]
    assert len(list(root.iter(f"{SVG}path"))) == 1


NASTY = '</text><script>alert("x")</script>&<!--\'"\x00\x0b\ud800\uffff'


def test_words_cannot_become_markup() -> None:
    """Names from a job file are words, whatever is in them."""
    tag = Tag(path=NASTY, title=NASTY, target=NASTY, key=NASTY)
    root = _read(Text((0, 0), NASTY, tag=tag), title=NASTY)
    assert {e.tag for e in root.iter()} == {f"{SVG}{n}" for n in ("svg", "title", "g", "text")}
    (text,) = root.iter(f"{SVG}text")
    assert text.text == '</text><script>alert("x")</script>&<!--\'"' + "\ufffd" * 4


@given(st.text())
def test_any_text_gives_well_formed_xml(text: str) -> None:
    """Whatever was typed, the drawing can be opened."""
    root = _read(Text((0, 0), text, tag=Tag(path=text, title=text)), title=text)
    assert root.tag == f"{SVG}svg"


def test_nothing_is_fetched_from_outside() -> None:
    """The only address in it is the name of the format."""
    text = svg_text(plot(Scene(_box(33 * INCH, 39 * INCH)), 8))
    assert re.findall(r"[a-z]+://[^\"]*", text) == ["http://www.w3.org/2000/svg"]
    assert "href" not in text
    assert "url(" not in text


def test_dashes_and_circles_are_drawn_as_such() -> None:
    """Hidden edges are dashed; a bore is a circle of its radius."""
    root = _read(rectangle((0, 0), (80, 40), HIDDEN), circle((40, 20), 17.5), scale=1)
    (path,) = root.iter(f"{SVG}path")
    assert path.get("stroke-dasharray") == "3 0.75"
    assert path.get("stroke-width") == "0.25"
    (ring,) = root.iter(f"{SVG}circle")
    assert ring.get("r") == "17.5"


@pytest.mark.parametrize(("sweep", "large"), [(90.0, "0"), (270.0, "1")])
def test_arcs_run_the_right_way_round(sweep: float, large: str) -> None:
    """Counter-clockwise in the model, from start to end."""
    root = _read(Arc((0, 0), 10, start_deg=0, sweep_deg=sweep))
    (path,) = root.iter(f"{SVG}path")
    found = re.fullmatch(r"M([\d.]+) ([\d.]+)A10 10 0 (\d) 0 ([\d.]+) ([\d.]+)", path.get("d", ""))
    assert found is not None
    assert found[3] == large
    start, end = (float(found[1]), float(found[2])), (float(found[4]), float(found[5]))
    across, down = end[0] - start[0], end[1] - start[1]
    assert (across, down) == pytest.approx((-10, -10) if sweep == 90 else (-10, 10), abs=0.002)


def test_same_plot_same_text() -> None:
    """Nothing of the clock or of chance gets in."""
    scene = Scene(_box(33 * INCH, 39 * INCH))
    assert svg_text(plot(scene, 8)) == svg_text(plot(scene, 8))


def test_no_number_is_written_as_minus_zero() -> None:
    """Tiny leftovers of rounding do not show."""
    text = svg_text(plot(Scene((rectangle((-1e-9, -1e-9), (10.0, 10.0)),))))
    assert not re.search(r"-0(?![.\d])", text)
