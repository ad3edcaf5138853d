import { OCCUPANT_KG } from '../../model/occupant.js';
import type { Rule } from '../rule.js';
import { kg } from './text.js';

export const seatsOverCapacity: Rule = {
  name: 'weight.seats-over-capacity',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'Belted seats whose occupants (68 kg each) weigh more than the occupant and cargo carrying capacity. A warning where full water does.',
  why: 'The label would offer seats that may not be used.',
  source: 'NHTSA interpretation letter 08-003469; 49 CFR 571.120 S10; with full water: common practice, no source',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
tanks: [{id: FUEL, contents: diesel, capacity: 200 L, at: [2 m, 0.9 m, 0 m]}]
seats:
  - {id: driver, at: [1 m, -0.5 m, 1 m]}
  - {id: passenger, at: [1 m, 0.5 m, 1 m]}
chassis:
  gvwr: 12000 kg
  axles: [{id: steer, x: 0 m, gawr: 5000 kg}, {id: drive, x: 5 m, gawr: 9000 kg}]
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 4400 kg, drive: 7500 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 4400 kg, drive: 7000 kg}}
`,
  },
  check({ figures, model }) {
    const { occcKg, cccKg, fullWaterKg } = figures.weights;
    const belted = model.shell.seats.filter((seat) => seat.belted);
    if (occcKg === undefined || cccKg === undefined || belted.length === 0) return [];
    const seatsKg = belted.length * OCCUPANT_KG;
    const over = seatsKg > occcKg;
    if (!over && cccKg >= 0) return [];
    const water = over ? '' : ` and full fresh water of ${kg(model, fullWaterKg)}`;
    return [
      {
        severity: over ? 'error' : 'warning',
        message: `${belted.length} belted seats count ${kg(model, seatsKg)}${water}, expected at most the occupant and cargo capacity of ${kg(model, occcKg)}: take mass out of the vehicle, ${over ? 'or belts out of it' : 'or tell the owner how much water may travel'}`,
        ids: belted.map((seat) => seat.id),
        place: model.shell.source.place('seats'),
      },
    ];
  },
};
