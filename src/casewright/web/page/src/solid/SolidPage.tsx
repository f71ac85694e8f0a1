import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { caseOf } from "../desk/placing";
import { go } from "../route";
import { job, steps } from "../state";
import type { PartSeen, SolidView } from "./view";
import "./solid.css";

/** The room, a case or a part in three dimensions; the library that shows it is loaded only here. */
export function SolidPage({ of }: { of: string }) {
  const canvas = useRef<HTMLDivElement>(null);
  const view = useRef<SolidView | null>(null);
  const parts = useSignal<readonly PartSeen[]>([]);
  const open = useSignal(0);
  const pulled = useSignal(0);
  const fronts = useSignal(true);
  const shell = useSignal(true);
  const hasShell = useSignal(false);
  const at = useSignal<PartSeen | null>(null);
  const said = useSignal("Setting the pieces up …");
  const version = steps.value.drawn;

  useEffect(() => {
    let left = false;
    void import("./view").then(async ({ showSolids }) => {
      if (left || canvas.current === null) return;
      try {
        const shown = await showSolids(canvas.current, `/api/solids?of=${encodeURIComponent(of)}&version=${version}`, {
          over: (part) => (at.value = part),
          chosen: (part) => go(cardOf(part)),
        });
        if (left) return shown.end();
        view.current?.end();
        view.current = shown;
        parts.value = shown.parts;
        said.value = "";
        shown.open(open.value);
        shown.hideFronts(!fronts.value);
        hasShell.value = shown.hasShell;
        shown.hideShell(!shell.value);
        shown.pull(pulled.value);
      } catch {
        said.value = "This cannot be shown in three dimensions here.";
      }
    });
    return () => {
      left = true;
    };
  }, [of, version]);

  useEffect(() => () => view.current?.end(), []);

  const count = parts.value.length;
  const title = job.value?.cases.find((each) => each.key === of)?.title ?? (of === "" ? "The room" : of);

  function pullTo(number: number) {
    pulled.value = Math.min(Math.max(number, 0), count);
    view.current?.pull(pulled.value);
  }

  return (
    <section class="solid">
      <h2>{title}, in three dimensions</h2>
      <div class="controls">
        <button
          type="button"
          aria-pressed={open.value > 0}
          onClick={() => {
            open.value = open.value > 0 ? 0 : 1;
            view.current?.open(open.value);
          }}
        >
          {open.value > 0 ? "Close the fronts" : "Open the fronts"}
        </button>
        <button
          type="button"
          aria-pressed={!fronts.value}
          onClick={() => {
            fronts.value = !fronts.value;
            view.current?.hideFronts(!fronts.value);
          }}
        >
          {fronts.value ? "Take the fronts off" : "Put the fronts on"}
        </button>
        {hasShell.value && (
          <button
            type="button"
            aria-pressed={!shell.value}
            onClick={() => {
              shell.value = !shell.value;
              view.current?.hideShell(!shell.value);
            }}
          >
            {shell.value ? "Hide the walls" : "Show the walls"}
          </button>
        )}
        <span class="apart">
          <button type="button" onClick={() => pullTo(pulled.value - 1)} disabled={pulled.value === 0}>
            One piece in
          </button>
          <label>
            Pulled apart
            <input
              type="range"
              min={0}
              max={count}
              value={pulled.value}
              onInput={(event) => pullTo(event.currentTarget.valueAsNumber)}
            />
          </label>
          <button type="button" onClick={() => pullTo(pulled.value + 1)} disabled={pulled.value >= count}>
            One piece out
          </button>
        </span>
      </div>
      <div
        class="view"
        ref={canvas}
        tabIndex={0}
        role="application"
        aria-label={`${title} in three dimensions: arrow keys turn it, plus and minus bring it nearer; the pieces are listed below`}
      />
      <p class="over" role="status">
        {said.value}
        {at.value !== null && `${at.value.mark} ${at.value.title}`}
      </p>
      <details>
        <summary>All {count} pieces</summary>
        <ul class="pieces">
          {parts.value.map((part) => (
            <li key={part.path}>
              <a href={cardOf(part)} onFocus={() => view.current?.mark(part.path)}>
                {part.mark} {part.title}
              </a>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

function cardOf(part: PartSeen): string {
  const of = caseOf(part.case) || "runs";
  return `/machine/${encodeURIComponent(of)}#${part.path}`;
}
