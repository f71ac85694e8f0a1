import { job } from "../state";
import { Chapter } from "./Chapter";

/** Cards of parts, case by case, and the jigs of the job. */
export function Machine({ of }: { of: string }) {
  const found = job.value;
  if (found === null) return null;
  const places = [...found.cases.map((each) => [each.key, each.title] as const), ["runs", "fillers and trims"] as const];
  return (
    <>
      <nav class="within" aria-label="Cases">
        <a href="/machine" aria-current={of === "" ? "page" : undefined}>
          jigs
        </a>
        {places.map(([key, title]) => (
          <a key={key} href={`/machine/${encodeURIComponent(key)}`} aria-current={of === key ? "page" : undefined}>
            {title}
          </a>
        ))}
      </nav>
      <Chapter page="machine" of={of} />
    </>
  );
}
