import { job } from "../state";
import { Drawing } from "./Drawing";

/** All cases at a glance; each leads to its own page. */
export function Cases() {
  const found = job.value;
  if (found === null) return null;
  return (
    <>
      <Drawing name="overview" label="All cases" />
      <ul class="cases">
        {found.cases.map((each) => (
          <li key={each.key}>
            <a href={`/cases/${encodeURIComponent(each.key)}`}>{each.title}</a>{" "}
            <a class="soft" href={`/machine/${encodeURIComponent(each.key)}`}>
              part cards
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}
