/** The packet, to be printed or passed on. */
export function Publish() {
  return (
    <section>
      <h2>The shop packet</h2>
      <p>Everything on paper, made from the job as it is now: pages for the saw, the bench and the wall, and lists.</p>
    </section>
  );
}
