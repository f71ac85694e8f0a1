/** Lines of words and sizes: fractions stacked, signs with their word. */
import { go } from "../route";
import { cards, parts } from "./book";
import type { Bit, Line } from "./types";

const FRACTION = /^(.*?)(?:(?<=\d) )?(\d+)\/(\d+)(.*)$/;

/** A size, its fraction stacked; read aloud as it is written on one line. */
export function Size({ text }: { text: string }) {
  const found = FRACTION.exec(text);
  if (found === null) return <span class="size">{text}</span>;
  const [, whole, over, under, after] = found;
  return (
    <span class="size">
      <span class="hidden">{text}</span>
      <span aria-hidden="true">
        {whole}
        <span class="stack">
          <span>{over}</span>
          <span class="under">{under}</span>
        </span>
        {after}
      </span>
    </span>
  );
}

function One({ bit }: { bit: Bit }) {
  switch (bit.kind) {
    case "size":
      return <Size text={bit.text} />;
    case "sign":
      return <strong class={bit.text === "Caution" ? "sign caution" : "sign"}>{bit.text}:</strong>;
    case "blank":
      return <span class="blank">____</span>;
    case "part": {
      const part = parts.value.get(bit.to);
      if (part === undefined) return <>{bit.text}</>;
      const to = `/shop/part/${encodeURIComponent(part.mark)}`;
      return (
        <a href={to} onClick={(event) => (event.preventDefault(), go(to))}>
          {bit.text}
        </a>
      );
    }
    case "card": {
      const card = cards.value.get(bit.to);
      if (card === undefined) return <>{bit.text}</>;
      const to = `/shop/${card.station}/${encodeURIComponent(card.id)}`;
      return (
        <a href={to} onClick={(event) => (event.preventDefault(), go(to))}>
          {bit.text}
        </a>
      );
    }
    default:
      return <strong>{bit.text}</strong>;
  }
}

export function Words({ line }: { line: Line }) {
  return (
    <>
      {line.map((bit, n) => (typeof bit === "string" ? <span key={n}>{bit}</span> : <One key={n} bit={bit} />))}
    </>
  );
}

export function plain(line: Line): string {
  return line.map((bit) => (typeof bit === "string" ? bit : bit.text)).join("");
}
