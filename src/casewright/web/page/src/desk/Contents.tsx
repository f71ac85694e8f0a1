import { useEffect, useRef } from "preact/hooks";
import { place } from "../route";
import { keepHeight } from "./heights";
import type { Section } from "./sections";

/** Parts that a list may have and still leave room for the page under it. */
const MOST_IN_SIGHT = 16;

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
  const isTall = (within?.parts.length ?? 0) > MOST_IN_SIGHT;
  return (
    <nav class={isTall ? "contents tall" : "contents"} aria-label="On this page" ref={box}>
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
          {within.parts.map((each) => (
            <Lead key={each.id} to={each.id} title={each.title} isHere={false} />
          ))}
        </p>
      )}
    </nav>
  );
}

function Lead({ to, title, isHere }: { to: string; title: string; isHere: boolean }) {
  return (
    <a href={`${place.value}#${encodeURIComponent(to)}`} aria-current={isHere ? "true" : undefined}>
      {title}
    </a>
  );
}
