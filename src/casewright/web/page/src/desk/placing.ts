/** Where a finding or a question belongs: on the page of what it is about. */
import { job } from "../state";
import { place } from "../route";

export type ToldKind = "stop" | "found" | "asked";

/** The address of the page that something with this path belongs on. */
export function pageOf(path: string): string {
  const [first = "", second = ""] = path.split(".");
  const found = job.value;
  if (found?.cases.some((each) => each.key === first)) return `/cases/${first}`;
  if (first === "run") return `/layout/${second}`;
  if (first === "island" && second !== "") return `/layout/island.${second}`;
  if (first === "wall" || first === "survey" || first === "corner") return has("survey") ? "/survey" : "/layout";
  if (first === "stock" || first === "hardware") return "/buy";
  if (first === "appliance" || second === "appliance") return "/layout";
  return "/layout";
}

/** Where touching a case or a part of a drawing leads: to its page, or to its card there. */
export function leadTo(path: string): string {
  const of = caseOf(path);
  if (of === path) return `/cases/${of}`;
  if (!path.includes(".")) return "/layout";
  return `/machine/${of === "" ? "runs" : of}#${path}`;
}

/** The key of the case that a path begins with; empty when there is none. */
export function caseOf(path: string): string {
  const known = new Set(job.value?.cases.map((each) => each.key));
  let key = path;
  while (key !== "" && !known.has(key)) key = key.slice(0, Math.max(key.lastIndexOf("."), 0));
  return key;
}

function has(page: string): boolean {
  return job.value?.pages.includes(page) ?? false;
}

/** Identifier of the n-th of its kind among all, by which it can be led to. */
export function toldId(kind: "finding" | "question", number: number): string {
  return `${kind}-${number + 1}`;
}

let last = "";

/** The address of the next of a kind after the one led to last: going round all of them. */
export function nextTold(kind: ToldKind): string {
  const found = job.value;
  if (found === null) return place.value;
  const all =
    kind === "asked"
      ? found.questions.map((q, n) => ({ path: q.path, id: toldId("question", n) }))
      : found.findings
          .map((f, n) => ({ path: f.path, id: toldId("finding", n), stop: f.severity === "stop" }))
          .filter((each) => each.stop === (kind === "stop"));
  const next = all[(all.findIndex((each) => each.id === last) + 1) % all.length];
  if (next === undefined) return place.value;
  last = next.id;
  return `${pageOf(next.path).replace(/^\/layout\/.*/, "/layout")}#${next.id}`;
}
