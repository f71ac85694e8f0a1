import { useSignal } from "@preact/signals";
import { Ask } from "./Ask";
import { parts } from "./book";
import { takeBack, write } from "./outbox";
import { isSpoiled, tickState } from "./ticking";
import type { Tick } from "./types";
import { plain, Words } from "./words";

const SAID = { open: "", done: "done", waiting: "done, not sent yet", doubted: "look at it: not taken yet" };
const MARK = { open: "", done: "✓", waiting: "✓", doubted: "?" };

/** Write down that something is done. */
export function tickOff(tick: Tick): void {
  write({ kind: tick.kind, words: [...tick.words], shown: tick.shown, note: tick.note }, plain(tick.label), tick.key);
}

/** Something to tick off with a thumb; ticked, it can be taken back. */
export function TickBox({ tick }: { tick: Tick }) {
  const asks = useSignal<"" | "back" | "other">("");
  const state = tickState(tick);
  const piece = tick.kind === "cut" ? parts.value.get(tick.parts[0] ?? "") : undefined;
  const isStep = tick.kind === "note" && tick.parts.length > 0;
  const wasSpoiled = state === "open" && !isStep && tick.parts.some(isSpoiled);

  function touch() {
    if (state === "open") tickOff(tick);
    else asks.value = "back";
  }

  return (
    <>
      <button type="button" class="tick" role="checkbox" aria-checked={state !== "open"} data-state={state} onClick={touch}>
        <span class="box" aria-hidden="true">
          {MARK[state]}
        </span>
        <span>
          <Words line={tick.label} />
          {SAID[state] !== "" && <small> {SAID[state]}</small>}
          {wasSpoiled && <small> spoiled: make it again</small>}
        </span>
      </button>
      {asks.value === "back" && (
        <Ask
          title={`Take back: ${plain(tick.label)}?`}
          yes="Take it back"
          no="Leave it"
          onNo={() => (asks.value = "")}
          onYes={() => (asks.value = takeBack(tick.key, plain(tick.label)) ? "" : "other")}
        >
          {piece !== undefined && (
            <a class="button" href={`/shop/part/${encodeURIComponent(piece.mark)}`} onClick={() => (asks.value = "")}>
              It was cut, and is no good: open {piece.mark}
            </a>
          )}
        </Ask>
      )}
      {asks.value === "other" && (
        <Ask
          title={isStep ? "It was ticked off at another place" : "Another device wrote it"}
          yes="Good"
          no="Close"
          onNo={() => (asks.value = "")}
          onYes={() => (asks.value = "")}
        >
          {isStep ? (
            <p>By another device, or with the last step of all this, which says that it is put together: take it back there.</p>
          ) : (
            <p>Open the part and look at what was written: it can be taken back there.</p>
          )}
        </Ask>
      )}
    </>
  );
}
