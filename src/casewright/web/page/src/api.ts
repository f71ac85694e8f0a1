/** Requests to the server; every type comes from its schema. */
import type { components } from "./api.gen";

type Schemas = components["schemas"];
export type JobView = Schemas["JobView"];
export type Steps = Schemas["Steps"];
export type RunView = Schemas["RunView"];
export type CaseView = Schemas["CaseView"];
export type FindingView = Schemas["FindingView"];
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

async function answered(path: string, init?: RequestInit): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(path, { credentials: "same-origin", ...init });
  } catch {
    throw new UnreachableError("no answer");
  }
  if (response.ok) return response;
  const said: unknown = await response.json().catch(() => null);
  const refusal = isRefusal(said) ? said : { what: `the server answered ${response.status}`, want: "", problems: [] };
  throw new RefusedError(response.status, refusal);
}

function isRefusal(said: unknown): said is Refusal {
  return typeof said === "object" && said !== null && "what" in said;
}

/** What is asked for, as data. */
export async function ask<T>(path: string): Promise<T> {
  return (await answered(path)).json() as Promise<T>;
}

/** What is asked for, as text. */
export async function askText(path: string): Promise<string> {
  return (await answered(path)).text();
}

/** Send something that changes; the mark tells the server that a page of its own sends it. */
export async function send<T>(path: string, body: unknown): Promise<T> {
  const init: RequestInit = {
    method: "POST",
    headers: { "content-type": "application/json", "x-casewright": "1" },
    body: JSON.stringify(body),
  };
  return (await answered(path, init)).json() as Promise<T>;
}
