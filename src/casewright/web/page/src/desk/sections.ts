/** The sections of a long page: which there are, one of them open at a time, the others found by name. */

export interface Part {
  id: string;
  title: string;
}

export interface Section extends Part {
  parts: readonly Part[];
}

/** A page that is so many screens high shows one section at a time. */
const FOLDED_SCREENS = 10;
const FEWEST = 4;
/** Parts that a list may name in full and still leave room for the page under it. */
const MOST_IN_FULL = 16;
const KIND = /^.*?(?=,| for |:|$)/;
const MARKS = /(?:^|; )(\d+(?:, \d+)*)(?=: )/g;
const BEFORE = /^(Cutting|Setting): /;

/** Sections of a page in the order of the work; those without a place of their own are given one. */
export function sectionsOf(page: HTMLElement): Section[] {
  return [...page.querySelectorAll<HTMLElement>(":scope > section")].flatMap((section, number) => {
    section.id ||= `section-${number + 1}`;
    const title = section.querySelector("h2")?.textContent ?? "";
    const heads = headsOf(section);
    const parts = heads.map((head, at) => {
      head.id ||= `${section.id}-${at + 1}`;
      return { id: head.id, title: head.textContent };
    });
    return title === "" ? [] : [{ id: section.id, title: title.replace(BEFORE, ""), parts }];
  });
}

/** What a section is made of: where it is cards under a heading or two, the cards. */
function headsOf(section: HTMLElement): HTMLElement[] {
  const [heads, cards] = ["h3", "h4"].map((rank) => [...section.querySelectorAll<HTMLElement>(rank)]) as [HTMLElement[], HTMLElement[]];
  return heads.length < FEWEST && cards.length > heads.length ? cards : heads;
}

/** A list that stays small: what is alike of many parts under one name, cards by the marks of their pieces. */
export function shortened(parts: readonly Part[]): { kind: string; parts: Part[] }[] {
  if (parts.length <= MOST_IN_FULL) return parts.map((each) => ({ kind: each.title, parts: [each] }));
  const found: { kind: string; parts: Part[] }[] = [];
  for (const each of parts) {
    const marks = [...each.title.matchAll(MARKS)].map((match) => match[1]).join(", ");
    const kind = marks === "" ? (KIND.exec(each.title)?.[0] ?? each.title) : marks;
    const last = found.at(-1);
    if (last?.kind === kind) last.parts.push(each);
    else found.push({ kind, parts: [each] });
  }
  return found;
}

/** Whether a list of what is on a page would be of use. */
export function isListed(sections: readonly Section[]): boolean {
  const [first] = sections;
  return sections.length >= FEWEST || (sections.length === 1 && first !== undefined && first.parts.length >= FEWEST);
}

/** Whether a page is too long to be seen as one. */
export function isLong(page: HTMLElement, sections: readonly Section[]): boolean {
  return sections.length >= FEWEST && page.scrollHeight > FOLDED_SCREENS * innerHeight;
}

/** Key of the section that an element of a page stands in; the first where there is no such element. */
export function sectionWith(sections: readonly Section[], id: string): string {
  const at = id === "" ? null : document.getElementById(id);
  const inside = sections.find((each) => at !== null && document.getElementById(each.id)?.contains(at));
  return (inside ?? sections[0])?.id ?? "";
}

/** Show one section, or all; what is not shown is still found by the browser's own search, and printed. */
export function showOnly(sections: readonly Section[], shown: string): void {
  for (const each of sections) {
    const section = document.getElementById(each.id);
    if (section === null) continue;
    if (shown === "" || each.id === shown) section.removeAttribute("hidden");
    else section.setAttribute("hidden", "until-found");
  }
}
