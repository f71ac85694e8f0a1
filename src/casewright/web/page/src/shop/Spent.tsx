import { useSignal } from "@preact/signals";
import { write } from "./outbox";
import type { Card } from "./types";

const USUAL = [5, 15, 30, 60];
const MOST = 1440;

/** The case that a card is about; empty: the job as a whole. */
export function caseOf(card: Card): string {
  const cases = new Set(card.parts.map((path) => path.split(".")[0] ?? ""));
  const [only = ""] = cases;
  return cases.size === 1 && only !== "run" ? only : "";
}

/** What nobody asked for: the minutes that it took, and what was seen. */
export function Spent({ about, called }: { about: string; called: string }) {
  const isOpen = useSignal(false);
  const minutes = useSignal(0);
  const seen = useSignal("");

  function keepMinutes() {
    const words = [String(minutes.value), ...(about === "" ? [] : [about])];
    write({ kind: "minutes", words }, `${minutes.value} minutes, ${called}`);
    minutes.value = 0;
  }

  function keepNote(event: Event) {
    event.preventDefault();
    const text = seen.value.trim();
    if (text === "") return;
    write({ kind: "note", words: about === "" ? [text] : [about, text] }, `Note, ${called}: ${text}`);
    seen.value = "";
  }

  if (!isOpen.value) {
    return (
      <button type="button" class="wide" onClick={() => (isOpen.value = true)}>
        Minutes, or a note
      </button>
    );
  }
  return (
    <section class="times" aria-label="minutes, or a note">
      <p>
        Minutes spent on {called}: <output class="so-far">{minutes.value}</output>
      </p>
      <div class="keys four">
        {USUAL.map((each) => (
          <button type="button" key={each} onClick={() => (minutes.value = Math.min(MOST, minutes.value + each))}>
            +{each}
          </button>
        ))}
      </div>
      <div class="pair">
        <button type="button" disabled={minutes.value === 0} onClick={() => (minutes.value = 0)}>
          None
        </button>
        <button type="button" class="firm" disabled={minutes.value === 0} onClick={keepMinutes}>
          Write minutes down
        </button>
      </div>
      <form class="find" onSubmit={keepNote}>
        <label>
          Note about {called}
          <input autocomplete="off" maxLength={300} value={seen.value} onInput={(event) => (seen.value = event.currentTarget.value)} />
        </label>
        <button type="submit">Write the note down</button>
      </form>
    </section>
  );
}
