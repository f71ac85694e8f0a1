import { useSignal } from "@preact/signals";
import { ask } from "../api";
import { rest } from "./anew";
import { AnewBox, AnewTold } from "./Anew";
import { Ask } from "./Ask";
import { book, cards } from "./book";
import { withdraw, write } from "./outbox";
import { ReadingBox } from "./Pad";
import { Pictures } from "./Picture";
import { Spent } from "./Spent";
import { TickBox } from "./TickBox";
import { isSpoiled, partBy, stateOf } from "./ticking";
import type { Part, Written } from "./types";
import { Words } from "./words";

const HANDS = { left: "◀ LEFT-HAND", right: "RIGHT-HAND ▶", "": "" };

/** A part as its label opens it: mark, hand and datum to be read at arm's length. */
export function PartPage({ mark }: { mark: string }) {
  const part = partBy(mark);
  if (part === undefined) {
    return (
      <article>
        <h1>There is no part {mark}</h1>
        <p>{book.value === null ? "The cards are not on this phone yet." : "Look at the number on its label again."}</p>
      </article>
    );
  }
  return <PartView key={part.path} part={part} />;
}

function PartView({ part }: { part: Part }) {
  const spoils = useSignal(false);
  const isLost = rest.value?.gone.some((each) => each.path === part.path) === true;
  const all = part.cards.map((id) => cards.value.get(id)).filter((card) => card !== undefined);
  const next = all.filter((card) => !(isLost && card.station === "saw"));
  const words = { saw: "Where it is cut", machine: "What is machined", assemble: "Where it goes in", finish: "Its finish", hang: "At the wall", holds: "What it waits for" };
  return (
    <article aria-labelledby="card" class="card pictured">
      <p class="over">{part.case}</p>
      <h1 id="card" class="mark">
        <span class="digits">{part.mark}</span> <span>{part.title}</span>
      </h1>
      {part.hand !== "" && <p class="hand">{HANDS[part.hand]}</p>}
      <dl class="datum">
        <dt>Datum edge</dt>
        <dd>{part.edge}</dd>
        <dt>Datum end</dt>
        <dd>{part.end}</dd>
        <dt>Cut</dt>
        <dd>
          <Words line={part.cut} />
        </dd>
      </dl>
      {part.stops.map((line, n) => (
        <p class="stop" key={n}>
          <strong>Stop.</strong> <Words line={line} />
        </p>
      ))}
      <p>
        Finished <Words line={part.finished} />. <Words line={part.about} />
      </p>
      <p>
        So far: <strong>{isSpoiled(part.path) ? "spoiled, make it again" : stateOf(part.path)}</strong>
      </p>
      {isSpoiled(part.path) && <AnewTold />}
      {isLost && <AnewBox />}
      <Pictures figures={part.figures} />
      <TickBox tick={part.tick} />
      {next.map((card) => (
        <a class="button" key={card.id} href={`/shop/${card.station}/${encodeURIComponent(card.id)}`}>
          {words[card.station]}
          {card.station === "finish" || card.over === "At the wall" ? "" : `: ${card.over}`}
        </a>
      ))}
      {part.readings.map((reading) => (
        <ReadingBox key={reading.path} reading={reading} />
      ))}
      <button type="button" class="wide" onClick={() => (spoils.value = true)}>
        Spoiled
      </button>
      {spoils.value && (
        <Ask
          title={`Is ${part.mark} ${part.title} no good any more?`}
          yes="It is spoiled"
          no="It is good"
          onNo={() => (spoils.value = false)}
          onYes={() => {
            write({ kind: "spoiled", words: [part.path] }, `${part.mark} ${part.title} spoiled`, `spoiled:${part.path}`);
            spoils.value = false;
          }}
        >
          <p>It is to be made again; what was marked on it counts no more.</p>
        </Ask>
      )}
      <Spent about={part.path} called={`${part.mark} ${part.title}`} />
      <WrittenBox about={part.path} />
    </article>
  );
}

/** What the record says of a thing, whoever wrote it; each can be taken back. */
function WrittenBox({ about }: { about: string }) {
  const found = useSignal<Written[] | null>(null);
  const said = useSignal("");

  async function look() {
    try {
      found.value = await ask<Written[]>(`/api/shop/entries?about=${encodeURIComponent(about)}`);
      said.value = found.value.length === 0 ? "Nothing was written yet." : "";
    } catch {
      said.value = "No signal: this needs the desk.";
    }
  }

  return (
    <section aria-label="what was written">
      <button type="button" class="wide" onClick={() => void look()}>
        What was written
      </button>
      <p role="status">{said.value}</p>
      {found.value?.map((each) => (
        <div class="written" key={each.id}>
          <p>
            <strong>{each.kind}</strong> {each.says} <span class="soft">{each.device}, {new Date(each.at).toLocaleString()}</span>
          </p>
          <button
            type="button"
            onClick={() => {
              withdraw(each.id, `${each.kind} ${each.says}`, `${each.kind}:${each.path}`);
              found.value = (found.value ?? []).filter((other) => other.id !== each.id);
            }}
          >
            Take it back
          </button>
        </div>
      ))}
    </section>
  );
}
