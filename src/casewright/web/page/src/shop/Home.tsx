import { useSignal } from "@preact/signals";
import { go } from "../route";
import { AnewBox, AnewTold } from "./Anew";
import { book, cards, looked } from "./book";
import { keep, kept } from "./keeping";
import { device } from "./outbox";
import { isDone, partBy } from "./ticking";
import { isSunny, setSunny } from "./theme";
import type { Station } from "./types";

/** The stations of this job, in the order of work. */
export function Home() {
  const found = book.value;
  if (found === null) {
    return (
      <article>
        <h1 id="card">The shop</h1>
        <p role="status">{looked.value ? "The cards come from the desk; there is no signal yet, or they are being made." : ""}</p>
      </article>
    );
  }
  const last = kept<string>("place");
  return (
    <article aria-labelledby="card">
      <h1 id="card">{found.job}</h1>
      {last !== null && (
        <a class="button firm" href={last}>
          Go on where you were
        </a>
      )}
      {found.planned === "pending" && <p class="soft">The cuts are being planned; the saw follows.</p>}
      {found.says !== "" && <p class="soft">{found.says}</p>}
      <AnewTold />
      <nav aria-label="stations">
        {found.stations.map((station) => (
          <StationLink key={station.key} station={station} />
        ))}
      </nav>
      <AnewBox />
      <Find />
      <Settings />
    </article>
  );
}

function StationLink({ station }: { station: Station }) {
  const open = station.cards.filter((id) => {
    const card = cards.value.get(id);
    return card !== undefined && !isDone(card);
  }).length;
  return (
    <a class="button station" href={`/shop/${station.key}`}>
      <strong>{station.title}</strong>
      <span>{open === 0 ? "✓ all done" : `${open} of ${station.cards.length} to do`}</span>
    </a>
  );
}

/** The number on a label opens its part. */
function Find() {
  const mark = useSignal("");
  const said = useSignal("");
  return (
    <form
      class="find"
      onSubmit={(event) => {
        event.preventDefault();
        const part = partBy(mark.value);
        if (part === undefined) said.value = `There is no part ${mark.value}.`;
        else go(`/shop/part/${encodeURIComponent(part.mark)}`);
      }}
    >
      <label>
        Number on the label
        <input inputMode="numeric" autocomplete="off" value={mark.value} onInput={(event) => (mark.value = event.currentTarget.value)} />
      </label>
      <button type="submit">Open the part</button>
      <p role="status">{said.value}</p>
    </form>
  );
}

function Settings() {
  const name = useSignal(device());
  return (
    <section aria-label="this phone" class="settings">
      <button type="button" class="wide" aria-pressed={isSunny.value} onClick={() => setSunny(!isSunny.value)}>
        Bright sun: {isSunny.value ? "on" : "off"}
      </button>
      <label>
        This phone signs as
        <input
          value={name.value}
          maxLength={40}
          onInput={(event) => {
            name.value = event.currentTarget.value;
            keep("device", name.value.trim());
          }}
        />
      </label>
      <a class="button" href="/">
        To the desk
      </a>
    </section>
  );
}
