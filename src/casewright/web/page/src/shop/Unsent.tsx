import { useSignal } from "@preact/signals";
import { reachable } from "../state";
import { Ask } from "./Ask";
import { again, confirm, discard, elsewhere, troubled, unsent, type Waiting } from "./outbox";

/** What is not in the record yet, and what to do about it. */
export function Unsent() {
  const all = [...troubled.value, ...unsent.value];
  return (
    <article aria-labelledby="card">
      <h1 id="card">{all.length === 0 ? "All is sent" : `${all.length} not in the record yet`}</h1>
      {!reachable.value && (
        <p class="stop">
          <strong>No signal.</strong> All goes on here and is sent when there is one. Only do not load this page again: that
          needs a signal. Should it be gone, open its address anew or go back to it.
        </p>
      )}
      {elsewhere.value.length > 0 && (
        <p class="stop">
          <strong>Another job.</strong> {elsewhere.value.length} of them belong to a job that is not served here now. They
          stay on this phone and are sent when it is.
        </p>
      )}
      {all.map((each) => (
        <One key={each.entry.id} each={each} />
      ))}
    </article>
  );
}

function One({ each }: { each: Waiting }) {
  const asks = useSignal(false);
  const word = { waiting: "waits for a signal", doubted: "hard to believe", refused: "not taken", kept: "kept" }[each.state];
  return (
    <section class="waiting" data-state={each.state}>
      <p>
        <strong>{each.label}</strong>: {word}
      </p>
      {each.says.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {each.want !== "" && <p class="soft">{each.want}</p>}
      <div class="pair">
        {each.state !== "waiting" && (
          <button type="button" onClick={() => (asks.value = true)}>
            Take it out
          </button>
        )}
        {each.state === "doubted" && (
          <button type="button" class="firm" onClick={() => confirm(each)}>
            It is so
          </button>
        )}
        {each.state === "refused" && (
          <button type="button" class="firm" onClick={() => again(each)}>
            Send again
          </button>
        )}
      </div>
      {asks.value && (
        <Ask title={`Take out: ${each.label}?`} yes="Take it out" no="Keep it" onNo={() => (asks.value = false)} onYes={() => discard(each)}>
          <p>The record never took it.</p>
        </Ask>
      )}
    </section>
  );
}
