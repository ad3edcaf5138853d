import { behaviourOf } from './behaviour.js';
import type { CircuitFacts, RunFacts, ServiceFacts } from './facts.js';

const AHEAD = ['line', 'in'];
const BEHIND = ['load', 'out'];

const FOUND = new WeakMap<ServiceFacts, ReadonlySet<string>>();

/**
 * Runs and nodes of a circuit that lie before its own fuse, breaker or regulator, as a cylinder's side of a regulator: it does not
 * protect them. By the side of that device where it is recorded, else by the source that hangs there.
 */
export function aheadOfProtection(facts: ServiceFacts): ReadonlySet<string> {
  const known = FOUND.get(facts) ?? new Set(facts.circuits.flatMap((circuit) => aheadIn(circuit, facts)));
  FOUND.set(facts, known);
  return known;
}

function aheadIn({ id, protection }: CircuitFacts, { runs, nodes }: ServiceFacts): readonly string[] {
  const at = protection?.at;
  if (at === undefined) return [];
  const own = runs.filter((run) => run.circuit === id);
  const sources = new Set(nodes.filter((node) => behaviourOf(node).way === 'source').map((node) => node.id));
  const left = new Set(own);
  const found: string[] = [];
  for (const first of own) {
    if (!left.delete(first)) continue;
    const part = [first];
    const ends = new Set<string>();
    for (const run of part) {
      for (const end of [run.from, run.to]) if (end !== at) ends.add(end);
      for (const other of left) {
        if (!ends.has(other.from) && !ends.has(other.to)) continue;
        left.delete(other);
        part.push(other);
      }
    }
    const side = part.flatMap((run) => sideAt(run, at))[0];
    const before = side === undefined ? [...ends].some((end) => sources.has(end)) && !sources.has(at) : AHEAD.includes(side);
    if (before) found.push(...part.map((run) => run.id), ...ends);
  }
  return found;
}

/** The recorded side of a device on which a run ends. */
function sideAt({ from, to, fromSide, toSide }: RunFacts, at: string): readonly string[] {
  const typed = [from === at ? fromSide : undefined, to === at ? toSide : undefined];
  return typed.filter((side): side is string => side !== undefined && [...AHEAD, ...BEHIND].includes(side));
}
