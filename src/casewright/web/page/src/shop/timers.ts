/** Times for glue and paint: kept as the moment they end, so that a lock or a reload changes nothing. */
import { computed, signal } from "@preact/signals";
import { keep, kept, newId } from "./keeping";

export interface Timer {
  id: string;
  label: string;
  ends: number;
}

export const timers = signal<Timer[]>(kept<Timer[]>("timers") ?? []);
export const clock = signal(Date.now());
export const running = computed(() => timers.value.filter((each) => each.ends > clock.value));
export const over = computed(() => timers.value.filter((each) => each.ends <= clock.value));

function set(all: Timer[]): void {
  timers.value = all;
  keep("timers", all);
}

export function start(label: string, minutes: number): void {
  clock.value = Date.now();
  set([...timers.value, { id: newId(), label, ends: Date.now() + minutes * 60_000 }]);
}

export function stop(id: string): void {
  set(timers.value.filter((each) => each.id !== id));
}

/** '24:05', '1:02:09'. */
export function left(timer: Timer): string {
  const seconds = Math.max(0, Math.ceil((timer.ends - clock.value) / 1000));
  const two = (count: number) => String(count).padStart(2, "0");
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

/** The time of day, '14:35'. */
export function end(timer: Timer): string {
  return new Date(timer.ends).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
}

const told = new Set<string>();

setInterval(() => {
  if (timers.value.length === 0) return;
  clock.value = Date.now();
  for (const each of over.value) {
    if (told.has(each.id)) continue;
    told.add(each.id);
    navigator.vibrate?.([400, 200, 400, 200, 400]);
    beep();
  }
}, 500);

/** Three short tones; a phone that was never touched stays silent. */
function beep(): void {
  try {
    const sound = new AudioContext();
    for (const at of [0, 0.4, 0.8]) {
      const tone = sound.createOscillator();
      tone.frequency.value = 880;
      tone.connect(sound.destination);
      tone.start(sound.currentTime + at);
      tone.stop(sound.currentTime + at + 0.25);
    }
    setTimeout(() => void sound.close(), 2000);
  } catch {
    // the banner says it too
  }
}
