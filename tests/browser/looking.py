"""What a person meets on a page, measured in the browser: names, headings, contrast."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Page

__all__ = ["contrasts", "nameless", "ranks"]

_NAMED = {
    "button", "checkbox", "combobox", "dialog", "img", "image", "link", "navigation", "region",
    "spinbutton", "textbox",
}  # fmt: skip

_CONTRASTS = """() => {
  const colour = (text) => {
    const found = /rgba?\\(([^)]+)\\)/.exec(text);
    if (found === null) return null;
    const [r, g, b, a] = found[1].split(/[ ,/]+/).filter(Boolean).map(Number);
    return [r, g, b, a ?? 1];
  };
  const over = (top, under) => [0, 1, 2].map((n) => top[n] * top[3] + under[n] * (1 - top[3]));
  const light = (c) => {
    const linear = (v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
    const [r, g, b] = c.map((v) => linear(v / 255));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const behind = (element) => {
    const layers = [];
    for (let at = element; at !== null; at = at.parentElement) {
      const own = colour(getComputedStyle(at).backgroundColor);
      if (own !== null && own[3] > 0) layers.push(own);
    }
    return layers.reduceRight((under, top) => over(top, under), [255, 255, 255]);
  };
  /* The paper of a drawing, with every filled shape that lies under the middle of a text. */
  const inDrawing = (text, box) => {
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    let paper = behind(text.ownerSVGElement);
    for (const shape of text.ownerSVGElement.querySelectorAll("path, rect, polygon, circle")) {
      const fill = colour(getComputedStyle(shape).fill);
      const area = shape.getBoundingClientRect();
      const isUnder = (shape.compareDocumentPosition(text) & 4) !== 0; /* it follows */
      const holds = area.left <= x && x <= area.right && area.top <= y && y <= area.bottom;
      if (fill !== null && isUnder && holds) {
        fill[3] *= Number(getComputedStyle(shape).fillOpacity);
        paper = over(fill, paper);
      }
    }
    return paper;
  };
  const found = [];
  for (const each of document.querySelectorAll("body *")) {
    const isText = (node) => node.nodeType === Node.TEXT_NODE && node.textContent.trim() !== "";
    const own = [...each.childNodes].filter(isText);
    const box = each.getBoundingClientRect();
    if (own.length === 0 || box.width < 2) continue;
    if (each.closest(":disabled, .hidden, noscript") !== null) continue;
    if (!each.checkVisibility({ visibilityProperty: true })) continue;
    const style = getComputedStyle(each);
    const isDrawn = each instanceof SVGElement;
    const paper = isDrawn ? inDrawing(each, box) : behind(each);
    const ink = over(colour(isDrawn ? style.fill : style.color) ?? [0, 0, 0, 1], paper);
    const [less, more] = [light(ink), light(paper)].sort((a, b) => a - b);
    const size = parseFloat(style.fontSize);
    const isBold = Number(style.fontWeight) >= 600;
    const isLarge = !isDrawn && (size >= 24 || (size >= 18.66 && isBold));
    found.push({
      text: own[0].textContent.trim().slice(0, 40),
      ratio: (more + 0.05) / (less + 0.05),
      least: isLarge ? 3 : 4.5,
    });
  }
  return found;
}"""


def contrasts(page: Page) -> list[dict[str, Any]]:
    """Every text that is shown, with its contrast and the least that it must have.

    By the rendered colours: relative luminance and ratio of WCAG 2.2 (its definitions), the least
    of success criterion 1.4.3, level AA: 4.5, and 3 for text from 24 px or bold from 18.66 px.
    """
    found: list[dict[str, Any]] = page.evaluate(_CONTRASTS)
    return found


def _tree(page: Page) -> list[dict[str, Any]]:
    devtools = page.context.new_cdp_session(page)
    nodes: list[dict[str, Any]] = devtools.send("Accessibility.getFullAXTree")["nodes"]
    return [node for node in nodes if not node["ignored"]]


def _value(node: dict[str, Any], key: str) -> str:
    return str(node.get(key, {}).get("value", ""))


def nameless(page: Page) -> list[str]:
    """Roles of what is told to a screen reader without a name (WCAG 2.2, 4.1.2)."""
    return [
        _value(node, "role") for node in _tree(page)
        if _value(node, "role") in _NAMED and not _value(node, "name").strip()
    ]  # fmt: skip


def ranks(page: Page) -> list[int]:
    """Ranks of the headings in the order in which they are read."""
    found = []
    for node in _tree(page):
        if _value(node, "role") == "heading":
            level = next(each for each in node["properties"] if each["name"] == "level")
            found.append(int(level["value"]["value"]))
    return found
