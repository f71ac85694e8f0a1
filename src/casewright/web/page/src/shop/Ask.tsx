import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

/** A question with two answers; the safe one has the focus. */
export function Ask(props: {
  title: string;
  yes: string;
  no: string;
  onYes: () => void;
  onNo: () => void;
  children?: ComponentChildren;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} class="ask" aria-label={props.title} onClose={props.onNo}>
      <h2>{props.title}</h2>
      {props.children}
      <div class="pair">
        <button type="button" autofocus onClick={props.onNo}>
          {props.no}
        </button>
        <button type="button" class="firm" onClick={props.onYes}>
          {props.yes}
        </button>
      </div>
    </dialog>
  );
}
