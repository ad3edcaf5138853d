/** What must not outlive the process: folders of its own, a browser. */
const acts = new Set<() => void>();
let waiting = false;

/**
 * Runs `act` when the process ends, by itself or by a signal that main.ts takes; it must not wait for anything. Gives what calls it off.
 * A process that is killed outright runs nothing: what it leaves bears its name, and the next one takes it away.
 */
export function atEnd(act: () => void): () => void {
  if (!waiting) process.on('exit', endAll);
  waiting = true;
  acts.add(act);
  return () => void acts.delete(act);
}

function endAll(): void {
  for (const act of [...acts].reverse()) {
    acts.delete(act);
    try {
      act();
    } catch {
      // The others still have their turn.
    }
  }
}
