import { scaleUncertainty, uOfReading } from '../../compute/weights/scale.js';
import { COVERAGE, rootSumOfSquares } from '../../compute/weights/uncertainty.js';
import type { Model } from '../../model/shell.js';
import type { AxleReading, Ticket } from '../../records/index.js';

/** Sum of axles against gross beyond which one of them was not of the same vehicle. */
export const GROSS_LIMIT = 0.01;

/** How far an axle's ends are from its total, where both were read, and how far they may be. */
export function endsApart(
  model: Model,
  ticket: Ticket,
  reading: AxleReading,
): { readonly kg: number; readonly mayBeKg: number } | undefined {
  const { totalKg, leftKg, rightKg } = reading;
  if (leftKg === undefined || rightKg === undefined) return undefined;
  const doubt = scaleUncertainty(ticket.scale === undefined ? undefined : model.library.instruments.get(ticket.scale));
  const u = rootSumOfSquares([totalKg, leftKg, rightKg].map((kg) => uOfReading(kg, doubt)));
  return { kg: leftKg + rightKg - totalKg, mayBeKg: COVERAGE * u };
}

/** Sum of the axles less the gross, where every axle and the gross were read. */
export function grossApart(model: Model, ticket: Ticket): number | undefined {
  const { axles } = model.shell.chassis;
  const up = (id: string): boolean => ticket.condition?.lifted[id] === 'up';
  if (ticket.grossKg === undefined || axles.length === 0) return undefined;
  if (!axles.every((axle) => ticket.readings[axle.id] || up(axle.id))) return undefined;
  return axles.reduce((sum, axle) => sum + (ticket.readings[axle.id]?.totalKg ?? 0), 0) - ticket.grossKg;
}
