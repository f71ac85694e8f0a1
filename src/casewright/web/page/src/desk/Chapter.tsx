import { useSignal, useSignalEffect } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { ask as askServer, type Chapter as View, RefusedError } from "../api";
import { go, hash } from "../route";
import { steps } from "../state";
import { ask, moveTo } from "./asking";
import { Contents } from "./Contents";
import { leadTo } from "./placing";
import { isListed, isLong, type Section, sectionsOf, sectionWith, showOnly } from "./sections";
import { makeTouchable } from "./touching";

const PLANNED = new Set(["buy", "cut", "assemble"]);

/** A page of the packet on the screen: the same words and drawings, its numbers to be touched. */
export function Chapter({ page, of = "" }: { page: string; of?: string }) {
  const inside = useRef<HTMLDivElement>(null);
  const version = useSignal(0);
  const waiting = useSignal(true);
  const sections = useSignal<readonly Section[]>([]);
  const folds = useSignal(false);
  const isFolded = useSignal(true);
  const open = useSignal("");
  const wanted = PLANNED.has(page) ? steps.value.planned : steps.value.drawn;
  const pending = version.value < steps.value.version;

  useEffect(() => {
    let left = false;
    const query = of === "" ? "" : `?of=${encodeURIComponent(of)}`;
    askServer<View>(`/api/chapters/${page}${query}`).then(
      (view) => {
        const into = inside.current;
        if (left || into === null) return;
        const isFirst = version.value === 0;
        version.value = view.version;
        waiting.value = view.version === 0;
        put(into, view.html);
        sections.value = sectionsOf(into);
        if (isFirst) folds.value = isLong(into, sections.value);
        unfold();
        moveTo(into);
        if (isFirst) seek(hash.value);
      },
      (error: unknown) => {
        if (!(error instanceof RefusedError)) waiting.value = true;
      },
    );
    return () => {
      left = true;
    };
  }, [page, of, wanted]);

  /** Show the section that is led to, and the place in it. */
  function unfold(): void {
    const next = folds.value && isFolded.value ? sectionWith(sections.value, hash.value) : "";
    const isOther = open.peek() !== next;
    open.value = next;
    showOnly(sections.value, next);
    if (inside.current !== null) makeReady(inside.current);
    if (isOther && folds.value) seek(hash.value);
  }

  useSignalEffect(unfold);

  useEffect(() => {
    const found = (event: Event) => {
      open.value = (event.target as HTMLElement).closest("section")?.id ?? "";
      showOnly(sections.value, open.value);
      if (inside.current !== null) makeReady(inside.current);
    };
    const page = inside.current;
    page?.addEventListener("beforematch", found);
    return () => page?.removeEventListener("beforematch", found);
  }, []);

  return (
    <>
      {(waiting.value || pending) && (
        <p class="waiting" role="status">
          {PLANNED.has(page) ? "The cuts are being planned …" : "Working it out …"}
          {!waiting.value && " What is shown is from before."}
        </p>
      )}
      {isListed(sections.value) && (
        <Contents sections={sections.value} open={open.value} folds={folds.value} onFold={(is) => (isFolded.value = is)} />
      )}
      <div class="chapter" data-state={pending ? "pending" : "current"} ref={inside} />
    </>
  );
}

/** Scroll a place into view once the page stands as it will. */
function seek(id: string): void {
  if (id !== "") requestAnimationFrame(() => document.getElementById(id)?.scrollIntoView({ behavior: "instant" }));
}

function put(into: HTMLElement, html: string): void {
  const read = new DOMParser().parseFromString(html, "text/html");
  into.replaceChildren(...[...read.body.childNodes].map((node) => document.importNode(node, true)));
  for (const drawing of into.querySelectorAll<SVGSVGElement>("figure > svg")) {
    drawing.style.width = `${parseFloat(drawing.getAttribute("width") ?? "180") * 1.5}mm`;
  }
}

const READY = "ready";

/** Make what is shown ready to be touched: a section at a time, for a page may be very long. */
function makeReady(page: HTMLElement): void {
  for (const section of page.querySelectorAll<HTMLElement>(":scope > section:not([hidden])")) {
    if (section.dataset[READY] === "") continue;
    section.dataset[READY] = "";
    for (const drawing of section.querySelectorAll<SVGSVGElement>("figure > svg")) {
      makeTouchable(drawing, { number: ask, thing: (path) => go(leadTo(path)) });
    }
    for (const number of section.querySelectorAll<HTMLElement>("data[data-path]")) makeAskable(number);
  }
}

function makeAskable(number: HTMLElement): void {
  number.tabIndex = 0;
  number.setAttribute("role", "button");
  number.setAttribute("aria-label", `${number.getAttribute("value") ?? ""}: why`);
  const act = () => ask(number.dataset["path"] ?? "", number);
  number.addEventListener("click", act);
  number.addEventListener("keydown", (event) => event.key === "Enter" && act());
}
