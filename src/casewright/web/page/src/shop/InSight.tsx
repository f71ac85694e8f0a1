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
export function heldCard(id: string | undefined): Card | undefined {
  return id !== undefined && inSight.value?.id === id ? inSight.value : undefined;
}

const GONE: Record<string, string> = {
  saw: "It is not in the plan of cuts any more: a size is another by now, or the rest was planned anew. Set and cut nothing by it; what is cut already can be ticked off here.",
  holds: "Nothing waits for it any more.",
};
const OTHER = "What is to be done is another by now. What is done already can be ticked off here.";

/** A card, and what became of it since it was opened. */
export function InSight({ card, isGone }: { card: Card; isGone: boolean }) {
  const seen = heldCard(card.id);
  useEffect(() => {
    if (!isGone && seen === undefined) see(card);
  }, [card.id, isGone]);
  const [was, is] = seen === undefined || isGone ? [[], []] : [missing(seen, card), missing(card, seen)];
  return (
    <>
      {isGone && (
        <div class="stop" role="alert">
          <strong>Look.</strong> {GONE[card.station] ?? OTHER}
          <a class="button firm" href={`/shop/${card.station}`}>
            Where the work goes on
          </a>
        </div>
      )}
      {was.length + is.length > 0 && (
        <div class="stop" role="alert">
          <strong>Changed</strong> since this card was opened.
          <Told word="Was" lines={was} />
          <Told word="Now" lines={is} />
          <button type="button" onClick={() => see(card)}>
            I have seen it
          </button>
        </div>
      )}
      <CardView key={card.id} card={card} />
    </>
  );
}

const MOST = 6;

function Told({ word, lines }: { word: string; lines: string[] }) {
  if (lines.length === 0) return null;
  return (
    <p>
      {word}: {lines.slice(0, MOST).join("; ")}
      {lines.length > MOST ? "; …" : ""}
    </p>
  );
}

/** What one card says that another does not. */
function missing(from: Card, other: Card): string[] {
  const there = new Set(said(other));
  return [...new Set(said(from))].filter((line) => !there.has(line));
}

/** All that is set, cut or bored by a card, line by line; not what is ticked on it, nor what it waits for. */
function said(card: Card): string[] {
  const set = (lead: string, big: Line) => (big.length > 0 ? [`${lead} ${plain(big)}`.trim()] : []);
  const rows = card.rows.flatMap((row) => [
    `${row.label} ${plain(row.what)}`,
    ...set(`${row.label} ${row.lead}`, row.big),
    ...row.lines.map(plain),
  ]);
  return [card.title, ...set(card.lead, card.big), ...card.lines.map(plain), ...rows];
}
