import { go } from "../route";
import { job } from "../state";
import { Chapter } from "./Chapter";
import { attempt, edit, said } from "./saying";
import { Told } from "./Told";

/** A case: its drawings, its parts, how it goes together; what was found of it first. */
export function CasePage({ of }: { of: string }) {
  const title = job.value?.cases.find((each) => each.key === of)?.title;
  if (title === undefined) return <p>There is no such case in the job.</p>;
  return (
    <>
      <Told page={`cases/${of}`} />
      <p class="leads">
        <a href={`/machine/${encodeURIComponent(of)}`}>Cards of its parts</a>
        {" · "}
        <a href={`/solid/${encodeURIComponent(of)}`}>In three dimensions</a>
      </p>
      <Chapter page="cases" of={of} />
      {isWritten(of) && (
        <p class="leads">
          <button type="button" onClick={() => void takeOut(of, title)}>
            Take {title} out of the job
          </button>
        </p>
      )}
    </>
  );
}

/** Whether the job file has it as a case: what belongs to a run or an island has a path as its key. */
function isWritten(key: string): boolean {
  return !key.includes(".");
}

/** No question asked first: undoing it puts every character back. */
async function takeOut(key: string, title: string) {
  const done = await attempt(() => edit(`/api/cases/${encodeURIComponent(key)}/out`, {}));
  if (!done) return;
  go("/cases");
  said.value = `${title} is taken out of the job, and out of its run. Undo puts it back.`;
}
