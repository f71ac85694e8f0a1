/** The address of what is shown, kept in the browser's own history. */
import { signal } from "@preact/signals";

export const place = signal(location.pathname);
/** What the address names on its page, without the sign before it. */
export const hash = signal(named(location.hash));

function named(text: string): string {
  return decodeURIComponent(text.replace(/^#/, ""));
}

function show(): void {
  place.value = location.pathname;
  hash.value = named(location.hash);
}

addEventListener("popstate", show);

/** Show another place. */
export function go(to: string): void {
  const from = location.pathname;
  if (to !== from + location.hash) history.pushState(null, "", to);
  show();
  if (location.pathname !== from && location.hash === "") scrollTo(0, 0);
  else document.getElementById(hash.value)?.scrollIntoView();
}

/** Lets links of the page itself change the place without loading anew. */
export function followLinks(root: HTMLElement): void {
  root.addEventListener("click", (event) => {
    const link = (event.target as Element).closest("a");
    const plain = event.button === 0 && !event.metaKey && !event.ctrlKey && !event.shiftKey;
    if (link === null || !plain || link.origin !== location.origin || link.target !== "") return;
    if (link.hasAttribute("download") || link.pathname.startsWith("/api/")) return;
    event.preventDefault();
    go(link.pathname + link.hash);
  });
}

/** The steps of the place: ["cases", "sink"]. */
export function steps(): string[] {
  return place.value.split("/").filter(Boolean).map(decodeURIComponent);
}
