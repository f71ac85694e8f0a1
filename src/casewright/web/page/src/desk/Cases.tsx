import type { CaseView } from "../api";
import { job } from "../state";
import { Drawing } from "./Drawing";

/** All cases at a glance; each leads to its own page, run by run, then those that stand alone. */
export function Cases() {
  const found = job.value;
  if (found === null) return null;
  const byKey = new Map(found.cases.map((each) => [each.key, each]));
  const groups = found.runs.map((run) => ({
    title: run.title,
    cases: [...run.cases.flatMap((key) => byKey.get(key) ?? []), ...found.cases.filter((each) => each.key.startsWith(`run.${run.key}.`))],
  }));
  const placed = new Set(groups.flatMap((group) => group.cases));
  const alone = { title: groups.length > 0 ? "by itself" : "", cases: found.cases.filter((each) => !placed.has(each)) };
  return (
    <>
      <Drawing name="overview" label="All cases" />
      <div class="cases">
        {[...groups, alone].filter((group) => group.cases.length > 0).map((group) => (
          <section key={group.title}>
            {group.title !== "" && <h2>{group.title}</h2>}
            <ul>
              {group.cases.map((each) => (
                <Row key={each.key} of={each} />
              ))}
            </ul>
          </section>
        ))}
      </div>
    </>
  );
}

function Row({ of }: { of: CaseView }) {
  const key = encodeURIComponent(of.key);
  return (
    <li>
      <a href={`/cases/${key}`}>{of.title}</a> <span class="soft">{of.kind}</span>{" "}
      <a class="soft" href={`/machine/${key}`} aria-label={`part cards of ${of.title}`}>
        part cards
      </a>
    </li>
  );
}
