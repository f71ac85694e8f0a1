import { useSignal } from "@preact/signals";
import { RefusedError, send } from "./api";
import { listen } from "./news";
import { refresh } from "./state";

/** A device that has not joined yet: the code is on the desk's screen. */
export function Join() {
  const said = useSignal("");
  const code = useSignal("");

  async function join(event: Event) {
    event.preventDefault();
    try {
      await send("/api/join", { code: code.value });
      await refresh();
      listen();
    } catch (error) {
      said.value = error instanceof RefusedError ? `${error.refusal.what}; ${error.refusal.want}` : "No answer from the desk.";
    }
  }

  return (
    <main class="join">
      <h1>Join this job</h1>
      <p>The desk shows a code under “Other devices”.</p>
      <form onSubmit={join}>
        <label>
          Code
          <input
            value={code.value}
            onInput={(event) => (code.value = event.currentTarget.value)}
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
          />
        </label>
        <button type="submit">Join</button>
      </form>
      <p role="alert">{said.value}</p>
    </main>
  );
}
