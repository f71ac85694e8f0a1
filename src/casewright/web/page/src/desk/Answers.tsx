import { useSignal } from "@preact/signals";
import { ask, type Edited, type LayoutView, send } from "../api";
import { job, steps } from "../state";
import { put } from "./Drawing";
import { attempt, wordsOf } from "./saying";

type Answer = LayoutView["answers"][number];

/** Other answers for a run, any two side by side; one of them can be taken. */
export function Answers({ run }: { run: string }) {
  const view = useSignal<LayoutView | null>(null);
  const pair = useSignal<readonly [number, number]>([1, 2]);
  const said = useSignal("");
  const stale = view.value !== null && view.value.version < steps.value.version;

  async function look() {
    said.value = "Filling the wall …";
    try {
      view.value = await ask<LayoutView>(`/api/layouts/${encodeURIComponent(run)}`);
      said.value = "";
      pair.value = [1, Math.min(2, view.value.answers.length)];
    } catch (error) {
      said.value = wordsOf(error);
    }
  }

  function take(number: number) {
    const body = { number, digest: job.value?.digest ?? "" };
    void attempt(() => send<Edited>(`/api/layouts/${encodeURIComponent(run)}`, body)).then((done) => {
      if (done) view.value = null;
    });
  }

  if (view.value === null || stale) {
    return (
      <p class="leads">
        <button type="button" onClick={() => void look()}>
          Other answers for this run
        </button>{" "}
        <span role="status">{said.value}</span>
      </p>
    );
  }
  const { answers, conflicts } = view.value;
  const shown = answers.length === 1 ? [1] : pair.value;
  return (
    <section class="answers" aria-label="Other answers">
      {conflicts.map((each) => (
        <p key={each} class="refused">
          {each}
        </p>
      ))}
      {answers.length > 2 && (
        <p class="leads">
          {answers.map(({ number }) => (
            <button
              key={number}
              type="button"
              aria-pressed={shown.includes(number)}
              onClick={() => (pair.value = [pair.value[1], number])}
              disabled={shown.includes(number)}
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

function Shown({ answer, take }: { answer: Answer; take: (number: number) => void }) {
  return (
    <article>
      <h3>Answer {answer.number}</h3>
      <div class="sheet small" ref={(into) => {
          if (into !== null) put(into, answer.drawing, null);
        }} />
      <p>{answer.trade.join("; ")}.</p>
      <p class="soft">{answer.widths.join(", ")}</p>
      <button type="button" onClick={() => take(answer.number)}>
        Take answer {answer.number}
      </button>
    </article>
  );
}
