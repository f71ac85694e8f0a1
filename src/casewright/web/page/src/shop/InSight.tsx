/** The card in sight stays what it was when the person came to it: nothing on it is swapped unseen. */
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { CardView } from "./CardView";
import { build, keep, kept, type Shaped } from "./keeping";
import type { Card, Line } from "./types";
import { plain } from "./words";

const last = kept<Shaped<Card>>("card");
const inSight = signal<Card | null>(last?.build === build ? last.kept : null);

function see(card: Card): void {
  inSight.value = card;
  keep("card", { build, kept: card } satisfies Shaped<Card>);
}

/** A card as it lay open, though the book has it no more. */
export function heldCard(id: string): Card | undefined {
  return inSight.value?.id === id ? inSight.value : undefined;
}

const GONE: Record<string, string> = {
  saw: "It is not in the plan of cuts any more: a size is another by now, or the rest was planned anew. Set and cut nothing by it; what is cut already can be ticked off here.",
  holds: "Nothing waits for it any more.",
};
const OTHER = "What is to be done is another by now. What is done already can be ticked off here.";

/** A card, and what became of it since it was opened; `goesOn`: where it does, of one that is gone. */
export function InSight({ card, goesOn }: { card: Card; goesOn?: string }) {
  const isGone = goesOn !== undefined;
  const seen = heldCard(card.id);
  useEffect(() => {
    if (!isGone && seen === undefined) see(card);
  }, [card.id, isGone]);
  const [was, is] = seen === undefined || isGone ? [[], []] : [missing(seen, card), missing(card, seen)];
  return (
    <>
      {isGone && (
        <div class="stop stays" role="alert">
          <strong>Look.</strong> {GONE[card.station] ?? OTHER}
          <a class="button firm" href={goesOn === "" ? "/shop" : `/shop/${card.station}/${encodeURIComponent(goesOn)}`}>
            Where the work goes on
          </a>
        </div>
      )}
      {was.length + is.length > 0 && (
        <div class="stop stays" role="alert">
          <div class="pair">
            <span>
              <strong>Changed</strong> since it was opened:
            </span>
            <button type="button" onClick={() => see(card)}>
              I have seen it
            </button>
          </div>
          <Changes was={was} is={is} />
        </div>
      )}
      <CardView key={card.id} card={card} />
    </>
  );
}

const MOST = 4;

/** What was said and what is said now, side by side where one took the place of the other. */
function Changes({ was, is }: { was: string[]; is: string[] }) {
  const arePairs = was.length === is.length;
  const lines = arePairs ? was.map((line, n) => `${line} → ${is[n]}`) : [...was.map((line) => `no more: ${line}`), ...is.map((line) => `now: ${line}`)];
  return (
    <ul>
      {lines.slice(0, MOST).map((line) => (
        <li key={line}>{line}</li>
      ))}
      {lines.length > MOST && <li>and more: look at all of it again</li>}
    </ul>
  );
}

/** What one card says that another does not. */
function missing(from: Card, other: Card): string[] {
  const there = new Set(said(other));
  return [...new Set(said(from))].filter((line) => !there.has(line));
}

/** All that is set, cut or bored by a card, clause by clause; not what is ticked on it, nor what it waits for. */
function said(card: Card): string[] {
  const set = (lead: string, big: Line) => (big.length > 0 ? [`${lead} ${plain(big)}`.trim()] : []);
  const rows = card.rows.flatMap((row) => [
    `${row.label} ${plain(row.what)}`,
    ...set(`${row.label} ${row.lead}`, row.big),
    ...row.lines.map(plain),
  ]);
  const lines = [card.title, ...set(card.lead, card.big), ...card.lines.map(plain), ...rows];
  return lines.flatMap((line) => line.replace(/\.$/, "").split(/; |\. /));
}
