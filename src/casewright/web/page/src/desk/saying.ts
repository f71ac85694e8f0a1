/** What the desk says after something was tried. */
import { signal } from "@preact/signals";
import { type Edited, RefusedError, send, UnreachableError } from "../api";
import { job } from "../state";

export const said = signal("");

/** What is wrong, in the server's words. */
export function wordsOf(error: unknown): string {
  if (error instanceof RefusedError) {
    const { what, want, problems } = error.refusal;
    const told = problems ?? [];
    if (told.length > 1) return told.map((p) => `${p.what}; ${p.want}`).join("\n");
    return want === "" || want === undefined ? what : `${what}; ${want}`;
  }
  if (error instanceof UnreachableError) return "No answer from the server: nothing was changed.";
  throw error;
}

/** Change the job file; the next change counts from what it says then. */
export async function edit(path: string, body: object): Promise<Edited> {
  const done = await send<Edited>(path, { digest: job.value?.digest ?? "", ...body });
  if (job.value !== null) job.value = { ...job.value, digest: done.digest };
  return done;
}

/** Try something; say what is wrong when it is refused. */
export async function attempt(what: () => Promise<unknown>): Promise<boolean> {
  try {
    await what();
    said.value = "";
    return true;
  } catch (error) {
    said.value = wordsOf(error);
    return false;
  }
}
