import { Chapter } from "./Chapter";
import { Told } from "./Told";

/** A case: its drawings, its parts, how it goes together; what was found of it first. */
export function CasePage({ of }: { of: string }) {
  return (
    <>
      <Told page={`cases/${of}`} />
      <p class="leads">
        <a href={`/machine/${encodeURIComponent(of)}`}>Cards of its parts</a>
        {" · "}
        <a href={`/solid/${encodeURIComponent(of)}`}>In three dimensions</a>
      </p>
      <Chapter page="cases" of={of} />
    </>
  );
}
