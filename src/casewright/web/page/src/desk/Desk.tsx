import { job } from "../state";
import { Wall } from "./Wall";

/** The desk: the drawn walls with their numbers on them. */
export function Desk() {
  const found = job.value;
  if (found === null) return <main class="desk" aria-busy="true" />;
  return (
    <main class="desk">
      <h1>{found.name}</h1>
      {found.runs.map((run) => (
        <Wall key={run.key} name={`run.${run.key}`} title={run.title} />
      ))}
    </main>
  );
}
