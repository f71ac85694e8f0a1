/** News from the server: one stream a tab. */
import type { Steps } from "./api";
import { isStale, packets, reachable, records, refresh, steps } from "./state";

let build = document.querySelector<HTMLMetaElement>('meta[name="build"]')?.content ?? "";

interface Told extends Steps {
  build?: string;
}

/** Listen until the page is closed; the browser joins again by itself when the stream breaks. */
export function listen(): void {
  const stream = new EventSource("/api/events");
  stream.addEventListener("steps", (event) => {
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
  stream.addEventListener("record", () => {
    records.value += 1;
  });
  stream.addEventListener("packet", () => {
    packets.value += 1;
  });
  stream.addEventListener("missed", () => void refresh());
  stream.addEventListener("open", () => {
    reachable.value = true;
  });
  stream.addEventListener("error", () => {
    reachable.value = false;
    if (stream.readyState === EventSource.CLOSED) setTimeout(listen, 2000);
  });
}
