import { job } from "../state";
import { Answers } from "./Answers";
import { Drawing } from "./Drawing";
import { Told } from "./Told";

/** The walls with their cases, drawn to scale: every number is changed where it stands. */
export function Layout() {
  const found = job.value;
  if (found === null) return null;
  return (
    <>
      {found.runs.map((run) => (
        <section class="wall" key={run.key} id={`run:${run.key}`}>
          <h2>{run.title}</h2>
          <Drawing name={`run.${run.key}`} label={run.title} />
          <Told page={`layout/${run.key}`} />
          <Answers run={run.key} />
        </section>
      ))}
      {found.runs.length === 0 && <Drawing name="overview" label="All cases" />}
      {found.pages.includes("survey") && (
        <section class="wall">
          <h2>From above</h2>
          <Drawing name="plan" label="The room from above" />
        </section>
      )}
      <Told page="layout" />
    </>
  );
}
