import type { Model } from '../../model/shell.js';
import type { Axle, Ticket } from '../../records/index.js';
import { adjustReadings } from './least-squares.js';
import { scaleUncertainty, uOfReading } from './scale.js';
import type { Reconciled } from './types.js';

/** One reading as a sum of the unknown end loads that it weighed. */
interface Observation {
  readonly name: string;
  readonly kg: number;
  readonly of: readonly string[];
}

/** A residual beyond this many standard deviations is a slip: 0.1 % of good readings go so far (normal distribution). */
const SLIP = 3.29;
/** Two readings whose residuals are this near to each other fit equally badly: neither can be named. */
const TIE = 0.98;

/**
 * Brings wheel, axle and gross readings of one weighing together by weighted least squares. The reading that does not fit is the
 * one with the largest normalised residual, if it is beyond 3.29. Where several fit equally badly (all of them with a single reading
 * to spare, both ends of an axle always) they are told as suspects. Nothing where no reading checks another.
 */
export function reconcile(model: Model, ticket: Ticket, lifted: ReadonlySet<string>): Reconciled | undefined {
  const axles = model.shell.chassis.axles.filter((axle) => ticket.readings[axle.id]);
  const list = observations(ticket, axles, lifted, model.shell.chassis.axles.length);
  const unknowns = [...new Set(list.flatMap((one) => one.of))];
  const redundancy = list.length - unknowns.length;
  if (redundancy <= 0) return undefined;
  const doubt = scaleUncertainty(ticket.scale === undefined ? undefined : model.library.instruments.get(ticket.scale));
  const fitted = adjustReadings(
    list.map((one) => unknowns.map((unknown) => (one.of.includes(unknown) ? 1 : 0))),
    list.map((one) => one.kg),
    list.map((one) => Math.max(uOfReading(one.kg, doubt), 0.1)),
  );
  if (!fitted) return undefined;
  const normalised = fitted.residuals.map((v, i) =>
    fitted.residualDeviation[i] === 0 ? 0 : v / (fitted.residualDeviation[i] as number),
  );
  const sizes = normalised.map(Math.abs);
  const worst = sizes.indexOf(Math.max(...sizes));
  const agree = (sizes[worst] as number) <= SLIP;
  const suspects = agree
    ? []
    : list.filter((_, i) => (sizes[i] as number) > TIE * (sizes[worst] as number)).map((one) => one.name);
  return {
    readings: list.map((one, i) => ({
      name: one.name,
      readKg: one.kg,
      adjustedKg: one.kg - (fitted.residuals[i] as number),
      ...(fitted.residualDeviation[i] === 0 ? {} : { normalisedResidual: normalised[i] as number }),
    })),
    redundancy,
    chiSquare: fitted.chiSquare,
    agree,
    suspects,
    ...(suspects.length === 1 ? { outlier: suspects[0] as string } : {}),
  };
}

function observations(
  ticket: Ticket,
  axles: readonly Axle[],
  lifted: ReadonlySet<string>,
  count: number,
): readonly Observation[] {
  const list: Observation[] = [];
  const ends = (axle: Axle): readonly string[] => (hasEnds(ticket, axle) ? [`${axle.id} left`, `${axle.id} right`] : [axle.id]);
  for (const axle of axles) {
    const reading = ticket.readings[axle.id];
    if (!reading) continue;
    const { totalKg, leftKg, rightKg } = reading;
    if (leftKg !== undefined && rightKg !== undefined) {
      list.push(
        { name: `${axle.id} left`, kg: leftKg, of: [`${axle.id} left`] },
        { name: `${axle.id} right`, kg: rightKg, of: [`${axle.id} right`] },
      );
      // A total that is the sum of its ends was added up, not read.
      if (Math.abs(totalKg - leftKg - rightKg) < 1e-6) continue;
    }
    list.push({ name: axle.id, kg: totalKg, of: ends(axle) });
  }
  const whole = axles.length + lifted.size >= count;
  if (ticket.grossKg !== undefined && whole) list.push({ name: 'gross', kg: ticket.grossKg, of: axles.flatMap(ends) });
  return list;
}

const hasEnds = (ticket: Ticket, axle: Axle): boolean =>
  ticket.readings[axle.id]?.leftKg !== undefined && ticket.readings[axle.id]?.rightKg !== undefined;
