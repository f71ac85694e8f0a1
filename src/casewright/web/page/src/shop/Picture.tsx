import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { reachable } from "../state";
import { book, drawing } from "./book";
import type { Figure } from "./types";

/** Drawings one under the other; of several each says what it shows. */
export function Pictures({ figures }: { figures: Figure[] }) {
  if (figures.length === 0) return null;
  return (
    <div class="figures">
      {figures.map((each) => (
        <Picture key={each.name} figure={each} isOne={figures.length === 1} />
      ))}
    </div>
  );
}

/** A drawing; touched, it fills the screen, to be moved about. */
function Picture({ figure: { name, says, key: whole = "" }, isOne }: { figure: Figure; isOne: boolean }) {
  const small = useRef<HTMLDivElement>(null);
  const dialog = useRef<HTMLDialogElement>(null);
  const isOld = useSignal(false);
  const there = useSignal(false);
  const stamp = book.value?.stamp;
  useEffect(() => {
    let left = false;
    there.value = false;
    small.current?.replaceChildren();
    void drawing(name, (svg, current) => {
      if (left || small.current === null) return;
      put(small.current, svg);
      there.value = true;
      isOld.value = !current;
    });
    return () => {
      left = true;
    };
  }, [name, stamp]);

  function enlarge() {
    const copy = small.current?.firstElementChild?.cloneNode(true);
    if (copy === undefined || dialog.current === null) return;
    dialog.current.querySelector(".large")?.replaceChildren(copy);
    dialog.current.showModal();
  }

  return (
    <figure>
      <button type="button" class="picture" data-kind={name.split(".")[0]} onClick={enlarge} aria-label={`${says}; make it larger`} disabled={!there.value}>
        <div ref={small} />
        {!there.value && (
          <span class="soft">{reachable.value ? "It is being drawn." : "The drawing comes when there is a signal."}</span>
        )}
      </button>
      <figcaption class="soft">
        {whole !== "" && <Key name={whole} />}
        {!isOne && `${says[0]?.toUpperCase()}${says.slice(1)}. `}
        {isOld.value && "Drawn before the last change. "}
        {isOne && there.value && "Touch it to make it larger."}
      </figcaption>
      <dialog ref={dialog} class="whole" aria-label={says}>
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
        <div class="large" />
      </dialog>
    </figure>
  );
}

/** Where on the whole it is: a small picture without a word. */
function Key({ name }: { name: string }) {
  const small = useRef<HTMLSpanElement>(null);
  const stamp = book.value?.stamp;
  useEffect(() => {
    let left = false;
    void drawing(name, (svg) => {
      if (!left && small.current !== null) put(small.current, svg);
    });
    return () => {
      left = true;
    };
  }, [name, stamp]);
  return <span class="key" ref={small} role="img" aria-label="where on the whole it is" />;
}

/** Its texts stay texts; nothing in it is run. */
function put(into: HTMLElement, svg: string): void {
  const drawn = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  const root = document.importNode(drawn, true);
  root.setAttribute("aria-hidden", "true");
  into.replaceChildren(root);
}
