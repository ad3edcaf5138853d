import { stageOrder } from '../../compute/weights/built.js';
import { length } from '../../quantity/format.js';
import type { Rule } from '../rule.js';
import { kg, share, ticketName, ticketPlace } from './text.js';

/** Before the last stage there is more that is not yet on record. Common practice, no source. */
const UNFINISHED = 0.03;

export const unexplained: Rule = {
  name: 'weight.unexplained',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds:
    "A verified ticket that differs from the prediction by more than the shop's limit: 1 % of a finished vehicle where not typed, 3 % before the last stage.",
  why: 'Something is not on record, is recorded at the wrong mass, or the ticket says less than all of what was aboard.',
  source: 'IMO guidelines on lightweight surveys use 1 %; the rest common practice, no source',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
tanks: [{id: FUEL, contents: diesel, capacity: 200 L, at: [2 m, 0.9 m, 0 m]}]
chassis:
  gvwr: 12000 kg
  axles: [{id: steer, x: 0 m, gawr: 5000 kg}, {id: drive, x: 5 m, gawr: 9000 kg}]
  bare: {condition: {fuel: 100 %}, readings: {steer: 3000 kg, drive: 3000 kg}}
# components.yaml
- {id: CMP-1, name: Body, mass: 2500 kg, at: [3.75 m, 0 m, 1 m], basis: weighed}
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3700 kg, drive: 5200 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3630 kg, drive: 4870 kg}}
`,
  },
  check({ figures, model }) {
    return figures.weights.tickets.flatMap((figure) => {
      const totalKg = figure.normalisedKg ?? 0;
      if (!figure.verified || totalKg <= 0 || Object.keys(figure.predicted).length === 0) return [];
      const finished = stageOrder(model, figure.stage) === model.library.stages.length - 1 || figure.stage === undefined;
      const limit = finished ? model.shop.limits.unexplainedMass : Math.max(UNFINISHED, model.shop.limits.unexplainedMass);
      if (Math.abs(figure.residualKg) <= limit * totalKg) return [];
      const { units } = model.shop;
      const x = figure.residualXMm;
      const stations = figures.weights.influence.map((one) => one.xMm);
      const outside = x !== undefined && (x < (stations[0] ?? 0) || x > (stations.at(-1) ?? 0));
      const where = x === undefined || outside ? '' : placed(x, units);
      const act = outside
        ? 'no one item can explain it: look for a position or a mass that is wrong by much, or correct the condition of the ticket'
        : 'look there for what is not on record, or correct the condition of the ticket';
      return [
        {
          message: `${ticketName(figure)}: ${kg(model, figure.residualKg)} unexplained (${share(figure.residualKg / totalKg)} of ${kg(model, totalKg)})${where}, expected at most ${share(limit)}: ${act}`,
          ids: [figure.id],
          place: ticketPlace(model, figure.id, 'readings'),
        } as const,
      ];
    });
  },
};

const placed = (xMm: number, units: Parameters<typeof length>[1]): string =>
  `, centered ${length(Math.abs(xMm), units)} ${xMm < 0 ? 'ahead of' : 'aft of'} the front axle`;
