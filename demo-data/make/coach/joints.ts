import { inch } from '../inches.js';
import { pick } from '../random.js';
import type { Rec } from '../yaml.js';
import { isLine, type Part } from './types.js';

/** How one joint is welded: what a fitter reads off the two parts. */
export interface JointSpec {
  /** Like joints share a key and become one record. */
  readonly key: string;
  readonly stage: string;
  readonly type: 'fillet' | 'square groove' | 'flare' | 'seam';
  readonly size: number;
  readonly length: number;
  readonly sides: 'arrow' | 'both';
  readonly process: 'GMAW' | 'GTAW';
  readonly procedure: string;
  readonly position: string;
  readonly filler: string;
  readonly allRound?: boolean;
}

const ORDER = ['subframe', 'floor', 'walls', 'roof', 'skin', 'services', 'belly', 'fitout', 'finished'];
const later = (a: string, b: string): string => (ORDER.indexOf(a) >= ORDER.indexOf(b) ? a : b);
const family = (part: Part): string => part.id.replace(/^(T)\d+-(W|BC|TC|D).*$/u, '$1$2').split('-')[0] as string;

/** Wall or plate of a part, in. */
export function wallOf(part: Part): number {
  if (!isLine(part)) return part.thickness;
  if (part.section === 'I4x3') return 0.19;
  const last = part.section.split('x').at(-1) as string;
  const [top, bottom] = last.split('/').map(Number);
  return bottom ? (top as number) / bottom : Number(last);
}

/** Leg of a fillet by the thinner part: never more than its wall. */
function leg(a: Part, b: Part): number {
  const thin = Math.min(wallOf(a), wallOf(b));
  return thin >= 0.3 ? 1 / 4 : thin >= 0.18 ? 3 / 16 : thin >= 0.15 ? 5 / 32 : 1 / 8;
}

export function specOf(a: Part, b: Part): JointSpec {
  const families = [family(a), family(b)];
  const has = (one: string): boolean => families.includes(one);
  const stage = later(a.stage, b.stage);
  const base = {
    key: `${a.id}+${b.id}`,
    stage,
    type: 'fillet',
    size: leg(a, b),
    process: 'GMAW',
    procedure: 'WPS-11',
    filler: 'ER5356',
  } as const;
  if (has('TW') || has('TD')) {
    const web = family(a) === 'TW' || family(a) === 'TD' ? a : b;
    const chord = web === a ? b : a;
    const truss = web.id.slice(0, 3);
    const half = web.id.includes('-D')
      ? 'end'
      : Number(web.id.slice(5)) <= 3
        ? 'left'
        : Number(web.id.slice(5)) === 4
          ? 'middle'
          : 'right';
    const at = chord.id.endsWith('TC') ? 'top' : 'bottom';
    return {
      ...base,
      key: `${truss} ${at} ${half}`,
      length: 4,
      sides: 'arrow',
      position: at === 'top' ? '2F' : '1F',
      allRound: true,
    };
  }
  if (has('TBC') || has('TTC')) return { ...base, length: 5.5, sides: 'arrow', position: '2F', allRound: true };
  if (has('KG')) return { ...base, length: has('SF') ? 5 : 6, sides: 'both', position: has('SF') ? '3F' : '4F' };
  if (has('CB') && has('SF')) return { ...base, size: 3 / 16, length: 3, sides: 'both', position: '2F' };
  if (has('CB')) return { ...base, length: 4, sides: 'both', position: '3F' };
  if (has('G')) return { ...base, size: 3 / 16, length: has('P') ? 12 : 10, sides: 'arrow', position: has('P') ? '3F' : '2F' };
  if (has('SX')) return { ...base, length: 9, sides: 'arrow', position: '3F', allRound: true };
  if (has('TP') && has('CR')) return { ...base, type: 'seam', size: 1 / 8, length: 60, sides: 'arrow', position: '2F' };
  if (has('SL') && has('SI')) return { ...base, length: 48, sides: 'arrow', position: '2F' };
  if (has('FT')) return { ...base, length: has('CR') ? 10 : 6, sides: 'arrow', position: has('CR') ? '3F' : '2F' };
  if (has('BR'))
    return { ...base, length: 5, sides: 'arrow', position: '3F', process: 'GTAW', procedure: 'WPS-14', filler: 'ER4043' };
  return { ...base, length: 8, sides: 'arrow', position: '2F', allRound: true };
}

export interface Crew {
  /** Welders for a stage and process. */
  readonly welders: (stage: string, process: string) => readonly string[];
  readonly inspectors: readonly string[];
  /** Day of weld i of n of a stage. */
  readonly date: (stage: string, i: number, n: number) => string;
  readonly next: (date: string) => string;
}

/** Weld records of the joints, grouped by key, numbered in the order in which they were made. */
export function weldRecords(pairs: readonly (readonly [Part, Part])[], crew: Crew, random: () => number): readonly Rec[] {
  const groups = new Map<string, { spec: JointSpec; joins: [string, string][] }>();
  for (const [a, b] of pairs) {
    const spec = specOf(a, b);
    const group = groups.get(spec.key) ?? { spec, joins: [] };
    group.joins.push([a.id, b.id]);
    groups.set(spec.key, group);
  }
  const ordered = [...groups.values()].sort((a, b) => ORDER.indexOf(a.spec.stage) - ORDER.indexOf(b.spec.stage));
  const counts = new Map<string, number>();
  for (const { spec } of ordered) counts.set(spec.stage, (counts.get(spec.stage) ?? 0) + 1);
  const seen = new Map<string, number>();
  return ordered.map(({ spec, joins }, i): Rec => {
    const k = seen.get(spec.stage) ?? 0;
    seen.set(spec.stage, k + 1);
    const date = crew.date(spec.stage, k, counts.get(spec.stage) as number);
    const looked = random() < 0.6 ? date : crew.next(date);
    return {
      id: `W-${String(i + 1).padStart(4, '0')}`,
      joins: joins.length === 1 ? joins[0] : joins,
      type: spec.type,
      size: inch(spec.size),
      length: inch(spec.length),
      sides: spec.sides,
      ...(spec.allRound ? { all_round: true } : {}),
      process: spec.process,
      procedure: spec.procedure,
      filler: spec.filler,
      position: spec.position,
      welder: pick(crew.welders(spec.stage, spec.process), random),
      stage: spec.stage,
      date,
      inspections: [{ method: 'VT', by: pick(crew.inspectors, random), date: looked, result: 'accept' }],
    };
  });
}
