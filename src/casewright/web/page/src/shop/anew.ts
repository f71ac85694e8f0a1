/** The rest planned anew: what has lost its place on the plan, and what was told when it was done. */
import { computed, effect, signal } from "@preact/signals";
import { ask, RefusedError, send, UnreachableError } from "../api";
import { plans, reachable } from "../state";
import { book, cards, now, read } from "./book";
import { keep, kept } from "./keeping";
import { isDone } from "./ticking";
import type { Card, Rest } from "./types";

/** What would be planned anew; null: nothing was spoiled, or it is not known. */
export const rest = signal<Rest | null>(null);
/** Why it could not be asked for. */
export const refused = signal("");

const seen = signal(kept<string>("anew.seen") ?? "");

/** What changed when the rest was last planned anew, until the person on this phone has seen it. */
export const told = computed(() => {
  const anew = book.value?.anew ?? null;
  return anew === null || anew.plan === seen.value ? null : anew;
});

export function haveSeen(): void {
  seen.value = told.value?.plan ?? seen.value;
  keep("anew.seen", seen.value);
}

/** The card at which a part is cut. */
export function cutAt(path: string): Card | undefined {
  return [...cards.value.values()].find((card) => card.station === "saw" && card.parts.includes(path));
}

/** The first setting that is not done. */
export function nextCut(): Card | undefined {
  return [...cards.value.values()].find((card) => card.station === "saw" && !isDone(card));
}

const MOST_MS = 60_000;

async function look(): Promise<void> {
  try {
    rest.value = await ask<Rest>("/api/shop/rest", MOST_MS);
  } catch (error) {
    if (error instanceof UnreachableError) reachable.value = false;
  }
}

/** Ask for it: what is worked by stays until it is there. */
export async function planAnew(): Promise<void> {
  refused.value = "";
  try {
    rest.value = await send<Rest>("/api/shop/rest", { plan: rest.value?.plan ?? "" }, MOST_MS);
  } catch (error) {
    refused.value =
      error instanceof RefusedError ? error.message : "No signal: the machine at the desk plans. What was spoiled is kept.";
    void look();
  }
}

/** Follow what is spoiled and what is planned. */
export function follow(): void {
  const lost = computed(() => (now.value?.spoiled ?? []).join(" "));
  effect(() => {
    void [plans.value, book.value?.plan];
    if (lost.value === "" && rest.value?.state !== "pending") rest.value = null;
    else void look();
  });
  effect(() => {
    if (plans.value > 0) void read();
  });
}
