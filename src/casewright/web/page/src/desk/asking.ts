/** The number that is being asked about: which, where it stands, and the way that led to it. */
import { signal } from "@preact/signals";

export interface Asked {
  /** Paths from the number touched first to the one that is shown. */
  way: readonly string[];
  /** What was touched. */
  at: Element;
  /** The drawing that it stands in, to be drawn anew first; empty for none. */
  drawing: string;
  /** The answer of a layout that it is a number of, as it would be; null: a number of the job. */
  answer: Answer | null;
}

/** An answer of a layout, by what it is of and its number. */
export interface Answer {
  of: string;
  number: number;
}

export const asked = signal<Asked | null>(null);

/** Ask why a number is what it is. */
export function ask(path: string, at: Element, drawing = "", answer: Answer | null = null): void {
  asked.value = { way: [path], at, drawing, answer };
}

/** Where the server tells why. */
export function whyOf({ way, answer }: Asked): string {
  const path = `path=${encodeURIComponent(way.at(-1) ?? "")}`;
  if (answer === null) return `/api/why?${path}`;
  return `/api/layouts/${encodeURIComponent(answer.of)}/${answer.number}/why?${path}`;
}

/** Go on to a number that this one rests on, or back to one on the way. */
export function walk(path: string): void {
  const now = asked.value;
  if (now === null) return;
  const seen = now.way.indexOf(path);
  asked.value = { ...now, way: seen >= 0 ? now.way.slice(0, seen + 1) : [...now.way, path] };
}

/** Ask no more; what was touched has the focus again. */
export function close(): void {
  const at = asked.value?.at;
  asked.value = null;
  if (at instanceof HTMLElement || at instanceof SVGElement) at.focus();
}

/** What stands here goes: nothing of it is asked about any more. */
export function leave(inside: Element): void {
  if (asked.value !== null && inside.contains(asked.value.at)) asked.value = null;
}

/** A drawing was drawn anew: what was touched in it is its successor of the same name. */
export function moveTo(root: Element): void {
  const now = asked.value;
  const [first] = now?.way ?? [];
  if (now === null || first === undefined || now.answer !== null || now.at.isConnected) return;
  const at = root.querySelector(`[data-path="${CSS.escape(first)}"]`);
  if (at !== null) asked.value = { ...now, at };
}
