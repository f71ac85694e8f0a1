/** Requests to the server; every type comes from its schema. */
import type { components } from "./api.gen";

type Schemas = components["schemas"];
export type JobView = Schemas["JobView"];
export type Steps = Schemas["Steps"];
export type RunView = Schemas["RunView"];
export type CaseView = Schemas["CaseView"];
export type FindingView = Schemas["FindingView"];
export type Length = Schemas["Length"];
export type QuestionView = Schemas["QuestionView"];
export type ProblemView = Schemas["ProblemView"];
export type Refusal = Schemas["Refusal"];
export type Chapter = Schemas["Chapter"];
export type WhyView = Schemas["WhyView"];
export type WhyNode = Schemas["WhyNode"];
export type NewNumber = Schemas["NewNumber"];
export type Edited = Schemas["Edited"];
export type EntryIn = Schemas["EntryIn"];
export type EntryAnswer = Schemas["EntryAnswer"];
export type LayoutView = Schemas["LayoutView"];
export type PacketView = Schemas["PacketView"];
export type Joining = Schemas["Joining"];

/** The server said no: why, and what would be right. Nothing was changed. */
export class RefusedError extends Error {
  readonly refusal: Refusal;
  readonly status: number;

  constructor(status: number, refusal: Refusal) {
    super(refusal.what);
    this.status = status;
    this.refusal = refusal;
  }
}

/** No answer came: the signal dropped, or the server is not running. */
export class UnreachableError extends Error {}

/** An answer as it is read, or none after so long: a signal that drops leaves requests hanging. */
async function answered<T>(path: string, read: (answer: Response) => Promise<T>, most: number, init?: RequestInit): Promise<T> {
  const leave = new AbortController();
  const timer = most === Infinity ? undefined : setTimeout(() => leave.abort(), most);
  try {
    const response = await fetch(path, { credentials: "same-origin", signal: leave.signal, ...init });
    if (response.ok) return await read(response);
    const said: unknown = await response.json().catch(() => null);
    throw new RefusedError(response.status, isRefusal(said) ? said : { what: `the server answered ${response.status}`, want: "", problems: [] });
  } catch (error) {
    throw error instanceof RefusedError ? error : new UnreachableError("no answer");
  } finally {
    clearTimeout(timer);
  }
}

function isRefusal(said: unknown): said is Refusal {
  return typeof said === "object" && said !== null && "what" in said;
}

/** What is asked for, as data. `most`: how long an answer is waited for [ms]. */
export async function ask<T>(path: string, most = Infinity): Promise<T> {
  return answered(path, (answer) => answer.json() as Promise<T>, most);
}

/** What is asked for, as text. */
export async function askText(path: string, most = Infinity): Promise<string> {
  return answered(path, (answer) => answer.text(), most);
}

/** Send something that changes; the mark tells the server that a page of its own sends it. */
export async function send<T>(path: string, body: unknown, most = Infinity): Promise<T> {
  const init: RequestInit = {
    method: "POST",
    headers: { "content-type": "application/json", "x-casewright": "1" },
    body: JSON.stringify(body),
  };
  return answered(path, (answer) => answer.json() as Promise<T>, most, init);
}
