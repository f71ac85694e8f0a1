/** The book of cards and what the record says: kept on the phone, asked for again when there is news. */
import { computed, signal } from "@preact/signals";
import { ask, askText, RefusedError, UnreachableError } from "../api";
import { mustJoin, reachable } from "../state";
import { build, fetched, keep, kept, type Shaped, store } from "./keeping";
import type { Book, Card, Now, Part } from "./types";

export const book = signal<Book | null>(null);
export const now = signal<Now | null>(kept<Now>("now"));
/** Whether the book kept on the phone was looked for. */
export const looked = signal(false);

export const cards = computed(() => new Map<string, Card>(book.value?.cards.map((card) => [card.id, card]) ?? []));
export const parts = computed(() => new Map<string, Part>(book.value?.parts.map((part) => [part.path, part]) ?? []));

/** The book as it was kept, at once; then what is new. */
export async function open(): Promise<void> {
  const found = await fetched<Shaped<Book>>("book");
  if (found?.build === build) book.value ??= found.kept;
  looked.value = true;
}

const LEAST_MS = 10_000;

function heard(error: unknown): void {
  if (error instanceof UnreachableError) reachable.value = false;
  else if (error instanceof RefusedError && error.status === 401) mustJoin.value = true;
}

let asking: Promise<void> | null = null;
let again = false;
let wake: () => void = () => undefined;

/**
 * Ask for what the record says, until it was heard; a wish while one is under way is one more ask
 * after it.
 */
export function look(): Promise<void> {
  again = true;
  wake();
  asking ??= heardOut().finally(() => {
    asking = null;
  });
  return asking;
}

async function heardOut(): Promise<void> {
  for (let pause = 1000; again; ) {
    again = false;
    try {
      const found = await ask<Now>("/api/shop/now", LEAST_MS);
      now.value = found;
      keep("now", found);
      reachable.value = true;
    } catch (error) {
      heard(error);
      if (!(error instanceof UnreachableError)) return;
      again = true;
      await rest(pause);
      pause = Math.min(pause * 2, 15_000);
    }
  }
}

/** Wait so long, or until somebody wishes to know. */
function rest(milliseconds: number): Promise<void> {
  return new Promise((done) => {
    const timer = setTimeout(done, milliseconds);
    wake = () => {
      clearTimeout(timer);
      done();
    };
  });
}

let reading = false;
let readAgain = false;

/** Ask for the book, unless the one kept is the newest. */
export async function read(): Promise<void> {
  if (reading) {
    readAgain = true;
    return;
  }
  reading = true;
  do {
    readAgain = false;
    try {
      const have = book.value?.stamp ?? "";
      const text = await askText(`/api/shop?have=${have}`, 90_000);
      if (text !== "") {
        const found = JSON.parse(text) as Book;
        book.value = found;
        await store("book", { build, kept: found } satisfies Shaped<Book>);
      }
    } catch (error) {
      heard(error);
    }
  } while (readAgain);
  reading = false;
}

/** A drawing kept with the stamp of the book that it was asked for with. */
interface Drawn {
  stamp: string;
  svg: string;
}

const drawn = new Map<string, Drawn>();

/** A drawing by its name, as kept and then as it is now. */
export async function drawing(name: string, show: (svg: string, current: boolean) => void): Promise<void> {
  const stamp = book.value?.stamp ?? "";
  const known = drawn.get(name) ?? (await fetched<Drawn>(`drawing ${name}`));
  if (known !== undefined) {
    drawn.set(name, known);
    show(known.svg, known.stamp === stamp);
    if (known.stamp === stamp) return;
  }
  try {
    const svg = await askText(`/api/shop/drawings/${encodeURIComponent(name)}`, 30_000);
    drawn.set(name, { stamp, svg });
    await store(`drawing ${name}`, { stamp, svg });
    show(svg, true);
  } catch (error) {
    heard(error);
  }
}

let ahead: string[] = [];
let walking = false;

/** Ask for drawings before they are needed, one after another, the next ones first. */
export function lookAhead(names: string[]): void {
  ahead = names.filter((name) => drawn.get(name)?.stamp !== book.value?.stamp);
  if (walking) return;
  walking = true;
  void (async () => {
    for (let name = ahead.shift(); name !== undefined && reachable.value; name = ahead.shift()) {
      await drawing(name, () => undefined);
    }
    walking = false;
  })();
}
