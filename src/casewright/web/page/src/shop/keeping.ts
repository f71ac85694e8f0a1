/** What the phone keeps by itself: small things in local storage, the book and drawings in a database. */

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
  try {
    localStorage.setItem(PREFIX + name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

export function drop(name: string): void {
  localStorage.removeItem(PREFIX + name);
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
