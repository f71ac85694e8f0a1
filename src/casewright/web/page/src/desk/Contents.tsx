import { useEffect, useRef } from "preact/hooks";
import { place } from "../route";
import { keepHeight } from "./heights";
import { type Part, type Section, shortened } from "./sections";

interface Props {
  sections: readonly Section[];
  /** Key of the section that is shown alone; empty: all are. */
  open: string;
  /** Whether the page may be folded. */
  folds: boolean;
  onFold: (isFolded: boolean) => void;
}

/** What is on a long page, in the order of the work: it stays in sight while the page is read. */
export function Contents({ sections, open, folds, onFold }: Props) {
  const box = useRef<HTMLElement>(null);
  useEffect(() => (box.current === null ? undefined : keepHeight(box.current, "--contents")), []);
  const [only] = sections;
  const within = sections.length === 1 ? only : sections.find((each) => each.id === open);
  return (
    <nav class="contents" aria-label="On this page" ref={box}>
      {sections.length > 1 && (
        <p>
          {sections.map((each) => (
            <Lead key={each.id} to={each.id} title={each.title} isHere={each.id === open} />
          ))}
          {folds && (
            <button type="button" aria-pressed={open === ""} onClick={() => onFold(open === "")}>
              All on one page
            </button>
          )}
        </p>
      )}
      {within !== undefined && within.parts.length > 1 && (
        <p class="parts">
          {shortened(within.parts).map(({ kind, parts }) => (
            <Kind key={parts[0]?.id} kind={kind} parts={parts} />
          ))}
        </p>
      )}
    </nav>
  );
}

/** One part by its name; several of a kind by their numbers. */
function Kind({ kind, parts }: { kind: string; parts: readonly Part[] }) {
  const [first] = parts;
  if (parts.length === 1 && first !== undefined) return <Lead to={first.id} title={kind} whole={first.title} isHere={false} />;
  return (
    <span class="kind" role="group" aria-label={kind}>
      {kind}
      {parts.map((each, n) => (
        <Lead key={each.id} to={each.id} title={`${n + 1}`} whole={`${n + 1}: ${each.title}`} isHere={false} />
      ))}
    </span>
  );
}

function Lead({ to, title, whole = title, isHere }: { to: string; title: string; whole?: string; isHere: boolean }) {
  const more = whole === title ? {} : { title: whole, "aria-label": whole };
  return (
    <a href={`${place.value}#${encodeURIComponent(to)}`} aria-current={isHere ? "true" : undefined} {...more}>
      {title}
    </a>
  );
}
