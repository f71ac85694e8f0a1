/** Makes the numbers and things of a drawing ready for a finger, a mouse and the keyboard. */

export interface Touched {
  /** A number was touched: its path, and where it stands. */
  number: (path: string, at: Element) => void;
  /** A case or a part was touched; without it they lead nowhere. */
  thing?: (path: string) => void;
}

const SVG = "http://www.w3.org/2000/svg";
const AROUND = 1.5; // mm of the drawing round a number that belong to it

/** Give every number and every thing of a drawing its role, its name and its key. */
export function makeTouchable(root: SVGSVGElement, touched: Touched): void {
  const fields: [SVGGElement, SVGElement][] = [];
  const named = new Set<string>();
  for (const group of root.querySelectorAll<SVGGElement>("g[data-path], g[data-target]")) {
    const path = group.dataset["path"] ?? "";
    const isText = group.classList.contains("text");
    const isNumber = group.classList.contains("dimension") || (isText && group.dataset["target"] === undefined);
    const text = group.querySelector("text");
    if (isNumber && path !== "" && text !== null) {
      name(group, `${path.replaceAll(".", " ").replaceAll("_", " ")}: ${titleOf(group)}`);
      const field = fieldOf(group);
      if (field !== null) fields.push([group, field]);
      on(group, () => touched.number(path, group));
    } else if (!isNumber && touched.thing !== undefined && group.dataset["target"] !== undefined) {
      const isName = isText && path === group.dataset["target"] && !named.has(path);
      if (group.classList.contains("balloon") || isName) name(group, titleOf(group) || path);
      if (isName) named.add(path);
      group.classList.add("thing");
      on(group, () => touched.thing?.(group.dataset["target"] ?? path));
    }
  }
  // Only once all are measured: each one put in would have the next measured anew.
  for (const [group, field] of fields) group.prepend(field);
  const numbers = fields.filter(([group]) => group.classList.contains("dimension") && group.parentNode === root);
  for (const [group] of asRead(numbers)) root.append(group);
}

const ROW = 6; // mm of the drawing: figures that stand so near each other's height are one row

/** In the order of reading, which the Tab key follows: row by row from above, from left to right. */
function asRead(numbers: readonly [SVGGElement, SVGElement][]): [SVGGElement, SVGElement][] {
  const middle = ([, field]: [SVGGElement, SVGElement]) => side(field, "y") + side(field, "height") / 2;
  const rows: [SVGGElement, SVGElement][][] = [];
  for (const each of [...numbers].sort((one, other) => middle(one) - middle(other))) {
    const first = rows.at(-1)?.[0];
    if (first !== undefined && middle(each) - middle(first) < ROW) rows.at(-1)?.push(each);
    else rows.push([each]);
  }
  return rows.flatMap((row) => row.sort(([, one], [, other]) => side(one, "x") - side(other, "x")));
}

function side(field: SVGElement, name: string): number {
  return Number(field.getAttribute(name));
}

function titleOf(group: SVGGElement): string {
  return group.querySelector("title")?.textContent ?? "";
}

function name(group: SVGGElement, words: string): void {
  group.setAttribute("role", "button");
  group.setAttribute("tabindex", "0");
  group.setAttribute("aria-label", words);
}

/** A clear field over the figures, so that they can be hit beside their strokes. */
function fieldOf(group: SVGGElement): SVGElement | null {
  let box: DOMRect | null = null;
  for (const text of group.querySelectorAll("text")) {
    const own = text.getBBox();
    const turned = text.transform.baseVal.consolidate()?.matrix;
    const at = turned === undefined ? own : around(own, turned);
    box = box === null ? at : joined(box, at);
  }
  if (box === null) return null;
  const field = document.createElementNS(SVG, "rect");
  field.setAttribute("x", String(box.x - AROUND));
  field.setAttribute("y", String(box.y - AROUND));
  field.setAttribute("width", String(box.width + 2 * AROUND));
  field.setAttribute("height", String(box.height + 2 * AROUND));
  field.setAttribute("class", "field");
  field.setAttribute("rx", "0.8");
  return field;
}

function around(box: DOMRect, by: DOMMatrix): DOMRect {
  const corners = [
    [box.x, box.y],
    [box.x + box.width, box.y],
    [box.x, box.y + box.height],
    [box.x + box.width, box.y + box.height],
  ].map(([x, y]) => new DOMPoint(x, y).matrixTransform(by));
  const xs = corners.map((p) => p.x);
  const ys = corners.map((p) => p.y);
  return new DOMRect(Math.min(...xs), Math.min(...ys), Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

function joined(a: DOMRect, b: DOMRect): DOMRect {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return new DOMRect(x, y, Math.max(a.x + a.width, b.x + b.width) - x, Math.max(a.y + a.height, b.y + b.height) - y);
}

function on(group: SVGGElement, act: () => void): void {
  group.addEventListener("click", (event) => {
    event.stopPropagation();
    act();
  });
  group.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    act();
  });
}
