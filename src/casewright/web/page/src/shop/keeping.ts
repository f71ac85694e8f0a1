/**
 * What the phone keeps by itself: small things in local storage, the book and drawings in a database.
 *
 * Local storage reaches the disk seconds later: a browser that the phone ends meanwhile would lose a
 * tick. So small things stand in the database too, which has them on the disk at once; when the page
 * is loaded they are taken from there.
 */

const PREFIX = "casewright.";

/** Of this page: what another build of it kept may have another shape. */
export const build = document.querySelector<HTMLMetaElement>('meta[name="build"]')?.content ?? "";

/** Something as this build of the page knows it. */
export interface Shaped<T> {
  build: string;
  kept: T;
}

/** Something kept, or null where there is nothing or it cannot be read. */
export function kept<T>(name: string): T | null {
  try {
    const text = localStorage.getItem(PREFIX + name);
    return text === null ? null : (JSON.parse(text) as T);
  } catch {
    return null;
  }
}

/** Keep something; whether it was kept. */
export function keep(name: string, value: unknown): boolean {
  const text = JSON.stringify(value);
  void written((small) => small.put(text, SMALL + name));
  try {
    localStorage.setItem(PREFIX + name, text);
    return true;
  } catch {
    return false;
  }
}

export function drop(name: string): void {
  localStorage.removeItem(PREFIX + name);
  void written((small) => small.delete(SMALL + name));
}

/** Names that begin so, in no order. */
export function namesOf(start: string): string[] {
  const found: string[] = [];
  for (let n = 0; n < localStorage.length; n += 1) {
    const key = localStorage.key(n);
    if (key?.startsWith(PREFIX + start) === true) found.push(key.slice(PREFIX.length));
  }
  return found;
}

/** 32 hexadecimal signs. Plain http has no randomUUID. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((each) => each.toString(16).padStart(2, "0")).join("");
}

let opened: Promise<IDBDatabase> | null = null;

function database(): Promise<IDBDatabase> {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open("casewright-shop", 1);
    request.onupgradeneeded = () => request.result.createObjectStore("kept");
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("no database"));
  });
  return opened;
}

/** Something large that was kept; undefined where there is nothing. */
export async function fetched<T>(key: string): Promise<T | undefined> {
  try {
    const store = (await database()).transaction("kept").objectStore("kept");
    return await new Promise((resolve) => {
      const request = store.get(key);
      request.onsuccess = () => resolve(request.result as T | undefined);
      request.onerror = () => resolve(undefined);
    });
  } catch {
    return undefined;
  }
}

/** Keep something large; a phone without room goes on without it. */
export async function store(key: string, value: unknown): Promise<void> {
  try {
    (await database()).transaction("kept", "readwrite").objectStore("kept").put(value, key);
  } catch {
    // nothing is lost by it but going on without a signal
  }
}

/** Small things in the database; what is written there is on the disk before anything else is. */
const SMALL = "small ";

async function written(work: (small: IDBObjectStore) => void): Promise<void> {
  try {
    work((await database()).transaction("kept", "readwrite", { durability: "strict" }).objectStore("kept"));
  } catch {
    // local storage has it
  }
}

/** Put back into local storage what the database has: it is never older. */
async function putBack(): Promise<void> {
  const small = (await database()).transaction("kept").objectStore("kept");
  const range = IDBKeyRange.bound(SMALL, `${SMALL}\uffff`);
  await new Promise<void>((done) => {
    const request = small.openCursor(range);
    request.onerror = () => done();
    request.onsuccess = () => {
      const cursor = request.result;
      if (cursor === null) return done();
      localStorage.setItem(PREFIX + String(cursor.key).slice(SMALL.length), String(cursor.value));
      cursor.continue();
    };
  });
}

/** No database holds the page up for longer [ms]. */
const PATIENCE_MS = 2000;

await Promise.race([putBack().catch(() => undefined), new Promise((done) => setTimeout(done, PATIENCE_MS))]);
