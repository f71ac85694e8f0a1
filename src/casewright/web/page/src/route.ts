/** The address of what is shown, kept in the browser's own history. */
import { signal } from "@preact/signals";

export const place = signal(location.pathname);

addEventListener("popstate", () => {
  place.value = location.pathname;
});

/** Show another place. */
export function go(to: string): void {
  if (to !== location.pathname) history.pushState(null, "", to);
  place.value = new URL(to, location.origin).pathname;
  scrollTo(0, 0);
}

/** Lets links of the page itself change the place without loading anew. */
export function followLinks(root: HTMLElement): void {
  root.addEventListener("click", (event) => {
    const link = (event.target as Element).closest("a");
    const plain = event.button === 0 && !event.metaKey && !event.ctrlKey && !event.shiftKey;
    if (link === null || !plain || link.origin !== location.origin || link.target !== "") return;
    if (link.hasAttribute("download") || link.pathname.startsWith("/api/")) return;
    event.preventDefault();
    go(link.pathname);
  });
}

/** The steps of the place: ["cases", "sink"]. */
export function steps(): string[] {
  return place.value.split("/").filter(Boolean).map(decodeURIComponent);
}
