import type { Rule, RuleFinding } from '../rule.js';
import { ticketName, ticketOf, ticketPlace } from './text.js';

export const scaleOutOfCalibration: Rule = {
  name: 'weight.scale-out-of-calibration',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A ticket taken outside the calibration of its scale. A note where the scale has no calibration on record.',
  why: 'Such a ticket proves nothing: it is not verified, and conditions do not start from it.',
  source: 'ISO 9001:2015 clause 7.1.5.2 (measurement traceability)',
  check({ figures, model }) {
    return figures.weights.tickets.flatMap((figure): RuleFinding[] => {
      const scale = ticketOf(model, figure.id)?.scale;
      const instrument = scale === undefined ? undefined : model.library.instruments.get(scale);
      const place = ticketPlace(model, figure.id, 'scale');
      if (figure.calibrationLapse !== undefined) {
        return [
          {
            message: `${ticketName(figure)} was taken on scale ${scale} out of calibration: ${figure.calibrationLapse}, expected a date within its calibration. Weigh again, or record the calibration that held on that day`,
            ids: [figure.id, scale as string],
            place,
          },
        ];
      }
      if (!instrument || instrument.due !== undefined) return [];
      return [
        {
          severity: 'note',
          message: `Scale ${scale} of ticket ${figure.id} has no calibration on record, expected \`calibrated:\` and \`due:\` in library/instruments.yaml`,
          ids: [figure.id, scale as string],
          place,
        },
      ];
    });
  },
};
