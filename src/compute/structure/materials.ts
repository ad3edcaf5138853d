import type { Model } from '../../model/shell.js';
import type { Certificate, Member } from '../../records/index.js';
import type { TakeOff } from '../takeoff/types.js';

/** One heat or lot of a shell: what is made of it, and what papers say of it. */
export interface HeatFigure {
  readonly heat: string;
  /** Of its members, sorted. */
  readonly alloys: readonly string[];
  readonly members: readonly string[];
  readonly massKg: number;
  /** Certificates that name it. */
  readonly certificates: readonly Certificate[];
}

/** How far the metal of a shell can be followed back to the mill. */
export interface MaterialFigures {
  /** Mass of all primary members, kg. */
  readonly primaryKg: number;
  /** Of that, what has a heat with an inspection certificate (EN 10204 3.1 or 3.2) for its own alloy, kg. */
  readonly tracedKg: number;
  /** Traced over primary; absent where nothing primary has mass. */
  readonly share?: number;
  readonly heats: readonly HeatFigure[];
  /** Primary members that are not traced. */
  readonly untraced: readonly string[];
  readonly assumptions: readonly string[];
}

/** Primary unless the record says secondary. */
export const isPrimary = (member: Member): boolean => member.memberClass !== 'secondary';

/** Values tested on the heat itself. 2.1 and 2.2 speak of the order only: EN 10204:2004, unverified citation. */
export const isOfTheHeat = ({ type }: Certificate): boolean => type === '3.1' || type === '3.2';

/** Share by mass of primary structure that papers trace to its heat, and every heat with its papers. */
export function materials({ shell, library }: Model, takeOff: Pick<TakeOff, 'members'>): MaterialFigures {
  const papers = certificatesByHeat([...library.certificates.values()]);
  const kg = new Map(takeOff.members.map(({ id, massKg }) => [id, massKg]));
  const massOf = (members: readonly Member[]): number => members.reduce((sum, { id }) => sum + (kg.get(id) ?? 0), 0);
  const primary = shell.members.filter(isPrimary);
  const traced = (member: Member): boolean =>
    (papers.get(member.heat ?? '') ?? []).some((one) => isOfTheHeat(one) && one.alloy === member.alloy);
  const primaryKg = massOf(primary);
  const tracedKg = massOf(primary.filter(traced));
  return {
    primaryKg,
    tracedKg,
    ...(primaryKg > 0 ? { share: tracedKg / primaryKg } : {}),
    heats: heatsOf(shell.members, papers, massOf),
    untraced: primary.filter((member) => !traced(member)).map(({ id }) => id),
    assumptions: [
      'Every member counts as primary structure unless its record says secondary. Traced: its heat has a certificate of type 3.1 or 3.2 (EN 10204) for the alloy on record.',
    ],
  };
}

function certificatesByHeat(all: readonly Certificate[]): ReadonlyMap<string, readonly Certificate[]> {
  const papers = new Map<string, Certificate[]>();
  for (const one of all) for (const heat of one.heats) papers.set(heat, [...(papers.get(heat) ?? []), one]);
  return papers;
}

function heatsOf(
  members: readonly Member[],
  papers: ReadonlyMap<string, readonly Certificate[]>,
  massOf: (members: readonly Member[]) => number,
): readonly HeatFigure[] {
  const byHeat = new Map<string, Member[]>();
  for (const member of members) {
    if (member.heat !== undefined) byHeat.set(member.heat, [...(byHeat.get(member.heat) ?? []), member]);
  }
  return [...byHeat]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([heat, own]) => ({
      heat,
      alloys: [...new Set(own.map(({ alloy }) => alloy))].sort(),
      members: own.map(({ id }) => id),
      massKg: massOf(own),
      certificates: papers.get(heat) ?? [],
    }));
}
