import type { Model } from '../../model/shell.js';
import type { Axle, Ticket } from '../../records/index.js';
import { axleGroups } from './axle-groups.js';
import { scaleUncertainty, uOfReading } from './scale.js';
import type { CgHeight } from './types.js';
import { COVERAGE, ofResolution } from './uncertainty.js';

/** Beyond this share of the height the weighing says nothing that anyone should lean on. Common practice, no source. */
const TOO_WEAK = 0.1;

export interface TwoAttitudes {
  readonly baseMm: number;
  readonly liftMm: number;
  readonly totalKg: number;
  /** What the axle that stayed down gained. */
  readonly gainKg: number;
  readonly wheelRadiusMm: number;
}

/**
 * Height of the centre of gravity from a level weighing and one with an axle raised:
 *
 *     h = r + L ΔW / (W tan θ)        sin θ = lift / L
 *
 * Source: ISO 10392 (method of raising one axle). Assumes locked suspension and tyres that do not give.
 * Worked: L 5000 mm, lift 600 mm, 12,000 kg, gain 150 kg, r 500 mm: 1017.07 mm.
 */
export function heightOf({ baseMm, liftMm, totalKg, gainKg, wheelRadiusMm }: TwoAttitudes): number {
  const tangent = Math.tan(Math.asin(liftMm / baseMm));
  return wheelRadiusMm + (baseMm * gainKg) / (totalKg * tangent);
}

/** Every ticket that was taken with an axle raised, beside its level partner. */
export function cgHeights(model: Model): readonly CgHeight[] {
  return model.shell.tickets.flatMap((ticket) => (ticket.raised ? [cgHeight(model, ticket, ticket.raised)] : []));
}

function cgHeight(model: Model, ticket: Ticket, raised: NonNullable<Ticket['raised']>): CgHeight {
  const base = { ticket: ticket.id, level: raised.level };
  const level = model.shell.tickets.find((one) => one.id === raised.level);
  if (!level) return { ...base, refused: `its level weighing ${raised.level} is not on record` };
  const grouped = axleGroups(model.shell.chassis.axles);
  if ('problem' in grouped || grouped.groups.length !== 2) return { ...base, refused: 'it takes two groups of axles' };
  const up = grouped.groups.find((group) => group.axles.some(({ axle }) => axle.id === raised.axle));
  const down = grouped.groups.find((group) => group !== up);
  if (!up || !down) return { ...base, refused: `axle ${raised.axle} is not on record` };
  const baseMm = Math.abs(up.xMm - down.xMm);
  if (!(raised.byMm > 0 && raised.byMm < baseMm))
    return { ...base, refused: 'the lift is not between nothing and the wheelbase' };
  const [before, after] = [groupKg(level, down.axles), groupKg(ticket, down.axles)];
  const other = groupKg(level, up.axles);
  if (before === undefined || after === undefined || other === undefined) return { ...base, refused: 'readings are missing' };
  const totalKg = before + other;
  if (totalKg <= 0) return { ...base, refused: 'nothing was weighed' };
  const figures = { baseMm, liftMm: raised.byMm, totalKg, gainKg: after - before, wheelRadiusMm: raised.wheelRadiusMm };
  const heightMm = heightOf(figures);
  const perKg = heightOf({ ...figures, gainKg: 1, wheelRadiusMm: 0 });
  const uncertaintyMm = COVERAGE * perKg * uOfGain(model, ticket, level, down.axles.length, after - before);
  if (!(heightMm > 0) || uncertaintyMm > TOO_WEAK * heightMm) {
    return {
      ...base,
      uncertaintyMm,
      refused: `too weak: the height is known only to ± ${Math.round(uncertaintyMm)} mm; lift higher or use a finer scale`,
    };
  }
  return { ...base, heightMm, uncertaintyMm };
}

function groupKg(ticket: Ticket, axles: readonly { readonly axle: Axle }[]): number | undefined {
  const readings = axles.map(({ axle }) => ticket.readings[axle.id]?.totalKg);
  return readings.every((kg) => kg !== undefined) ? readings.reduce((a, b) => a + b, 0) : undefined;
}

/** Steps of both weighings; a tolerance common to both scales down to the gain. Two scales are two tolerances. */
function uOfGain(model: Model, raised: Ticket, level: Ticket, readings: number, gainKg: number): number {
  const doubts = [raised, level].map((one) =>
    scaleUncertainty(one.scale === undefined ? undefined : model.library.instruments.get(one.scale)),
  );
  if (raised.scale === level.scale) {
    const steps = ofResolution(doubts[0]?.resolutionKg as number) * Math.sqrt(2 * readings);
    return Math.hypot(steps, uOfReading(gainKg, { resolutionKg: 0, relative: doubts[0]?.relative as number, absoluteKg: 0 }));
  }
  const all = [raised, level].flatMap((one, i) =>
    Object.values(one.readings).map((reading) => uOfReading(reading.totalKg, doubts[i] as (typeof doubts)[number])),
  );
  return Math.hypot(...all);
}
