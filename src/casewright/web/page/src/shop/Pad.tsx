import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { Ask } from "./Ask";
import { book, now } from "./book";
import { about, fraction, millimetres, type Typed, written } from "./lengths";
import { sent, write } from "./outbox";
import type { Reading } from "./types";
import { Size, Words } from "./words";

const NOTHING: Typed = { whole: "", part: 0 };

/** A number that is read, with its entry by thumb. */
export function ReadingBox({ reading }: { reading: Reading }) {
  const isOpen = useSignal(false);
  const read = now.value?.read[reading.path] ?? (reading.read.length > 0 ? reading.read : null);
  return (
    <section class="reading" aria-label={reading.label}>
      <p>
        <strong>{reading.label}</strong>, planned <Words line={reading.planned} />
        {read !== null && (
          <>
            , read <Words line={read} />
          </>
        )}
      </p>
      {isOpen.value ? (
        <Pad reading={reading} onDone={() => (isOpen.value = false)} />
      ) : (
        <button type="button" class="wide" onClick={() => (isOpen.value = true)}>
          {read === null ? "Enter a reading" : "Read again"}
        </button>
      )}
    </section>
  );
}

/** What is added to the sixteenths: a steel rule is read closer than a tape [1/64 in]. */
const FINER: Record<string, number[]> = { "steel rule": [2, 1] };

/** Whole inches, then sixteenths and what is finer; with a calliper or in millimetres plain figures. */
function Pad({ reading, onDone }: { reading: Reading; onDone: () => void }) {
  const unit = book.value?.unit ?? "in";
  const typed = useSignal<Typed>(NOTHING);
  const doubt = useSignal("");
  const isMend = useSignal(false);
  const isPlain = unit === "mm" || reading.tool === "calliper";
  const text = written(typed.value);
  const key = `reading:${reading.path}`;
  const own = sent.value.findLast((each) => each.key === key);

  const pad = useRef<HTMLDivElement>(null);
  useEffect(() => pad.current?.scrollIntoView({ block: "nearest" }), []);

  function figure(sign: string) {
    const { whole, part } = typed.value;
    if (sign === "⌫") typed.value = part > 0 ? { whole, part: 0 } : { whole: whole.slice(0, -1), part };
    else if (sign !== "." || !whole.includes(".")) typed.value = { whole: (whole + sign).slice(0, 8), part };
  }

  function keepIt(sure: boolean) {
    const corrects = isMend.value && own !== undefined ? own.id : "";
    write({ kind: "reading", words: [reading.path, text], tool: reading.tool, sure, corrects }, `${reading.label} ${text}`, key);
    onDone();
  }

  function check() {
    const size = millimetres(typed.value, unit);
    if (Number.isNaN(size)) return;
    const planned = Number(reading.planned_mm);
    if (size >= Number(reading.low) && size <= Number(reading.high)) keepIt(false);
    else doubt.value = `${about(Math.abs(size - planned), unit)} ${size > planned ? "over" : "under"}`;
  }

  return (
    <div class="pad" ref={pad}>
      <output class="typed" aria-label="reading so far">
        {text === "" ? "–" : <Size text={text} />}
      </output>
      <div class="keys" role="group" aria-label={isPlain ? "figures" : "whole inches"}>
        {["1", "2", "3", "4", "5", "6", "7", "8", "9", isPlain ? "." : "", "0", "⌫"].map((sign) =>
          sign === "" ? (
            <span key="none" />
          ) : (
            <button type="button" key={sign} onClick={() => figure(sign)} aria-label={sign === "⌫" ? "take the last one off" : sign}>
              {sign}
            </button>
          ),
        )}
      </div>
      {!isPlain && (
        <div class="sixteenths" role="group" aria-label="sixteenths">
          {Array.from({ length: 16 }, (_, n) => (
            <button
              type="button"
              key={n}
              aria-pressed={Math.floor(typed.value.part / 4) === n}
              onClick={() => (typed.value = { ...typed.value, part: 4 * n })}
            >
              {n === 0 ? "even" : <Size text={fraction(4 * n)} />}
            </button>
          ))}
          {(FINER[reading.tool] ?? [2]).map((finer) => (
            <button
              type="button"
              key={finer}
              class="finer"
              aria-pressed={(typed.value.part & finer) !== 0}
              onClick={() => (typed.value = { ...typed.value, part: typed.value.part ^ finer })}
            >
              and <Size text={fraction(finer)} />
            </button>
          ))}
        </div>
      )}
      {own !== undefined && (
        <label class="mend">
          <input type="checkbox" checked={isMend.value} onChange={(event) => (isMend.value = event.currentTarget.checked)} />
          It puts right what I wrote before
        </label>
      )}
      <div class="pair">
        <button type="button" onClick={onDone}>
          Leave it
        </button>
        <button type="button" class="firm" disabled={text === ""} onClick={check}>
          Write it down
        </button>
      </div>
      {doubt.value !== "" && (
        <Ask title="Hard to believe" yes="It is so" no="Measure again" onNo={() => (doubt.value = "")} onYes={() => keepIt(true)}>
          <p class="big-words">
            <Size text={text} /> is <Size text={doubt.value} /> what is expected: <Words line={reading.planned} />
          </p>
        </Ask>
      )}
    </div>
  );
}
