import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { ask as askServer, type Chapter as View, RefusedError } from "../api";
import { go, hash } from "../route";
import { steps } from "../state";
import { ask } from "./asking";
import { leadTo } from "./placing";
import { makeTouchable } from "./touching";

const PLANNED = new Set(["buy", "cut", "assemble"]);

/** A page of the packet on the screen: the same words and drawings, its numbers to be touched. */
export function Chapter({ page, of = "" }: { page: string; of?: string }) {
  const inside = useRef<HTMLDivElement>(null);
  const version = useSignal(0);
  const waiting = useSignal(true);
  const wanted = PLANNED.has(page) ? steps.value.planned : steps.value.drawn;
  const pending = version.value < steps.value.version;

  useEffect(() => {
    let left = false;
    const query = of === "" ? "" : `?of=${encodeURIComponent(of)}`;
    askServer<View>(`/api/chapters/${page}${query}`).then(
      (view) => {
        if (left || inside.current === null) return;
        version.value = view.version;
        waiting.value = view.version === 0;
        put(inside.current, view.html);
      },
      (error: unknown) => {
        if (!(error instanceof RefusedError)) waiting.value = true;
      },
    );
    return () => {
      left = true;
    };
  }, [page, of, wanted]);

  return (
    <>
      {(waiting.value || pending) && (
        <p class="waiting" role="status">
          {PLANNED.has(page) ? "The cuts are being planned …" : "Working it out …"}
          {!waiting.value && " What is shown is from before."}
        </p>
      )}
      <div class="chapter" data-state={pending ? "pending" : "current"} ref={inside} />
    </>
  );
}

function put(into: HTMLElement, html: string): void {
  const read = new DOMParser().parseFromString(html, "text/html");
  into.replaceChildren(...[...read.body.childNodes].map((node) => document.importNode(node, true)));
  for (const drawing of into.querySelectorAll<SVGSVGElement>("figure > svg")) {
    drawing.style.width = `${parseFloat(drawing.getAttribute("width") ?? "180") * 1.5}mm`;
    makeTouchable(drawing, { number: ask, thing: (path) => go(leadTo(path)) });
  }
  for (const number of into.querySelectorAll<HTMLElement>("data[data-path]")) {
    number.tabIndex = 0;
    number.setAttribute("role", "button");
    number.setAttribute("aria-label", `${number.getAttribute("value") ?? ""}: why`);
    const act = () => ask(number.dataset["path"] ?? "", number);
    number.addEventListener("click", act);
    number.addEventListener("keydown", (event) => event.key === "Enter" && act());
  }
  const to = hash.value;
  if (to !== "") document.getElementById(to)?.scrollIntoView();
}
