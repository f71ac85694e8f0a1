/** Lengths by thumb. Exact work is the server's: here a reading is held against what it is expected to be. */

const INCH = 25.4;

export interface Typed {
  whole: string;
  /** Of an inch, in sixty-fourths. */
  part: number;
}

/** 34 as '17/32', 32 as '1/2'. */
export function fraction(sixtyFourths: number): string {
  let [over, under] = [sixtyFourths, 64];
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return over === 0 ? "" : `${over}/${under}`;
}

/** As it is written: '33 1/16', '0.703', '812.5'. */
export function written(typed: Typed): string {
  const words = [typed.whole, fraction(typed.part)].filter((word) => word !== "");
  return words.join(" ");
}

/** [mm], NaN where nothing is typed. */
export function millimetres(typed: Typed, unit: "in" | "mm"): number {
  if (written(typed) === "") return Number.NaN;
  const size = Number(typed.whole === "" ? "0" : typed.whole) + typed.part / 64;
  return unit === "in" ? size * INCH : size;
}

/** About how far, in the unit of the job: '3/4', '2.5'. */
export function about(size: number, unit: "in" | "mm"): string {
  if (unit === "mm") return `${(Math.round(size * 10) / 10).toString()} mm`;
  const thirtySeconds = Math.max(1, Math.round((size / INCH) * 32));
  const whole = Math.floor(thirtySeconds / 32);
  return `${written({ whole: whole === 0 ? "" : String(whole), part: 2 * (thirtySeconds % 32) })} in`;
}
