import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { ask, type LayoutView } from "../api";
import { steps } from "../state";
import { leave } from "./asking";
import { putAnswer } from "./Drawing";
import { attempt, edit, wordsOf } from "./saying";
import { joined, Said, type Sentence } from "./Sentence";

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
        <Against key={textOf(each.what)} what={each.what} reliefs={each.reliefs} />
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
          <Shown key={each.number} of={of} answer={each} take={take} />
        ))}
      </div>
      <button type="button" onClick={() => (view.value = null)}>
        Leave it as it is
      </button>
    </section>
  );
}

/** What stands against every answer; each of what would help does by itself. */
function Against({ what, reliefs }: { what: Sentence; reliefs: readonly Sentence[] }) {
  return (
    <div class="against">
      <p class="refused">
        <Said words={what} />
      </p>
      {reliefs.length > 0 && (
        <>
          <p>One of these would do:</p>
          <ul>
            {reliefs.map((each) => (
              <li key={textOf(each)}>
                <Said words={each} />
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

function textOf(words: Sentence): string {
  return words.map((each) => (typeof each === "string" ? each : each.text)).join("");
}

function Shown({ of, answer, take }: { of: string; answer: Answer; take: (number: number) => void }) {
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    const inside = box.current;
    return () => {
      if (inside !== null) leave(inside);
    };
  }, []);
  return (
    <article ref={box}>
      <h3>Answer {answer.number}</h3>
      <p>
        <b>
          <Said words={joined(", ", answer.sizes)} />
        </b>
      </p>
      <Picture of={of} answer={answer} />
      <p>
        <Said words={joined("; ", answer.trade)} />.
      </p>
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

/** How an answer looks: put in once, so that what is touched in it stays where it is. */
function Picture({ of, answer }: { of: string; answer: Answer }) {
  const sheet = useRef<HTMLDivElement>(null);
  const { number, drawing } = answer;
  useEffect(() => {
    if (sheet.current !== null) putAnswer(sheet.current, drawing, { of, number });
  }, [of, number, drawing]);
  return <div class="sheet small" role="group" aria-label={`Answer ${number}, drawn`} ref={sheet} />;
}
