import { effect } from "@preact/signals";
import { useSignal, useSignalEffect } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { go, place, steps as placeSteps } from "../route";
import { isStale, reachable, records, steps } from "../state";
import { follow } from "./anew";
import { AnewBox, AnewTold } from "./Anew";
import { Ask } from "./Ask";
import { book, cards, look, lookAhead, open, read } from "./book";
import { Home } from "./Home";
import { heldCard, InSight } from "./InSight";
import { keep, kept } from "./keeping";
import { flush, isFull, troubled, unsent } from "./outbox";
import { PartPage } from "./PartPage";
import { Unsent } from "./Unsent";
import { isSunny } from "./theme";
import { end, left as timeLeft, over, running, stop } from "./timers";
import { isDone } from "./ticking";
import { nameOf, type Card } from "./types";
import "./shop.css";

/** Drawings that are asked for before they are needed. */
const AHEAD = 30;
let isBegun = false;

/** Follow the news: the record at once, the book when the job was worked out. */
function begin(): void {
  if (isBegun) return;
  isBegun = true;
  void open().then(() => {
    effect(() => {
      void [records.value, steps.value.drawn];
      void look();
    });
    effect(() => {
      void [steps.value.drawn, steps.value.planned];
      void read();
    });
    follow();
    effect(() => {
      if (!reachable.value) return;
      void flush();
      void read();
    });
  });
}

/** Plain http keeps no page for loading it again: without a signal that is asked about first. */
addEventListener("beforeunload", (event) => {
  if (!reachable.value && location.pathname.startsWith("/shop")) event.preventDefault();
});

/** Pages for the phone in the shop: one thing at a time. */
export function Shop() {
  useEffect(begin, []);
  const [, station, name] = placeSteps();
  const known = book.value?.stations.find((each) => each.key === station);
  useEffect(() => {
    if (name !== undefined) keep("place", place.value);
  }, [place.value]);
  return (
    <div class={isSunny.value ? "shop sun" : "shop"}>
      <Bar title={known?.title ?? (station === "part" ? "Part" : station === "unsent" ? "Not sent yet" : "The shop")} isHome={station === undefined} />
      <Banners />
      <main>{content(station, name)}</main>
      <NoSignal />
      {known !== undefined && <Steps ids={known.cards} station={known.key} at={shown(known.cards, known.key, name)} isGone={isGone(known.cards, openId(known.key, name))} />}
    </div>
  );
}

function content(station: string | undefined, name: string | undefined) {
  if (station === undefined || book.value === null) return station === "part" && name !== undefined ? <PartPage mark={name} /> : station === "unsent" ? <Unsent /> : <Home />;
  if (station === "part" && name !== undefined) return <PartPage mark={name} />;
  if (station === "unsent") return <Unsent />;
  const found = book.value.stations.find((each) => each.key === station);
  const held = heldCard(openId(station, name));
  if (found === undefined) return held === undefined ? <Home /> : <InSight card={held} goesOn="" />;
  if (name === "list") return <List ids={found.cards} station={found.key} title={found.title} />;
  const id = shown(found.cards, found.key, name);
  const card = cards.value.get(id);
  if (held !== undefined && !found.cards.includes(held.id)) {
    return (
      <>
        {found.key === "saw" && <AnewTold />}
        <InSight card={held} goesOn={id} />
      </>
    );
  }
  if (card === undefined) return <Home />;
  return (
    <>
      {name !== undefined && name !== id && (
        <p class="stop" role="status">
          <strong>Look.</strong> The card that was here is gone: the plan is another by now. This is where the work goes on.
        </p>
      )}
      {found.key === "saw" && <AnewTold />}
      <InSight card={card} />
      {found.key === "saw" && <AnewBox />}
    </>
  );
}

/** The card that lies open at a station: the one named, else the one last looked at there. */
function openId(station: string, name: string | undefined): string {
  return name ?? kept<string>(`at.${station}`) ?? "";
}

/** Whether a card lies open that the book has no more. */
function isGone(ids: string[], id: string): boolean {
  return !ids.includes(id) && heldCard(id) !== undefined;
}

/** The card named; else the one last looked at here, or the first that is not done. */
function shown(ids: string[], station: string, name: string | undefined): string {
  if (name !== undefined && ids.includes(name)) return name;
  const last = kept<string>(`at.${station}`);
  if (name === undefined && last !== null && ids.includes(last)) return last;
  const open = ids.find((id) => {
    const card = cards.value.get(id);
    return card !== undefined && !isDone(card);
  });
  return open ?? ids[0] ?? "";
}

function Bar({ title, isHome }: { title: string; isHome: boolean }) {
  const count = unsent.value.length;
  const trouble = troubled.value.length;
  return (
    <header>
      {isHome ? <strong class="name">Casewright</strong> : <a href="/shop">‹ Stations</a>}
      <span class="title">{title}</span>
      <span role="status">
        <a href="/shop/unsent" class={trouble > 0 ? "signal trouble" : "signal"}>
          {!reachable.value && <span>No signal </span>}
          {trouble > 0 ? `${trouble} to look at` : count > 0 ? `${count} not sent yet` : reachable.value ? "✓ all sent" : "nothing waits"}
        </a>
      </span>
    </header>
  );
}

