import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { ask, type Joining } from "../api";

/** How a phone or a tablet joins. */
export function Devices() {
  const found = useSignal<Joining | null>(null);
  useEffect(() => {
    void ask<Joining>("/api/join").then((view) => (found.value = view));
  }, []);
  const view = found.value;
  if (view === null) return null;
  return (
    <section class="devices">
      <h2>Other devices</h2>
      {view.addresses.length === 0 ? (
        <p>
          This job is served to this machine alone. To let a phone at home join, stop the server and start it with{" "}
          <code>--network</code>.
        </p>
      ) : (
        <>
          <p>On the phone, on the same home network, open one of these and type the code:</p>
          <ul>
            {view.addresses.map((each) => (
              <li key={each}>
                <b>{each}</b>
              </li>
            ))}
          </ul>
          {view.code !== "" && <p class="code">{view.code}</p>}
        </>
      )}
    </section>
  );
}
