import type { BehindItem } from '../compute/access/types.js';
import { onceEach } from '../compute/lazy-value.js';
import type { Medium, Shell } from '../records/index.js';
import { type Reader, readerOf, say } from '../words/index.js';
import { aheadOfFuse } from './isolate/graph/unfused.js';

const ENGLISH = readerOf({});

export type HazardKind = 'gas' | 'ac' | 'fuel' | 'battery' | 'hydraulic' | 'refrigerant' | 'air' | 'hot';

/** What can hurt a hand that reaches in, in words that stand alone. */
export interface Hazard {
  readonly kind: HazardKind;
  readonly word: string;
  readonly act: string;
  /** The highest voltage on record there, of AC power. */
  readonly volts?: number;
  /** Marked with stripes. */
  readonly grave: boolean;
  /** The records that a hand can touch, nearest first. */
  readonly ids: readonly string[];
}

/** Worst first. Common practice, no source. */
const WORST_FIRST: readonly HazardKind[] = ['gas', 'ac', 'fuel', 'battery', 'hydraulic', 'refrigerant', 'air', 'hot'];

/** The name of a hazard for a reader. */
export const hazardWord = ({ kind, volts }: Pick<Hazard, 'kind' | 'volts'>, reader: Reader): string =>
  volts === undefined ? say(reader, `hazard.${kind}`) : say(reader, 'hazard.ac.volts', { volts });

/** What to do first. */
export const hazardAct = ({ kind }: Pick<Hazard, 'kind'>, reader: Reader): string => say(reader, `hazard.${kind}.act`);

/** Media that hurt whatever they feed. Battery circuits behind their own fuse, water, waste, data and warm air do not. */
const MEDIA: Readonly<Partial<Record<Medium, HazardKind>>> = {
  gas: 'gas',
  ac: 'ac',
  fuel: 'fuel',
  hydraulic: 'hydraulic',
  refrigerant: 'refrigerant',
  air: 'air',
};
/** More than this between two conductors can kill, V: NEC 110.27 guards live parts from 50 V on, unverified citation. */
const TOUCH_V = 50;

/** Through a panel a hand touches what is within an arm’s length and has nothing before it. */
const isTouched = ({ reach, blockedBy }: BehindItem): boolean => reach !== 'beyond' && blockedBy.length === 0;

type ServedShell = Pick<Shell, 'nodes' | 'runs' | 'circuits' | 'components'>;

/** Every hazard that a hand through a panel can touch, worst first; empty where none is recorded there, which is no proof that none is. */
export function hazardsBehind(shell: ServedShell, behind: readonly BehindItem[]): readonly Hazard[] {
  const kindOf = hazardsOf(shell);
  const found = new Map<HazardKind, string[]>();
  for (const item of behind.filter(isTouched)) {
    const kind = kindOf.get(item.id);
    if (kind !== undefined) found.set(kind, [...(found.get(kind) ?? []), item.id]);
  }
  return WORST_FIRST.flatMap((kind) => {
    const ids = found.get(kind);
    const volts = kind === 'ac' && ids ? voltsOf(ids, shell) : undefined;
    const word = hazardWord({ kind, volts }, ENGLISH);
    return ids ? [{ kind, word, act: hazardAct({ kind }, ENGLISH), volts, grave: true, ids }] : [];
  });
}

/** What each record can do to a hand; those that can do nothing are not in it. */
const hazardsOf = onceEach(({ nodes, runs, circuits, components }: ServedShell): ReadonlyMap<string, HazardKind> => {
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
});

/** The highest recorded voltage of what is touched, V; undefined where none is recorded. */
function voltsOf(
  ids: readonly string[],
  { nodes, runs, circuits }: Pick<Shell, 'nodes' | 'runs' | 'circuits'>,
): number | undefined {
  const circuitOf = new Map([...nodes, ...runs].map((one) => [one.id, one.circuit] as const));
  const volts = new Map(circuits.map((circuit) => [circuit.id, circuit.voltageV] as const));
  const found = ids.flatMap((id) => volts.get(circuitOf.get(id) ?? '') ?? []);
  return found.length === 0 ? undefined : found.reduce((most, one) => Math.max(most, one), 0);
}