function Banners() {
  return (
    <div class="banners">
      {isFull.value && (
        <p class="stop" role="alert">
          <strong>The phone is full.</strong> Leave this page open until all is sent.
        </p>
      )}
      {isStale.value && (
        <p class="stop" role="status">
          <strong>A newer page is there.</strong>{" "}
          <button type="button" onClick={() => location.reload()}>
            Load it
          </button>{" "}
          What is not sent stays.
        </p>
      )}
      {running.value.map((each) => (
        <p class="timer" role="timer" key={each.id}>
          <strong>{timeLeft(each)}</strong>
          <span>
            {each.label}, until {end(each)}
          </span>
          <Off id={each.id} label={each.label} />
        </p>
      ))}
      {over.value.map((each) => (
        <p class="timer over" role="alert" key={each.id}>
          <strong>Time is up</strong>
          <span>{each.label}</span>
          <Off id={each.id} label="" />
        </p>
      ))}
    </div>
  );
}

/** A time that runs is asked about first: a sleeve that touched it stops nothing. */
function Off({ id, label }: { id: string; label: string }) {
  const asks = useSignal(false);
  return (
    <>
      <button type="button" onClick={() => (label === "" ? stop(id) : (asks.value = true))}>
        Stop it
      </button>
      {asks.value && (
        <Ask title={`Stop the time: ${label}?`} yes="Stop it now" no="Let it run" onNo={() => (asks.value = false)} onYes={() => stop(id)} />
      )}
    </>
  );
}

/** Over the foot of the page, so that nothing is pushed away from under the thumb. */
function NoSignal() {
  const isSeen = useSignal(false);
  useSignalEffect(() => {
    if (reachable.value) isSeen.value = false;
  });
  if (reachable.value || isSeen.value) return null;
  return (
    <p class="no-signal" role="status">
      <span>
        <strong>No signal: go on.</strong> What you enter waits on this phone. Only do not load the page again.
      </span>
      <button type="button" onClick={() => (isSeen.value = true)}>
        Good
      </button>
    </p>
  );
}

/** Cards that a list may show without being folded. */
const MOST_UNFOLDED = 30;

/** All cards of a station: many are folded by what they are about, the one last looked at open. */
function List({ ids, station, title }: { ids: string[]; station: string; title: string }) {
  const groups = new Map<string, Card[]>();
  for (const id of ids) {
    const card = cards.value.get(id);
    if (card === undefined) continue;
    const [head = ""] = card.over.split(": ");
    groups.set(head, [...(groups.get(head) ?? []), card]);
  }
  const folds = ids.length > MOST_UNFOLDED && groups.size > 1;
  const last = shown(ids, station, undefined);
  return (
    <article aria-labelledby="card">
      <h1 id="card">{title}</h1>
      {[...groups].map(([head, own]) =>
        folds ? (
          <details key={head} class="group" open={own.some((card) => card.id === last)}>
            <summary>
              <span>{head}</span> <span>{left(own)}</span>
            </summary>
            {own.map((card) => (
              <Entry key={card.id} card={card} over={card.over.slice(head.length).replace(/^: /, "")} />
            ))}
          </details>
        ) : (
          own.map((card) => <Entry key={card.id} card={card} over={card.over} />)
        ),
      )}
    </article>
  );
}

/** How much is left to do. */
function left(own: Card[]): string {
  const open = own.filter((card) => !isDone(card)).length;
  return open === 0 ? "✓ all done" : `${open} of ${own.length} to do`;
}

function Entry({ card, over }: { card: Card; over: string }) {
  return (
    <a class="button" href={`/shop/${card.station}/${encodeURIComponent(card.id)}`}>
      <span class="short">
        {isDone(card) ? "✓ " : ""}
        {[over, nameOf(card)].filter((words) => words !== "").join(": ")}
      </span>
    </a>
  );
}

/** Back, all, on: always under the thumb. From a card that is gone the work goes on at `at`. */
function Steps({ ids, station, at, isGone }: { ids: string[]; station: string; at: string; isGone: boolean }) {
  const n = ids.indexOf(at);
  useEffect(() => {
    if (isGone) return;
    keep(`at.${station}`, at);
    const next = ids.slice(n + 1, n + AHEAD).flatMap((id) => cards.value.get(id)?.figures ?? []);
    lookAhead(next.slice(0, AHEAD).flatMap((each) => [each.name, ...(each.key ? [each.key] : [])]));
  }, [at, isGone, book.value?.stamp]);
  const to = (step: number) => `/shop/${station}/${encodeURIComponent(ids[n + step] ?? "")}`;
  const here = isGone ? "–" : n + 1;
  return (
    <nav class="steps" aria-label="cards">
      <button type="button" disabled={isGone || n <= 0} onClick={() => go(to(-1))}>
        ‹ Back
      </button>
      <a class="button" href={`/shop/${station}/list`} aria-label={`card ${here} of ${ids.length}: show all`}>
        {here} / {ids.length}
      </a>
      <button type="button" class="firm" disabled={!isGone && n + 1 >= ids.length} onClick={() => go(to(isGone ? 0 : 1))}>
        Next ›
      </button>
    </nav>
  );
}
