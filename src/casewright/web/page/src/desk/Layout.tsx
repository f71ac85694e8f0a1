import type { JobView, RunView } from "../api";
import { job } from "../state";
import { Answers } from "./Answers";
import { Drawing, sized } from "./Drawing";
import { Told } from "./Told";

type IslandView = JobView["islands"][number];

/** The walls with their cases, drawn to scale: every number is changed where it stands. */
export function Layout() {
  const found = job.value;
  if (found === null) return null;
  const ofIslands = new Set(found.islands.flatMap((island) => island.runs));
  const onWall = new Set(found.walls.map((wall) => wall.key));
  const apart = found.runs.filter((run) => !onWall.has(run.wall ?? "") && !ofIslands.has(run.key));
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
      {found.islands.map((island) => (
        <Island key={island.key} island={island} runs={found.runs.filter((run) => island.runs.includes(run.key))} />
      ))}
      {found.runs.length === 0 && <Drawing name="overview" label="All cases" />}
      {found.pages.includes("survey") && (
        <section class="wall">
          <h2>From above</h2>
          <Drawing name="plan" label="The room from above" />
        </section>
      )}
      {found.has_heights && (
        <section class="wall" aria-label="Heights">
          <h2>Heights</h2>
          <Answers of="heights" words="Answers for the heights, floor to ceiling" />
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
      {run.is_open && <Answers of={`run.${run.key}`} words="Other answers for this run" />}
    </section>
  );
}

/** What stands free: its sides in elevation, what was found about it, and its other places. */
function Island({ island, runs }: { island: IslandView; runs: readonly RunView[] }) {
  return (
    <section class="wall" id={`island:${island.key}`}>
      <h2>{island.title}</h2>
      <div class="pair">
        {runs.map((run) => (
          <div key={run.key}>
            {run.title !== island.title && <h3>{run.title}</h3>}
            <Drawing name={sized(`run.${run.key}`)} label={run.title} />
            <Run run={run} isTold={false} />
          </div>
        ))}
      </div>
      <p class="leads">
        <a href={`/cases/${encodeURIComponent(`island.${island.key}`)}`}>Its panels and its counter, from above</a>
      </p>
      <Told page={`layout/island.${island.key}`} />
      {island.is_open && <Answers of={`island.${island.key}`} words="Other places for this island" />}
    </section>
  );
}
