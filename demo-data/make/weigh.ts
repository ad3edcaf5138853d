import { assess } from '../../src/assess.js';
import { loadStore } from '../../src/model/load.js';
import type { Readings, Weighing } from './ov021/tickets.js';
import { ticketsText } from './ov021/tickets.js';
import { scatter } from './random.js';

const KG_PER_LB = 0.45359237;
const STEP_LB = 20;

const round = (lb: number): number => Math.round(lb / STEP_LB) * STEP_LB;

/**
 * What the scale would have said: the vehicle as the records have it on that day, in the condition of the ticket, give or take a
 * little, in the scale’s steps. The tool itself says what it expects; its answer is linear in the readings, so one round is enough.
 */
export function readingsFor(
  shell: string,
  files: ReadonlyMap<string, string>,
  weighings: readonly Weighing[],
  axles: readonly string[],
  start: number,
): Readings {
  const first: Readings = Object.fromEntries(
    weighings.map((one) => [one.id, Object.fromEntries(axles.map((axle) => [axle, 8000]))]),
  );
  const text = new Map([...files, [`shells/${shell}/weights.yaml`, ticketsText(weighings, first)]]);
  const loaded = loadStore({ root: 'demo', files: text, photos: new Map() }).shells.get(shell);
  if (!loaded) throw new Error(`no shell ${shell}`);
  const { weights } = assess(loaded.model, loaded.findings).figures;
  const random = scatter(start);
  return Object.fromEntries(
    weighings.map((one) => {
      const figure = weights.tickets.find((ticket) => ticket.id === one.id);
      if (!figure) throw new Error(`no ticket ${one.id}`);
      const read = axles.map((axle): [string, number | readonly [number, number]] => {
        const expected = 8000 - (figure.residual[axle] ?? 0) / KG_PER_LB;
        const lb = expected + (random() - 0.5) * 44;
        if (!one.ends || axle !== axles[0]) return [axle, round(lb)];
        const left = lb / 2 + (random() - 0.5) * 120;
        return [axle, [round(left), round(lb - left)]];
      });
      return [one.id, Object.fromEntries(read)];
    }),
  );
}
