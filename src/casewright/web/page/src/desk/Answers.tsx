import { useSignal } from "@preact/signals";
import { ask, type LayoutView } from "../api";
import { steps } from "../state";
import { put } from "./Drawing";
import { attempt, edit, wordsOf } from "./saying";

type Answer = LayoutView["answers"][number];

/** Other answers for a run, an island or the heights, any two side by side; one of them can be taken. */
export function Answers({ of, words }: { of: string; words: string }) {
  const view = useSignal<LayoutView | null>(null);
  const pair = useSignal<readonly [number, number]>([1, 2]);
  const said = useSignal("");
  const stale = view.value !== null && view.value.version < steps.value.version;

  async function look() {
    said.value = "Working the answers out …";
    try {
      view.value = await ask<LayoutView>(`/api/layouts/${encodeURIComponent(of)}`);
      said.value = "";
      pair.value = [1, Math.min(2, view.value.answers.length)];
    } catch (error) {
      said.value = wordsOf(error);
    }
  }

  function take(number: number) {
    void attempt(async () => {
      await edit(`/api/layouts/${encodeURIComponent(of)}`, { number });
      view.value = null;
    });
  }

  if (view.value === null || stale) {
    return (
      <p class="leads">
        <button type="button" onClick={() => void look()}>
          {words}
        </button>{" "}
        <span role="status">{said.value}</span>
      </p>
    );
  }
  const { answers, hindrances } = view.value;
  const shown = answers.length === 1 ? [1] : pair.value;
  return (
    <section class="answers" aria-label="Other answers">
      {answers.length === 1 && <p>No answer of another kind fits.</p>}
      {hindrances.map((each) => (
        <Against key={each.what} what={each.what} reliefs={each.reliefs} />
      ))}
      {answers.length > 2 && (
        <p class="leads">
          Side by side:{" "}
          {answers.map(({ number }) => (
            <button
              key={number}
              type="button"
              aria-pressed={shown.includes(number)}
              onClick={() => !shown.includes(number) && (pair.value = [pair.value[1], number])}
            >
              answer {number}
            </button>

          ))}
        </p>
      )}
      <div class="pair">
        {shown.flatMap((number) => answers.filter((each) => each.number === number)).map((each) => (
          <Shown key={each.number} answer={each} take={take} />
        ))}
      </div>
      <button type="button" onClick={() => (view.value = null)}>
        Leave it as it is
      </button>
    </section>
  );
}

/** What stands against every answer; each of what would help does by itself. */
function Against({ what, reliefs }: { what: string; reliefs: readonly string[] }) {
  return (
    <div class="against">
      <p class="refused">{what}</p>
      {reliefs.length > 0 && (
        <>
          <p>One of these would do:</p>
          <ul>
            {reliefs.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

function Shown({ answer, take }: { answer: Answer; take: (number: number) => void }) {
  return (
    <article>
      <h3>Answer {answer.number}</h3>
      <p>
        <b>{answer.sizes.join(", ")}</b>
      </p>
      <div class="sheet small" role="img" aria-label={`Answer ${answer.number}, drawn`} ref={(into) => {
          if (into !== null) put(into, answer.drawing, null);
        }} />
      <p>{answer.trade.join("; ")}.</p>
      {answer.taken ? (
        <p>
          <b>This is what the job file says now.</b>
        </p>
      ) : (
        <button type="button" onClick={() => take(answer.number)}>
          Take answer {answer.number}
        </button>
      )}
    </article>
  );
}
