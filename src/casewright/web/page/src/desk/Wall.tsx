import { useEffect, useRef } from "preact/hooks";
import { askText } from "../api";
import { steps } from "../state";

/** A drawing of the server's, put into the page as elements: its texts stay texts. */
export function put(into: HTMLElement, svg: string): void {
  const drawn = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  into.replaceChildren(document.importNode(drawn, true));
}

/** A wall as drawn. */
export function Wall({ name, title }: { name: string; title: string }) {
  const sheet = useRef<HTMLDivElement>(null);
  const version = steps.value.drawn;
  useEffect(() => {
    let left = false;
    void askText(`/api/drawings/${encodeURIComponent(name)}?version=${version}`).then((svg) => {
      if (!left && sheet.current !== null) put(sheet.current, svg);
    });
    return () => {
      left = true;
    };
  }, [name, version]);
  return (
    <section class="wall" aria-label={title}>
      <h2>{title}</h2>
      <div class="sheet" ref={sheet} />
    </section>
  );
}
