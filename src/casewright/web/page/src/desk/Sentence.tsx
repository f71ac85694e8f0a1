import type { Length } from "../api";
import { ask } from "./asking";

const FRACTION = /(\d+)\/(\d+)/;

/** Words with the lengths in them: each can be asked why. */
export type Sentence = readonly (string | Length)[];

export function Said({ words }: { words: Sentence }) {
  return <>{words.map((each) => (typeof each === "string" ? each : <Asked length={each} />))}</>;
}

function Asked({ length }: { length: Length }) {
  const { text, path } = length;
  const [before, over, under, after] = text.split(FRACTION);
  const act = (event: Event) => ask(path, event.currentTarget as Element);
  return (
    <data
      class="measure"
      value={text}
      data-path={path}
      role="button"
      tabIndex={0}
      aria-label={`${text}: why`}
      onClick={act}
      onKeyDown={(event) => event.key === "Enter" && act(event)}
    >
      {over === undefined ? before : before?.trimEnd()}
      {over !== undefined && (
        <span class="stack">
          <sup>{over}</sup>/<sub>{under}</sub>
        </span>
      )}
      {after}
    </data>
  );
}

/** A sentence that begins with a capital. */
export function capital(words: Sentence): Sentence {
  const [first, ...rest] = words;
  return typeof first === "string" ? [first.charAt(0).toUpperCase() + first.slice(1), ...rest] : words;
}

/** Several sentences as one. */
export function joined(between: string, sentences: readonly Sentence[]): Sentence {
  return sentences.flatMap((each, n) => (n > 0 ? [between, ...each] : each));
}
