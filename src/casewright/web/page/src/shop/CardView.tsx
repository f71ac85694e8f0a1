import { useSignal } from "@preact/signals";
import { parts } from "./book";
import { Pictures } from "./Picture";
import { ReadingBox } from "./Pad";
import { TickBox, tickOff } from "./TickBox";
import { caseOf, Spent } from "./Spent";
import { start } from "./timers";
import { ticksOf, tickState } from "./ticking";
import { nameOf, type Card, type Row } from "./types";
import { Words } from "./words";

/** Signs of a title from which on it is set smaller, so that what follows stays in sight. */
const LONG = 70;

/** One thing at a time: what is set, largest; then what it gives, its picture, what can hurt. */
export function CardView({ card }: { card: Card }) {
  const open = ticksOf(card).filter((tick) => tickState(tick) === "open");
  const about = caseOf(card);
  // A setting for several sheets: its cuts first, where each lies on its sheet after them.
  const isAfter = card.station === "saw" && card.figures.length > 1;
  const title = nameOf(card);
  return (
    <article aria-labelledby="card" class={card.figures.length === 0 ? "card" : "card pictured"}>
      <p class="over">{card.over}</p>
      {card.big.length > 0 ? (
        <p class="setting">
          <span class="lead">{card.lead}</span>
          <span class="digits">
            <Words line={card.big} />
          </span>
        </p>
      ) : null}
      <h1 id="card" class={card.big.length > 0 ? "" : title.length > LONG ? "long" : "told"}>
        {title}
      </h1>
      {card.big.length === 0 && card.lead !== "" && <p class="soft">{card.title}</p>}
      {card.stops.map((line, n) => (
        <p class="stop" key={n}>
          <strong>Stop.</strong> <Words line={line} />
        </p>
      ))}
      {card.first.length > 0 && (
        <p class="first">
          <Words line={card.first} />
        </p>
      )}
      <ul class="lines">
        {card.lines.map((line, n) => (
          <li key={n}>
            <Words line={line} />
          </li>
        ))}
      </ul>
      {!isAfter && <Pictures figures={card.figures} />}
      {card.readings.map((reading) => (
        <ReadingBox key={reading.path} reading={reading} />
      ))}
      {card.rows.length > 0 && (
        <ol class="rows">
          {card.rows.map((row, n) => (
            <RowView key={n} row={row} />
          ))}
        </ol>
      )}
      {isAfter && <Pictures figures={card.figures} />}
      {card.warns.length > 0 && (
        <section class="warns" aria-label="cautions">
          {card.warns.map((line, n) => (
            <p key={n}>
              <Words line={line} />
            </p>
          ))}
        </section>
      )}
      {card.ticks.map((tick) => (
        <TickBox key={tick.key} tick={tick} />
      ))}
      {open.length > 1 && (
        <button type="button" class="firm wide" onClick={() => open.forEach(tickOff)}>
          All {open.length} done
        </button>
      )}
      {card.timer !== "" && <TimerBox what={card.timer} where={card.timer === "paint" ? card.title : card.over} />}
      <Spent about={about} called={about === "" ? "the job" : (parts.value.get(card.parts[0] ?? "")?.case ?? "")} />
    </article>
  );
}

function RowView({ row }: { row: Row }) {
  return (
    <li class="row">
      <span class="label">{row.label}</span>
      <div>
        <p class="what">
          <Words line={row.what} />
        </p>
        {row.big.length > 0 && (
          <p class="setting">
            <span class="lead">{row.lead}</span>
            <span class="digits less">
              <Words line={row.big} />
            </span>
          </p>
        )}
        {row.lines.map((line, n) => (
          <p key={n}>
            <Words line={line} />
          </p>
        ))}
        {row.warns.map((line, n) => (
          <p key={n}>
            <Words line={line} />
          </p>
        ))}
      </div>
      {row.ticks.map((tick) => (
        <TickBox key={tick.key} tick={tick} />
      ))}
    </li>
  );
}

const USUAL = { glue: [15, 30, 45, 60], paint: [30, 60, 120, 240] };

/** A time by the tin: it goes on when the phone is locked. */
function TimerBox({ what, where }: { what: "glue" | "paint"; where: string }) {
  const isOpen = useSignal(false);
  const word = what === "glue" ? "Glue" : "Paint";
  if (!isOpen.value) {
    return (
      <button type="button" class="wide" onClick={() => (isOpen.value = true)}>
        {word}: start a timer
      </button>
    );
  }
  return (
    <section class="times" aria-label={`${word} timer`}>
      <p>How long, by what the maker says:</p>
      <p class="soft">A locked phone stays silent: leave its screen on, or set its own clock by the time shown.</p>
      <div class="keys">
        {USUAL[what].map((minutes) => (
          <button
            type="button"
            key={minutes}
            onClick={() => {
              start(`${word}, ${where}`, minutes);
              isOpen.value = false;
            }}
          >
            {minutes} min
          </button>
        ))}
        <button type="button" onClick={() => (isOpen.value = false)}>
          None
        </button>
      </div>
    </section>
  );
}
