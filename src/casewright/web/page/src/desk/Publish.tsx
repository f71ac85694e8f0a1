import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { ask, type PacketView, send } from "../api";
import { packets } from "../state";
import { attempt } from "./saying";

const WORDS: Record<string, string> = {
  "packet.pdf": "Everything on paper (PDF)",
  "parts.csv": "Every piece (CSV)",
  "buy.csv": "What to buy (CSV)",
  "hardware.csv": "Hardware (CSV)",
};

/** The packet, to be printed or passed on. */
export function Publish() {
  const view = useSignal<PacketView | null>(null);
  const heard = packets.value;
  useEffect(() => {
    ask<PacketView>("/api/packet").then(
      (found) => (view.value = found),
      () => undefined,
    );
  }, [heard]);
  const found = view.value;
  return (
    <section class="publish">
      <h2>The shop packet</h2>
      <p>
        Everything on paper, made from the job as it is now: pages for the saw, the bench and the wall, full-size sticks and
        templates, labels, and lists for a spreadsheet.
      </p>
      <p class="leads">
        <button
          type="button"
          disabled={found?.stage === "making"}
          onClick={() => void attempt(async () => (view.value = await send<PacketView>("/api/packet", {})))}
        >
          {found?.stage === "made" ? "Make it anew" : "Make the packet"}
        </button>{" "}
        <span role="status">
          {found?.stage === "making" && "It is being made; this takes some seconds."}
          {found?.stage === "failed" && found.says}
        </span>
      </p>
      {found?.stage === "made" && (
        <>
          <ul>
            {found.files.map((name) => (
              <li key={name}>
                <a href={`/api/packet/${name}`} target="_blank">
                  {WORDS[name] ?? name}
                </a>
              </li>
            ))}
          </ul>
          <p class="soft">Fingerprint {found.fingerprint}: it stands at the foot of every page.</p>
        </>
      )}
    </section>
  );
}
