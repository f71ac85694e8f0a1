import { useEffect, useRef } from "preact/hooks";
import type { JobView } from "../api";
import { go } from "../route";
import { isSunny, setSunny } from "../shop/theme";
import { isCounted, isDrawn, isPlanned, reachable } from "../state";
import { keepHeight } from "./heights";
import { attempt, edit, said } from "./saying";
import { nextTold } from "./placing";

/** The job's name, its pages in the order of the work, and what is open. */
export function Header({ job, page }: { job: JobView; page: string }) {
  const now = page === "" ? "layout" : page;
  const box = useRef<HTMLElement>(null);
  useEffect(() => (box.current === null ? undefined : keepHeight(box.current, "--top")), []);
  return (
    <header class="top" ref={box}>
      <a class="skip" href="#main">
        To the page
      </a>
      <div class="line">
        <h1>
          <a class="job" href="/">
            {job.name}
          </a>
          <span class="hidden">, {now}</span>
        </h1>
        <Counts job={job} />
        <div class="edits">
          <button type="button" aria-pressed={isSunny.value} onClick={() => setSunny(!isSunny.value)}>
            Bright sun
          </button>
          <button type="button" disabled={!job.can_undo} onClick={() => attempt(() => edit("/api/undo", {}))}>
            Undo
          </button>
          <button type="button" disabled={!job.can_redo} onClick={() => attempt(() => edit("/api/redo", {}))}>
            Redo
          </button>
        </div>
      </div>
      <nav aria-label="Pages of the job">
        {job.pages.map((name) => (
          <a key={name} href={`/${name}`} aria-current={name === now ? "page" : undefined}>
            {name}
          </a>
        ))}
        <a class="aside" href="/shop">
          shop
        </a>
        <a class="aside" href="/devices" aria-current={now === "devices" ? "page" : undefined}>
          other devices
        </a>
      </nav>
      <p class="said" role="status">
        {said.value}
      </p>
    </header>
  );
}

/** Sheets to buy, what was found and asked: each leads to where it belongs. */
function Counts({ job }: { job: JobView }) {
  const stops = job.findings.filter((finding) => finding.severity === "stop").length;
  const rest = job.findings.length - stops;
  return (
    <p class="counts">
      <a href="/cut" data-state={isCounted.value ? "current" : "pending"}>
        <b>{job.sheets ?? "…"}</b> {job.sheets === 1 ? "sheet" : "sheets"}
        {isCounted.value ? (isPlanned.value ? "" : ", cuts being planned") : ", being counted"}
      </a>
      {stops > 0 && <Count of="stop" number={stops} words="to put right" sign="■" />}
      {rest > 0 && <Count of="found" number={rest} words="to look at" sign="▲" />}
      {job.questions.length > 0 && <Count of="asked" number={job.questions.length} words="asked" sign="?" />}
      {!isDrawn.value && <span data-state="pending">working it out …</span>}
      {!reachable.value && <strong class="away">the server does not answer</strong>}
    </p>
  );
}

function Count({ of, number, words, sign }: { of: "stop" | "found" | "asked"; number: number; words: string; sign: string }) {
  return (
    <button type="button" class={`count ${of}`} onClick={() => go(nextTold(of))}>
      <span aria-hidden="true">{sign}</span> <b>{number}</b> {words}
    </button>
  );
}
