/** News from the server: one stream a tab. */
import type { Steps } from "./api";
import { isStale, mustJoin, packets, reachable, records, refresh, steps } from "./state";

let build = document.querySelector<HTMLMetaElement>('meta[name="build"]')?.content ?? "";

interface Told extends Steps {
  build?: string;
}

let stream: EventSource | undefined;
let later: ReturnType<typeof setTimeout> | undefined;

/** Listen until the page is closed; the browser joins again by itself when the stream breaks. */
export function listen(): void {
  stream?.close();
  clearTimeout(later);
  const own = new EventSource("/api/events");
  stream = own;
  own.addEventListener("steps", (event) => {
    const told = JSON.parse((event as MessageEvent<string>).data) as Told;
    if (told.build !== undefined) {
      const isOther = build !== "" && told.build !== build;
      if (isOther && location.pathname.startsWith("/shop")) isStale.value = true;
      else if (isOther) location.reload();
      else build = told.build;
    }
    const { version, drawn, checked, counted, planned } = told;
    steps.value = { version, drawn, checked, counted, planned };
    void refresh();
  });
  own.addEventListener("record", () => {
    records.value += 1;
  });
  own.addEventListener("packet", () => {
    packets.value += 1;
  });
  own.addEventListener("missed", () => void refresh());
  own.addEventListener("open", () => {
    reachable.value = true;
  });
  own.addEventListener("error", () => {
    reachable.value = false;
    if (own.readyState === EventSource.CLOSED && !mustJoin.value) later = setTimeout(listen, 2000);
  });
}
