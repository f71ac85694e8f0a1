import { useEffect, useRef } from "preact/hooks";
import { askText } from "../api";
import { go } from "../route";
import { isDrawn, steps } from "../state";
import { type Answer, ask, moveTo } from "./asking";
import { leadTo } from "./placing";
import { makeTouchable } from "./touching";

/** Drawings that an answer brought along: shown without asking again. */
const brought = new Map<string, { version: number; svg: string }>();

/** Keep a drawing that came with an edit. */
export function bring(name: string, version: number, svg: string): void {
  brought.set(name, { version, svg });
  for (const show of shown.get(name) ?? []) show(svg);
}

/** On a narrow screen elevations are drawn half as large, their figures as high. */
export function sized(name: string): string {
  return matchMedia("(max-width: 50rem)").matches ? `small.${name}` : name;
}

const shown = new Map<string, Set<(svg: string) => void>>();

/** A drawing of the server's, its numbers and things to be touched. */
export function Drawing({ name, label }: { name: string; label: string }) {
  const sheet = useRef<HTMLDivElement>(null);
  const version = steps.value.drawn;

  useEffect(() => {
    const show = (svg: string) => sheet.current !== null && put(sheet.current, svg, name);
    const all = shown.get(name) ?? new Set();
    shown.set(name, all.add(show));
    return () => void all.delete(show);
  }, [name]);

  useEffect(() => {
    let left = false;
    const known = brought.get(name);
    const found =
      known !== undefined && known.version >= version
        ? Promise.resolve(known.svg)
        : askText(`/api/drawings/${encodeURIComponent(name)}?version=${version}`);
    found.then(
      (svg) => !left && sheet.current !== null && put(sheet.current, svg, name),
      () => undefined,
    );
    return () => {
      left = true;
    };
  }, [name, version]);

  return (
    <div class="sheet" data-state={isDrawn.value ? "current" : "pending"} role="group" aria-label={label} ref={sheet} />
  );
}

/** Put a drawing into the page as elements: its texts stay texts, nothing in it is run. */
function put(into: HTMLElement, svg: string, name: string): void {
  const root = elementsOf(svg);
  const focused = into.contains(document.activeElement) ? document.activeElement?.getAttribute("data-path") : null;
  into.replaceChildren(root);
  makeTouchable(root, {
    number: (path, at) => ask(path, at, name),
    thing: (path) => go(leadTo(path)),
  });
  moveTo(root);
  if (focused != null) root.querySelector<SVGElement>(`[data-path="${CSS.escape(focused)}"][tabindex]`)?.focus();
}

/** Put how an answer looks into the page: its numbers say why, its cases lead nowhere yet. */
export function putAnswer(into: HTMLElement, svg: string, answer: Answer): void {
  const root = elementsOf(svg);
  into.replaceChildren(root);
  makeTouchable(root, { number: (path, at) => ask(path, at, "", answer) });
}

function elementsOf(svg: string): SVGSVGElement {
  const drawn = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  const root = document.importNode(drawn, true) as unknown as SVGSVGElement;
  for (const side of ["width", "height"]) root.style.setProperty(`--${side}`, String(parseFloat(root.getAttribute(side) ?? "")));
  return root;
}
