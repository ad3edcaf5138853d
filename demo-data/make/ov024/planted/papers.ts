import type { Rec } from '../../yaml.js';
import { add, change, type Plant } from './plant.js';

/** Lots, photos, tests, late cards and findings. */
export const PAPERS: readonly Plant[] = [
  {
    rule: 'order.adhesive-expired',
    id: 'SK-L-04',
    file: 'panels-skin.yaml',
    what: 'lot ran out a week before',
    spoil: (records) =>
      records.map((one) =>
        one.id === 'SK-L-04' ? { ...one, fixing: { ...(one.fixing as Rec), lot: 'B-4488', expires: '2026-09-30' } } : one,
      ),
  },
  {
    rule: 'order.photo-after-close-in',
    id: 'M-01/1',
    file: 'photos/photos.yaml',
    what: 'right lane photographed three days after its belly panel went on',
    spoil: change('PH-008', { taken: '2026-11-02' }),
  },
  {
    rule: 'order.test-after-close-in',
    id: 'D-01/1',
    file: 'tests.yaml',
    what: 'trough tested a week after it was closed',
    spoil: change('TS-202', { date: '2026-11-16' }),
  },
  {
    rule: 'order.instrument-out-of-calibration',
    id: 'TS-205',
    file: 'tests.yaml',
    what: 'gauge two days past its date',
    spoil: change('TS-205', { date: '2026-11-12' }),
  },
  {
    rule: 'order.not-verified',
    id: 'WC/1',
    file: 'tests.yaml',
    what: 'so no test of the left lane passes',
    spoil: (records) => records,
  },
  {
    rule: 'test.failed',
    id: 'TS-206',
    file: 'tests.yaml',
    what: 'gas lost 0.4 psi',
    spoil: change('TS-206', { end: '2.60 psi' }),
  },
  {
    rule: 'test.not-verified',
    id: 'TS-207',
    file: 'tests.yaml',
    what: '"OK" and no value',
    spoil: add('', [
      {
        id: 'TS-207',
        kind: 'continuity',
        of: ['GA'],
        limit: '0.5 ohm',
        by: 'E1',
        date: '2026-11-12',
        stage: 'services',
        note: 'OK',
      },
    ]),
  },
  {
    rule: 'record.repeats',
    id: 'TS-208',
    file: 'tests.yaml',
    what: 'gas test pasted from OV-021 with its date',
    spoil: add('', [
      {
        id: 'TS-208',
        kind: 'drop',
        of: ['GA'],
        limit: '0 psi',
        start: '3.00 psi',
        end: '3.00 psi',
        start_temperature: '14 C',
        end_temperature: '14 C',
        duration: '15 min',
        instrument: 'PG-1',
        by: 'F6',
        date: '2026-04-02',
        stage: 'services',
      },
    ]),
  },
  {
    rule: 'record.late-entry',
    id: 'W-0030',
    file: 'welds-floor.yaml',
    what: 'the card was found six weeks later, see history.yaml',
    needs: 'history',
    spoil: (records) => records,
  },
  {
    rule: 'record.photo-twice',
    id: 'PH-009',
    file: 'photos/photos.yaml',
    what: 'picture of the third truss sent round and filed as the fifth',
    needs: 'photos',
    spoil: (records) => records,
  },
  {
    rule: 'finding.undecided',
    id: 'NC-02',
    file: 'findings.yaml',
    what: 'raised and left',
    spoil: add('', [
      {
        block: true,
        id: 'NC-02',
        raised: '2026-09-03',
        of: ['P-R-10'],
        description: 'post leans 1/4 in aft at the top, expected plumb',
      },
    ]),
  },
  {
    rule: 'finding.closed-over',
    id: 'NC-03',
    file: 'findings.yaml',
    what: 'belly went on over a pipe that was to be made again',
    spoil: add('', [
      {
        block: true,
        id: 'NC-03',
        raised: '2026-11-04',
        of: ['WC/2'],
        description: 'pipe rubs on the edge of the outrigger, expected a clip and 1/2 in of air',
        decision: 'rework',
        reason: 'move the clip to the far side',
        approved_by: 'J5',
      },
    ]),
  },
];

/** What was signed off and changed. */
export const SIGNOFFS: readonly Plant[] = [
  {
    rule: 'signoff.lapsed',
    id: 'floor/inspector/2026-07-20',
    file: 'signoffs.yaml',
    what: 'another sheet of plywood went on after the floor was signed off',
    spoil: (records) => records,
  },
];
