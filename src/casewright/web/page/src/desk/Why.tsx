import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { ask as askServer, type WhyNode, type WhyView } from "../api";
import { steps } from "../state";
import { asked, close, walk, whyOf } from "./asking";
import { bring } from "./Drawing";
import { edit, wordsOf } from "./saying";
import { placed } from "./standing";

/** Why a number is what it is, beside the number: changed there, or walked down its chain. */
export function WhyPanel() {
  const now = asked.value;
  const path = now?.way.at(-1) ?? "";
  const source = now === null ? "" : whyOf(now);
  const nodes = useSignal<readonly WhyNode[]>([]);
  const said = useSignal("");
  const box = useRef<HTMLDivElement>(null);
  const version = steps.value.drawn;

  useEffect(() => {
    if (source === "") return;
    let left = false;
    said.value = "";
    askServer<WhyView>(source).then(
      (view) => !left && (nodes.value = view.nodes),
      (error: unknown) => !left && ((nodes.value = []), (said.value = wordsOf(error))),
    );
    return () => {
      left = true;
    };
  }, [source, version]);

  useEffect(() => {
    if (now !== null && box.current !== null) placed(box.current, now.at);
  }, [now?.at, nodes.value]);

  useEffect(() => {
    const panel = box.current;
    if (panel === null || nodes.value[0]?.path !== path || panel.contains(document.activeElement)) return;
    const first = ["input", "button.on", "button.close"].map((each) => panel.querySelector<HTMLElement>(each));
    first.find((each) => each !== null)?.focus();
  }, [path, nodes.value]);

  const isOpen = now !== null;
  useEffect(() => {
    if (!isOpen) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === "Escape") close();
      else if (event.key === "Tab" && box.current !== null) goRound(event, box.current);
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, [isOpen]);

  if (now === null) return null;
  const [node, ...rest] = nodes.value;
  return (
    <div
      class="why"
      role="dialog"
      aria-label={`Why ${wordsFor(path)}`}
      ref={box}
    >
      <button type="button" class="close" aria-label="Close" onClick={close}>
        ×
      </button>
      {now.answer !== null && <p class="soft">With answer {now.answer.number}, if it were taken:</p>}
      {now.way.length > 1 && <Way way={now.way} />}
      {node !== undefined && node.path === path && <Shown node={node} rest={rest} drawing={now.drawing} />}
      {said.value !== "" && (
        <p class="refused" role="alert">
          {said.value}
        </p>
      )}
    </div>
  );
}

/** The Tab key goes round in the panel while it is open. */
function goRound(event: KeyboardEvent, panel: HTMLElement): void {
  const inside = [...panel.querySelectorAll<HTMLElement>("button:not(:disabled), input")];
  const [first, last] = event.shiftKey ? [inside.at(-1), inside[0]] : [inside[0], inside.at(-1)];
  if (document.activeElement !== last && panel.contains(document.activeElement)) return;
  event.preventDefault();
  first?.focus();
}

function Way({ way }: { way: readonly string[] }) {
  return (
    <p class="way">
      {way.slice(0, -1).map((path) => (
        <span key={path}>
          <button type="button" class="walk" onClick={() => walk(path)}>
            {wordsFor(path)}
          </button>
          {" ‹ "}
        </span>
      ))}
    </p>
  );
}

function Shown({ node, rest, drawing }: { node: WhyNode; rest: readonly WhyNode[]; drawing: string }) {
  const under = node.rests_on.flatMap((path) => rest.filter((each) => each.path === path));
  return (
    <>
      <h2>
        {wordsFor(node.path)} <b>{node.value}</b>
      </h2>
      {node.key !== "" && <Change node={node} drawing={drawing} />}
      {node.formula !== "" && <p class="formula">= {node.formula}</p>}
      {node.origin !== "" && (
        <p class="soft">
          {node.origin}
          {node.where !== "" && `, ${node.where}`}
        </p>
      )}
      {under.length > 0 && (
        <ul class="rests" aria-label="Rests on">
          {under.map((each) => (
            <li key={each.path}>
              <button type="button" class="walk on" onClick={() => walk(each.path)}>
                {wordsFor(each.path)} <b>{each.value}</b>
                {each.key !== "" && <span class="soft"> can be changed</span>}
              </button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function Change({ node, drawing }: { node: WhyNode; drawing: string }) {
  const before = useRef(node);
  const value = useSignal(node.typed === "" ? node.value.replace("~", "") : node.typed);
  const said = useSignal("");
  const busy = useSignal(false);

  async function write(event: Event) {
    event.preventDefault();
    busy.value = true;
    said.value = "";
    try {
      const body = { path: node.path, key: node.key, value: value.value, shows: drawing };
      const edited = await edit("/api/numbers", body);
      if (edited.drawing !== "") bring(drawing, edited.version, edited.drawing);
      close();
    } catch (error) {
      said.value = wordsOf(error);
    } finally {
      busy.value = false;
    }
  }

  return (
    <form class="change" onSubmit={write}>
      <label>
        {node.typed === "" ? "Set it here" : "Change it to"}
        <input
          value={value.value}
          onInput={(event) => (value.value = event.currentTarget.value)}
          onFocus={(event) => event.currentTarget.select()}
          autocomplete="off"
          spellcheck={false}
          aria-invalid={said.value !== ""}
        />
      </label>
      <button type="submit" disabled={busy.value}>
        Write
      </button>
      {said.value !== "" && (
        <p class="refused" role="alert">
          {said.value}
        </p>
      )}
      {(node.typed !== before.current.typed || node.value !== before.current.value) && (
        <p class="meanwhile" role="status">
          Since you opened it, it became <b>{node.typed === "" ? node.value : node.typed}</b>; it was{" "}
          {before.current.typed === "" ? before.current.value : before.current.typed}.
        </p>
      )}
    </form>
  );
}

/** A path in words: sink door left width. */
export function wordsFor(path: string): string {
  return path.replaceAll(".", " ").replaceAll("_", " ");
}
