import { useSignal } from "@preact/signals";
import { haveSeen, cutAt, nextCut, planAnew, refused, rest, told } from "./anew";
import { Ask } from "./Ask";
import type { Card, Gone } from "./types";

function names(gone: readonly Gone[]): string {
  return gone.map((each) => `${each.mark} ${each.title}`).join(", ");
}

const to = (card: Card) => `/shop/saw/${encodeURIComponent(card.id)}`;

/** What was spoiled and has no place on a sheet: when it comes, and the rest planned anew at once. */
export function AnewBox() {
  const asks = useSignal(false);
  const left = rest.value;
  if (left === null || (left.gone.length === 0 && left.state !== "pending")) return null;
  if (left.state === "pending") {
    return (
      <section class="anew" aria-label="planned anew" role="status">
        <strong>The rest is being planned anew.</strong> Go on with sheets that are begun; begin no other until it is there.
      </section>
    );
  }
  return (
    <section class="anew" aria-label="what was spoiled">
      <p>
        <strong>{names(left.gone)}</strong> {left.gone.length === 1 ? "was" : "were"} spoiled and {left.gone.length === 1 ? "has" : "have"} no
        place on a sheet. It comes with the next plan, when all else is cut; or now.
      </p>
      {left.state === "failed" && <p role="alert">It could not be planned anew. All stays as it is; try again.</p>}
      {refused.value !== "" && <p role="alert">{refused.value}</p>}
      <button type="button" class="wide firm" onClick={() => (asks.value = true)}>
        Plan the rest anew now
      </button>
      {asks.value && (
        <Ask
          title="Plan the rest anew?"
          yes="Plan it anew"
          no="Not now"
          onNo={() => (asks.value = false)}
          onYes={() => {
            asks.value = false;
            void planAnew();
          }}
        >
          {left.stays.length > 0 && <p>As they are: {left.stays.join("; ")}.</p>}
          {left.anew.length > 0 && <p>Not begun, laid out again where it saves a sheet: {left.anew.join("; ")}.</p>}
          <p>
            <strong>Tick off first</strong> what is sawn already, and what is kept of offcuts: a sheet that is begun and not ticked counts as
            whole.
          </p>
        </Ask>
      )}
    </section>
  );
}

/** The rest was planned anew, by whichever phone: what is another now and where the work goes on. */
export function AnewTold() {
  const anew = told.value;
  if (anew === null) return null;
  const next = nextCut();
  return (
    <section class="stop anew" role="alert" aria-label="what changed">
      <p>
        <strong>Planned anew</strong>: {names(anew.gone)} spoiled.
      </p>
      <details>
        <summary>What changed</summary>
        <ul>
          {anew.says.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
      {next !== undefined && (
        <a class="button firm" href={to(next)}>
          Next at the saw: {next.over}
        </a>
      )}
      {anew.gone.map((each) => {
        const card = cutAt(each.path);
        return (
          card !== undefined && (
            <a class="button" key={each.path} href={to(card)}>
              Where {each.mark} {each.title} is cut
            </a>
          )
        );
      })}
      <button type="button" class="wide" onClick={haveSeen}>
        I have seen what changed
      </button>
    </section>
  );
}
