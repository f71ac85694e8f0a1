/**
 * Entries on their way to the record. Each is kept on the phone under an id of its own before it is
 * sent and until the server has said that it is there: none is lost, and sent twice it counts once.
 */
import { computed, signal } from "@preact/signals";
import { type EntryAnswer, type EntryIn, RefusedError, send, UnreachableError } from "../api";
import { mustJoin, reachable } from "../state";
import { book, look, now } from "./book";
import { drop, keep, kept, namesOf, newId } from "./keeping";

/** An entry that waits: to be sent, or for a person to decide. */
export interface Waiting {
  entry: EntryIn;
  home: string;
  /** What it ticks, so that the tick is shown at once. */
  key: string;
  /** What it takes back. */
  undoes: string;
  label: string;
  order: number;
  /** Kept: the record has it; until what the record says was heard, it ticks what it ticks. */
  state: "waiting" | "doubted" | "refused" | "kept";
  says: string[];
  want: string;
}

/** An entry that the record holds, so that it can be taken back from here. */
export interface Sent {
  id: string;
  key: string;
}

const OUT = "out.";
const BATCH = 50;
const REMEMBERED = 300;

export const outbox = signal<Waiting[]>(load());
export const sent = signal<Sent[]>(kept<Sent[]>("sent") ?? []);
/** What the phone could not keep: it must not be closed before it is sent. */
export const isFull = signal(false);

export const here = computed(() => now.value?.home ?? book.value?.home ?? "");
export const unsent = computed(() => outbox.value.filter((each) => each.state === "waiting"));
export const troubled = computed(() => outbox.value.filter((each) => each.state === "doubted" || each.state === "refused"));
/** Entries that were made for another job than the one that is served. */
export const elsewhere = computed(() => [...unsent.value, ...troubled.value].filter((each) => here.value !== "" && each.home !== here.value));

function load(): Waiting[] {
  const found = namesOf(OUT).map((name) => kept<Waiting>(name));
  return found.filter((each) => each !== null).sort((one, other) => one.order - other.order);
}

function put(each: Waiting): void {
  isFull.value = !keep(OUT + each.entry.id, each);
  const others = outbox.value.filter((other) => other.entry.id !== each.entry.id);
  outbox.value = [...others, each].sort((one, other) => one.order - other.order);
}

function take(id: string): void {
  drop(OUT + id);
  outbox.value = outbox.value.filter((each) => each.entry.id !== id);
}

export function device(): string {
  const known = kept<string>("device");
  if (known !== null && known !== "") return known;
  const made = `phone ${newId().slice(0, 4)}`;
  keep("device", made);
  return made;
}

type Said = Partial<EntryIn> & { kind: string; words: string[] };

/** Write something down: it is kept here at once, and sent as soon as that can be done. */
export function write(said: Said, label: string, key = "", undoes = ""): string {
  const plain = { size: "", tool: "", within: "", note: "", corrects: "", sure: false, shown: "" };
  const entry: EntryIn = { ...plain, ...said, id: newId(), device: device() };
  const last = outbox.value.at(-1)?.order ?? 0;
  const order = Math.max(Date.now(), last + 1);
  put({ entry, home: here.value, key, undoes, label, order, state: "waiting", says: [], want: "" });
  void flush();
  return entry.id;
}

/** It is so: send again what was hard to believe. */
export function confirm(each: Waiting): void {
  put({ ...each, entry: { ...each.entry, sure: true }, state: "waiting", says: [], want: "" });
  void flush();
}

/** Send again what was refused: the job may have changed meanwhile. */
export function again(each: Waiting): void {
  put({ ...each, state: "waiting", says: [], want: "" });
  void flush();
}

/** Take something out that the record never took. */
export function discard(each: Waiting): void {
  take(each.entry.id);
}

/**
 * Take back what was ticked here: out of the outbox where it never left it, else by a withdrawal.
 * False where this phone did not write it.
 */
export function takeBack(key: string, label: string): boolean {
  const own = outbox.value.find((each) => each.key === key);
  if (own !== undefined && !tried.has(own.entry.id)) {
    take(own.entry.id);
    return true;
  }
  const id = own?.entry.id ?? sent.value.findLast((each) => each.key === key)?.id;
  if (id === undefined) return false;
  write({ kind: "withdrawn", words: [], corrects: id }, `Taken back: ${label}`, "", key);
  return true;
}

/** Take back an entry of anybody by its id in the record. */
export function withdraw(id: string, label: string, key: string): void {
  write({ kind: "withdrawn", words: [], corrects: id }, `Taken back: ${label}`, "", key);
}

const tried = new Set<string>(namesOf(OUT).map((name) => name.slice(OUT.length)));
let sending = false;
let pause = 1000;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Send what waits, in its order; what does not get through is tried again, later and later. */
export async function flush(): Promise<void> {
  if (sending) return;
  sending = true;
  clearTimeout(timer);
  let through = true;
  let size = BATCH;
  try {
    for (let batch = next(size); batch.length > 0 && through; batch = next(size)) {
      const became = await post(batch);
      if (became === "apart") size = 1;
      through = became !== "no answer";
    }
  } finally {
    sending = false;
  }
  if (!through) {
    timer = setTimeout(() => void flush(), pause);
    pause = Math.min(pause * 2, 30_000);
  } else if (pause !== 1000) {
    pause = 1000;
  }
}

/** What goes next: of this job only, and in a stale home nothing. */
function next(size: number): Waiting[] {
  return unsent.value.filter((each) => each.home === here.value || each.home === "").slice(0, size);
}

async function post(batch: Waiting[]): Promise<"done" | "apart" | "no answer"> {
  for (const each of batch) tried.add(each.entry.id);
  try {
    const answers = await send<EntryAnswer[]>("/api/entries", batch.map((each) => each.entry), 20_000);
    reachable.value = true;
    const there = new Set(answers.filter((answer) => !settle(batch, answer)).map((answer) => answer.id));
    for (const id of there) drop(OUT + id);
    outbox.value = outbox.value.map((each) => (there.has(each.entry.id) ? { ...each, state: "kept" } : each));
    void look().then(() => there.forEach(take)); // what comes next is not kept waiting
    return "done";
  } catch (error) {
    if (error instanceof RefusedError && error.status === 401) mustJoin.value = true;
    if (error instanceof UnreachableError) reachable.value = false;
    if (!(error instanceof RefusedError) || error.status !== 422) return "no answer";
    if (batch.length > 1) return "apart";
    for (const each of batch) {
      put({ ...each, state: "refused", says: [error.refusal.what], want: error.refusal.want });
    }
    return "done";
  }
}

/** What became of an entry; whether a person must look at it. */
function settle(batch: Waiting[], answer: EntryAnswer): boolean {
  const own = batch.find((each) => each.entry.id === answer.id);
  if (own === undefined) return true;
  if (answer.became === "doubted" || answer.became === "refused") {
    put({ ...own, state: answer.became, says: answer.says, want: answer.want });
    return true;
  }
  if (own.key !== "") {
    sent.value = [...sent.value, { id: answer.id, key: own.key }].slice(-REMEMBERED);
    keep("sent", sent.value);
  }
  return false;
}

addEventListener("online", () => {
  pause = 1000;
  void flush();
});
addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible") {
    pause = 1000;
    void flush();
    void look();
  }
});
addEventListener("storage", () => {
  outbox.value = [...load(), ...outbox.value.filter((each) => each.state === "kept")];
  sent.value = kept<Sent[]>("sent") ?? [];
});
