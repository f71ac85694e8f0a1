import type { RunView } from "../api";
import { job } from "../state";
import { Answers } from "./Answers";
import { Drawing, sized } from "./Drawing";
import { Told } from "./Told";

/** The walls with their cases, drawn to scale: every number is changed where it stands. */
export function Layout() {
  const found = job.value;
  if (found === null) return null;
  const apart = found.runs.filter((run) => !found.walls.some((wall) => wall.key === run.wall));
  return (
    <>
      <p class="leads">
        <a href="/solid">The room in three dimensions</a>
      </p>
      {found.walls.map((wall) => (
        <section class="wall" key={wall.key} id={`wall:${wall.key}`}>
          <h2>{wall.title}</h2>
          <Drawing name={sized(`wall.${wall.key}`)} label={wall.title} />
          {found.runs
            .filter((run) => run.wall === wall.key)
            .map((run) => (
              <Run key={run.key} run={run} isTold />
            ))}
        </section>
      ))}
      {apart.map((run) => (
        <section class="wall" key={run.key}>
          <h2>{run.title}</h2>
          <Drawing name={sized(`run.${run.key}`)} label={run.title} />
          <Run run={run} isTold={false} />
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

/** What was found about a run, and its other answers. */
function Run({ run, isTold }: { run: RunView; isTold: boolean }) {
  return (
    <section class="run" id={`run:${run.key}`} aria-label={run.title}>
      {isTold && <h3>{run.title}</h3>}
      <Told page={`layout/${run.key}`} />
      {run.is_open && <Answers run={run.key} />}
    </section>
  );
}
