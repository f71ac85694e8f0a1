/** How far things have come: what the record says, and over it what waits on this phone. */
import { computed } from "@preact/signals";
import { now, parts } from "./book";
import { outbox } from "./outbox";
import type { Card, Tick } from "./types";

export type TickState = "open" | "done" | "waiting" | "doubted";

const ORDER = ["cut", "machined", "assembled", "finished", "hung"];

const noted = computed(() => new Set(now.value?.noted ?? []));
const spoiled = computed(() => new Set(now.value?.spoiled ?? []));
const pending = computed(() => new Map(outbox.value.map((each) => [each.key, each])));
const undone = computed(() => new Set(outbox.value.map((each) => each.undoes)));
const spoiling = computed(
  () => new Set(outbox.value.flatMap((each) => (each.entry.kind === "spoiled" ? each.entry.words : []))),
);

/** Whether a piece was spoiled and is to be made again. */
export function isSpoiled(path: string): boolean {
  return spoiled.value.has(path) || spoiling.value.has(path);
}

/** How far a part has come, by the record. */
export function stateOf(path: string): string {
  return now.value?.states[path] ?? "planned";
}

export function tickState(tick: Tick): TickState {
  const own = pending.value.get(tick.key);
  if (own?.state === "kept") return "done";
  if (own !== undefined) return own.state === "waiting" ? "waiting" : "doubted";
  if (undone.value.has(tick.key)) return "open";
  if (noted.value.has(tick.words[0] ?? "") || noted.value.has(tick.note)) return "done";
  if (tick.parts.length === 0) return "open";
  const wanted = ORDER.indexOf(tick.kind === "note" ? "assembled" : tick.kind);
  const isDone = tick.parts.every((path) => ORDER.indexOf(stateOf(path)) >= wanted && !spoiling.value.has(path));
  return isDone ? "done" : "open";
}

/** All that can be ticked on a card, what is kept of offcuts apart. */
export function ticksOf(card: Card): Tick[] {
  return [...card.rows.flatMap((row) => row.ticks), ...card.ticks].filter((tick) => tick.kind !== "offcut");
}

/** A card without ticks is done when its reading is there. */
export function isDone(card: Card): boolean {
  const ticks = ticksOf(card);
  if (ticks.length > 0) return ticks.every((tick) => tickState(tick) !== "open");
  return card.readings.length > 0 && card.readings.every((reading) => now.value?.read[reading.path] !== undefined);
}

/** Whether a part exists by that mark or path. */
export function partBy(mark: string) {
  const wanted = mark.trim().toLowerCase();
  return [...parts.value.values()].find((part) => part.mark.toLowerCase() === wanted || part.path === mark);
}
