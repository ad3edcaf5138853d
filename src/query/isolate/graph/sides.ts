import { type Behaviour, isSide } from './behaviour.js';
import type { NodeFacts, RunEnd, Unknown } from './facts.js';

/** On which side of a node each of its run ends lands, as far as the record says. */
export interface NodeSides {
  /** Recorded, or following from what is recorded. */
  readonly known: ReadonlyMap<RunEnd, string>;
  /** Either side is possible: the worst counts. */
  readonly open: readonly RunEnd[];
  readonly unknown?: Unknown;
}

/**
 * Sides of a node that has any. Two runs without a side lie one on each side of a switch or valve; a charger takes in at its AC side,
 * an inverter gives out there. What else is not recorded stays open.
 */
export function sidesOf(node: NodeFacts, behaviour: Behaviour, ends: readonly RunEnd[]): NodeSides {
  const known = new Map<RunEnd, string>();
  for (const end of ends) {
    if (end.side !== undefined && isSide(end.side, behaviour)) known.set(end, end.side);
    else {
      const byMedium = sideByMedium(node, end);
      if (byMedium !== undefined) known.set(end, byMedium);
    }
  }
  const open = ends.filter((end) => !known.has(end));
  const [first, second] = open;
  if (!first || ends.length === 0) return { known, open: [] };
  if (behaviour.sides.length === 2 && open.length === 1 && ends.length === 2) {
    const taken = [...known.values()][0] as string;
    known.set(first, opposite(taken, behaviour));
    return { known, open: [] };
  }
  if (behaviour.way === 'parts' && ends.length <= 2) {
    known.set(first, 'line');
    if (second) known.set(second, 'load');
    return { known, open: [] };
  }
  return { known, open, unknown: { id: node.id, what: asksFor(open, behaviour) } };
}

/** A charger makes DC of AC, an inverter AC of DC. */
function sideByMedium({ role }: NodeFacts, { run }: RunEnd): string | undefined {
  if (run.medium !== 'ac') return undefined;
  if (role === 'charger') return 'in';
  return role === 'inverter' ? 'out' : undefined;
}

const opposite = (side: string, { sides }: Behaviour): string => (side === sides[0] ? sides[1] : sides[0]) as string;

function asksFor(open: readonly RunEnd[], { way, sides }: Behaviour): string {
  const runs = open.map(({ run, end }) => `${run.id} (${end}_side)`).join(', ');
  const choice = way === 'changeover' ? '`supply 1`, `supply 2` … or `load`' : sides.map((side) => `\`${side}\``).join(' or ');
  return `on which side of it these end is not recorded: ${runs}: ${choice}`;
}
