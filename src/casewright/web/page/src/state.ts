/** What every part of the page shares: the job as last heard of, and whether the server answers. */
import { computed, signal } from "@preact/signals";
import { ask, type JobView, RefusedError, type Steps, UnreachableError } from "./api";

export const job = signal<JobView | null>(null);
export const steps = signal<Steps>({ version: 0, drawn: 0, checked: 0, counted: 0, planned: 0 });
export const reachable = signal(true);
/** Counts news of the record. */
export const records = signal(0);
/** Counts news of plans of cuts that are made anew. */
export const plans = signal(0);
/** Whether the server has a newer page than this one. */
export const isStale = signal(false);
/** Counts news of the packet. */
export const packets = signal(0);
export const mustJoin = signal(false);

/** Whether what is drawn is what the file says. */
export const isDrawn = computed(() => steps.value.drawn >= steps.value.version);
export const isCounted = computed(() => steps.value.counted >= steps.value.version);
export const isPlanned = computed(() => steps.value.planned >= steps.value.version);

const MOST_MS = 60_000;

let asking = false;
let again = false;

/** Ask for the job anew; a second wish while one is under way is one more ask after it. */
export async function refresh(): Promise<void> {
  if (asking) {
    again = true;
    return;
  }
  asking = true;
  try {
    do {
      again = false;
      const found = await ask<JobView>("/api/job", MOST_MS);
      job.value = found;
      steps.value = found.steps;
      reachable.value = true;
      mustJoin.value = false;
    } while (again);
  } catch (error) {
    if (error instanceof UnreachableError) reachable.value = false;
    else if (error instanceof RefusedError && error.status === 401) mustJoin.value = true;
    else throw error;
  } finally {
    asking = false;
  }
}
