import { useEffect } from "preact/hooks";
import type { FindingView, ProblemView, QuestionView } from "../api";
import { hash } from "../route";
import { job } from "../state";
import { pageOf, toldId } from "./placing";
import { capital, joined, Said } from "./Sentence";

/** What is wrong in the file itself: all of it at once, each where it stands. */
export function Problems({ problems }: { problems: readonly ProblemView[] }) {
  if (problems.length === 0) return null;
  return (
    <section class="problems" role="alert" aria-label="The job file">
      <h2>The job file has no meaning as it is; the drawings show it as it was before.</h2>
      <ul>
        {problems.map((each) => (
          <li key={`${each.line}:${each.column}:${each.what}`}>
            <b>
              {each.file}
              {each.line > 0 && ` line ${each.line}`}
              {each.word !== "" && `, ${each.word}`}
            </b>
            : {each.what}; {each.want}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What was found and what is asked about the things of a page. */
export function Told({ page }: { page: string }) {
  const found = job.value;
  const here = `/${page}`;
  const findings = (found?.findings ?? []).map((each, n) => ({ each, n })).filter(({ each }) => pageOf(each.path) === here);
  const questions = (found?.questions ?? []).map((each, n) => ({ each, n })).filter(({ each }) => pageOf(each.path) === here);
  const wanted = hash.value;
  useEffect(() => {
    if (wanted !== "") document.getElementById(wanted)?.focus();
  }, [wanted, findings.length, questions.length]);
  if (findings.length + questions.length === 0) return null;
  return (
    <ul class="told" aria-label="Found and asked here">
      {questions.map(({ each, n }) => (
        <Question key={toldId("question", n)} id={toldId("question", n)} question={each} />
      ))}
      {findings.map(({ each, n }) => (
        <Finding key={toldId("finding", n)} id={toldId("finding", n)} finding={each} />
      ))}
    </ul>
  );
}

const WORDS = { stop: "Stop", care: "Look", note: "Note" } as const;
const SIGNS = { stop: "■", care: "▲", note: "·" } as const;

function Finding({ id, finding }: { id: string; finding: FindingView }) {
  return (
    <li id={id} tabIndex={-1} class={finding.severity}>
      <p>
        <b>
          <span aria-hidden="true">{SIGNS[finding.severity]}</span> {WORDS[finding.severity]}, {finding.rule}:
        </b>{" "}
        <Said words={finding.says} />.
      </p>
      {finding.remedies.length > 0 && (
        <p class="soft">
          What would help: <Said words={joined("; or ", finding.remedies)} />.
        </p>
      )}
      {finding.source !== "" && <p class="soft">Source: {finding.source}.</p>}
    </li>
  );
}

function Question({ id, question }: { id: string; question: QuestionView }) {
  const waiting = question.waiting.length;
  return (
    <li id={id} tabIndex={-1} class="asked">
      <p>
        <b>
          <span aria-hidden="true">?</span> <Said words={capital(question.needs)} />:
        </b>{" "}
        <Said words={question.because} />.{waiting > 0 && ` ${waiting} part${waiting === 1 ? "" : "s"} wait${waiting === 1 ? "s" : ""}.`}
      </p>
      {question.how.length > 0 && (
        <p class="soft">
          How: <Said words={question.how} />.
        </p>
      )}
    </li>
  );
}
