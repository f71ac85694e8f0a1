/** Light, or for bright sun: black on white, every line heavy. */
import { signal } from "@preact/signals";
import { keep, kept } from "./keeping";

export const isSunny = signal(kept<string>("theme") === "sun");

export function setSunny(sunny: boolean): void {
  isSunny.value = sunny;
  keep("theme", sunny ? "sun" : "light");
}
