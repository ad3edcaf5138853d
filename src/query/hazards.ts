import type { BehindItem } from '../compute/access/types.js';
import type { Medium } from '../model/services.js';
import type { Shell } from '../model/shell.js';
import { aheadOfFuse } from './isolate/graph/unfused.js';

export type HazardKind = 'gas' | 'ac' | 'fuel' | 'battery' | 'hydraulic' | 'refrigerant' | 'air' | 'hot';

/** What can hurt a hand that reaches in, in words that stand alone. */
export interface Hazard {
  readonly kind: HazardKind;
  readonly word: string;
  readonly act: string;
  /** Marked with stripes. */
  readonly grave: boolean;
  /** The records that a hand can touch, nearest first. */
  readonly ids: readonly string[];
}

/** Worst first. Common practice, no source. */
const HAZARDS: readonly Pick<Hazard, 'kind' | 'word' | 'act'>[] = [
  { kind: 'gas', word: 'Gas', act: 'No flame. Shut the source first.' },
  { kind: 'ac', word: 'AC power', act: 'Disconnect all sources, prove dead.' },
  { kind: 'fuel', word: 'Fuel', act: 'No flame. Shut the source first.' },
  { kind: 'battery', word: 'DC cable ahead of its fuse', act: 'No loose metal: a short burns. Take its source off first.' },
  { kind: 'hydraulic', word: 'Hydraulic pressure', act: 'Let the pressure off first.' },
  { kind: 'refrigerant', word: 'Refrigerant', act: 'Under pressure: licensed work.' },
  { kind: 'air', word: 'Compressed air', act: 'Let the pressure off first.' },
  { kind: 'hot', word: 'Hot parts', act: 'Switch off and let it cool.' },
];

/** Media that hurt whatever they feed. Battery circuits behind their own fuse, water, waste, data and warm air do not. */
const MEDIA: Readonly<Partial<Record<Medium, HazardKind>>> = {
  gas: 'gas',
  ac: 'ac',
  fuel: 'fuel',
  hydraulic: 'hydraulic',
  refrigerant: 'refrigerant',
  air: 'air',
};
/** More than this between two conductors can kill, V: NEC 110.27 guards live parts from 50 V on, from memory. */
const TOUCH_V = 50;

/** Through a panel a hand touches what is within an arm’s length and has nothing before it. */
const isTouched = ({ reach, blockedBy }: BehindItem): boolean => reach !== 'beyond' && blockedBy.length === 0;

/** Every hazard that a hand through a panel can touch, worst first; empty where none is recorded there, which is no proof that none is. */
export function hazardsBehind(
  shell: Pick<Shell, 'nodes' | 'runs' | 'circuits' | 'components'>,
  behind: readonly BehindItem[],
): readonly Hazard[] {
  const kindOf = hazardsOf(shell);
  const found = new Map<HazardKind, string[]>();
  for (const item of behind.filter(isTouched)) {
    const kind = kindOf.get(item.id);
    if (kind !== undefined) found.set(kind, [...(found.get(kind) ?? []), item.id]);
  }
  return HAZARDS.flatMap((one) => {
    const ids = found.get(one.kind);
    return ids ? [{ ...one, word: one.kind === 'ac' ? acWord(ids, shell) : one.word, grave: true, ids }] : [];
  });
}

/** What each record can do to a hand; those that can do nothing are not in it. */
function hazardsOf({
  nodes,
  runs,
  circuits,
  components,
}: Pick<Shell, 'nodes' | 'runs' | 'circuits' | 'components'>): ReadonlyMap<string, HazardKind> {
  const bare = aheadOfFuse({ nodes, runs, circuits });
  const volts = new Map(circuits.map((circuit) => [circuit.id, circuit.voltageV ?? 0] as const));
  const of = (id: string, medium: Medium, circuit: string | undefined): HazardKind | undefined => {
    if (medium !== 'dc') return MEDIA[medium];
    return bare.has(id) || (volts.get(circuit ?? '') ?? 0) > TOUCH_V ? 'battery' : undefined;
  };
  const hot = new Set(components.filter((one) => one.hot).map((one) => one.id));
  return new Map([
    ...[...hot].map((id) => [id, 'hot'] as const),
    ...[...nodes, ...runs].flatMap((one) => {
      const kind = of(one.id, one.medium, one.circuit);
      return kind === undefined ? [] : [[one.id, kind] as const];
    }),
  ]);
}

/** `120 V AC`, by the highest recorded voltage of what is touched. */
function acWord(ids: readonly string[], { nodes, runs, circuits }: Pick<Shell, 'nodes' | 'runs' | 'circuits'>): string {
  const circuitOf = new Map([...nodes, ...runs].map((one) => [one.id, one.circuit] as const));
  const volts = new Map(circuits.map((circuit) => [circuit.id, circuit.voltageV] as const));
  const found = ids.flatMap((id) => volts.get(circuitOf.get(id) ?? '') ?? []);
  return found.length === 0 ? 'AC power' : `${found.reduce((most, one) => Math.max(most, one), 0)} V AC`;
}
