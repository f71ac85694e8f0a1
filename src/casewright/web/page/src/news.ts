/** News from the server: one stream a tab. */
import type { Steps } from "./api";
import { isStale, mustJoin, packets, plans, reachable, records, refresh, steps } from "./state";

let build = document.querySelector<HTMLMetaElement>('meta[name="build"]')?.content ?? "";

interface Told extends Steps {
  build?: string;
}

/** The server says something every 5 s: one that is silent for so long is out of reach [ms]. */
const SILENT_MS = 12_000;

let heard = 0;
let stream: EventSource | undefined;
let later: ReturnType<typeof setTimeout> | undefined;

const inShop = () => location.pathname.startsWith("/shop");

/** Listen until the page is closed; the browser joins again by itself when the stream breaks. */
export function listen(): void {
  stream?.close();
  clearTimeout(later);
  const own = new EventSource("/api/events");
  stream = own;
  heard = Date.now();
  own.addEventListener("steps", (event) => {
    const told = JSON.parse((event as MessageEvent<string>).data) as Told;
    if (told.build !== undefined) {
      const isOther = build !== "" && told.build !== build;
      if (isOther && inShop()) isStale.value = true;
      else if (isOther) location.reload();
      else build = told.build;
    }
    const { version, drawn, checked, counted, planned } = told;
    steps.value = { version, drawn, checked, counted, planned };
    if (!inShop()) void refresh();
  });
  own.addEventListener("record", () => {
    records.value += 1;
  });
  for (const any of ["open", "steps", "record", "plan", "packet", "missed", "beat"]) {
    own.addEventListener(any, () => {
      heard = Date.now();
    });
  }
  own.addEventListener("plan", () => {
    plans.value += 1;
  });
  own.addEventListener("packet", () => {
    packets.value += 1;
  });
  own.addEventListener("missed", () => {
    records.value += 1;
    plans.value += 1;
    void refresh();
  });
  own.addEventListener("open", () => {
    reachable.value = true;
    records.value += 1; // what was told while nobody listened
  });
  own.addEventListener("error", () => {
    reachable.value = false;
    if (own.readyState === EventSource.CLOSED && !mustJoin.value) later = setTimeout(listen, 2000);
  });
}

/** A connection that the network lost without a word is begun anew; a page that was asleep looks first. */
function check(): void {
  if (stream === undefined || mustJoin.value || Date.now() - heard < SILENT_MS) return;
  reachable.value = false;
  listen();
}

setInterval(check, 3000);
addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible") check();
});
