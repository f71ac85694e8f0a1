/** Other answers for a run, two side by side. */
export function Answers({ run }: { run: string }) {
  return <span hidden>{run}</span>;
}
