import type { Rule, RuleFinding } from '../rule.js';
import { ticketName, ticketOf, ticketPlace } from './text.js';

export const scaleOutOfCalibration: Rule = {
  name: 'weight.scale-out-of-calibration',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A ticket taken outside the calibration of its scale, or on a scale without a calibration due date.',
  why: 'Such a ticket proves nothing: it is not verified, and conditions do not start from it.',
  source: 'ISO 9001:2015 clause 7.1.5.2 (measurement traceability)',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2027-01-02, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}}
`,
    passes: `
- {id: T-1, date: "2027-01-01T10:00", scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}}
`,
  },
  check({ figures, model }) {
    return figures.weights.tickets.flatMap((figure): RuleFinding[] => {
      const scale = ticketOf(model, figure.id)?.scale;
      if (figure.calibrationLapse === undefined || scale === undefined) return [];
      return [
        {
          message: `${ticketName(figure)} was taken out of calibration: ${figure.calibrationLapse}, expected a date within the calibration of its scale. Weigh again, or record the calibration that held on that day`,
          ids: [figure.id, scale],
          place: ticketPlace(model, figure.id, 'scale'),
        },
      ];
    });
  },
};
