import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess.js';
import { shellProgress } from '../../src/closeout/stage-progress.js';
import { decide } from '../../src/rules/decide.js';
import { loadOne } from '../support/store.js';

const STAGES = `- {id: services, name: Services, hold_points: [pressure tests, photos]}
- {id: walls, name: Walls, hold_points: [openings square, welds accepted]}
- {id: finished, name: Finished, hold_points: [weighed, findings decided]}
`;
const PEOPLE = `- {id: J2, name: J. Tolland, role: inspector, qualified: [{method: VT, from: 2026-01-01, until: 2028-01-01}]}
- {id: K7, name: K. Marrow, role: welder, qualified: [{process: GMAW, from: 2026-01-01, until: 2028-01-01}]}
`;
const GAUGE = '- {id: PG-1, kind: gauge, resolution: 0.1 psi, calibrated: 2026-01-01, due: 2027-01-01}\n';

function progressOf(files: Readonly<Record<string, string>>) {
  const loaded = loadOne({
    'library/stages.yaml': STAGES,
    'library/people.yaml': PEOPLE,
    'library/instruments.yaml': GAUGE,
    ...Object.fromEntries(Object.entries(files).map(([name, text]) => [`shells/T-1/${name}`, text])),
  });
  const { model, findings } = assess(loaded.model, loaded.findings);
  return shellProgress({ model, findings: decide(findings, model.shell.findings) }, '2026-05-01');
}

const gapsOf = (files: Readonly<Record<string, string>>, stage: string, holdPoint: string) =>
  progressOf(files)
    .stages.find((one) => one.stage === stage)
    ?.holdPoints.find((one) => one.holdPoint === holdPoint);

const PRESSURE =
  '- {id: TS-09, kind: pressure, of: [N-1], limit: 60 psi, measured: 62 psi, duration: 15 min, instrument: PG-1, by: K7, date: 2026-04-02}\n';
const WATER = `service: Water
medium: water
nodes:
  - {id: N-1, kind: fitting, at: [1 m, 0 m, 0 m]}
`;

describe('progress', () => {
  it('answers from a model that was kept, whose records have no source', () => {
    const loaded = loadOne({
      'library/stages.yaml': STAGES,
      'library/instruments.yaml': GAUGE,
      'shells/T-1/weights.yaml': '- {id: SW-1, date: 2026-04-02, readings: {front: 6120 lb}}\n',
      'shells/T-1/services/water.yaml': WATER,
      'shells/T-1/tests.yaml': PRESSURE.replace('measured: 62 psi, ', ''),
    });
    const { model, findings } = assess(loaded.model, loaded.findings);
    for (const { record } of model.shell.byId.values()) Reflect.deleteProperty(record as object, 'source');
    const { stages } = shellProgress({ model, findings }, '2026-05-01');
    const would = stages.flatMap(({ holdPoints }) =>
      holdPoints.flatMap(({ gaps }) => gaps.flatMap(({ wouldMeet }) => wouldMeet)),
    );
    expect(would).toContainEqual({ kind: 'ticket', id: 'SW-1', what: 'lacks `stage: finished`', type: 'stage: finished' });
  });

  it('shows every hold point from day one, with what would meet it', () => {
    const { stages, next } = progressOf({});
    expect(stages.map(({ stage, standing }) => [stage, standing])).toEqual([
      ['services', 'open'],
      ['walls', 'open'],
      ['finished', 'open'],
    ]);
    expect(stages.flatMap(({ holdPoints }) => holdPoints.map(({ holdPoint, state }) => [holdPoint, state]))).toEqual([
      ['pressure tests', 'unmet'],
      ['photos', 'unmet'],
      // Nothing was looked at, so it is not said to be met.
      ['openings square', 'nothing yet'],
      ['welds accepted', 'unmet'],
      ['weighed', 'unmet'],
      ['findings decided', 'met'],
    ]);
    expect(next?.stage).toBe('services');
    expect(stages[2]?.holdPoints[0]?.gaps[0]?.wouldMeet).toMatchObject([
      { kind: 'ticket', what: 'is not on record', type: 'shellbook add ticket --shell T-1 --stage finished' },
    ]);
  });

  it('names the record that is there and lacks its stage, at its line', () => {
    const files = { 'tests.yaml': PRESSURE, 'services/water.yaml': WATER };
    expect(gapsOf(files, 'services', 'pressure tests')?.gaps[0]?.wouldMeet).toMatchObject([
      { kind: 'test', id: 'TS-09', what: 'lacks `stage: services`', type: 'stage: services', place: { line: 1 } },
    ]);
    const given = { ...files, 'tests.yaml': PRESSURE.replace('by: K7', 'by: K7, stage: services') };
    expect(gapsOf(given, 'services', 'pressure tests')).toMatchObject({ state: 'met', metBy: ['TS-09'] });
  });

  it('says why a test of the stage does not count', () => {
    const low = PRESSURE.replace('62 psi', '41 psi').replace('by: K7', 'by: K7, stage: services');
    expect(
      gapsOf({ 'tests.yaml': low, 'services/water.yaml': WATER }, 'services', 'pressure tests')?.gaps[0]?.wouldMeet,
    ).toMatchObject([{ id: 'TS-09', what: 'failed: its value is past the limit' }]);
  });

  it('says of an opening what is not measured, and of a weld who must look at it', () => {
    const files = {
      'openings.yaml':
        '- {id: DR-1, kind: door, stage: walls, sill: [[0 m, 0 m, 0 m], [1 m, 0 m, 0 m]], width: 1 m, height: 2 m}\n',
      'welds.yaml':
        '- {id: W-1, joins: [M-1, M-2], type: fillet, size: 6 mm, length: 50 mm, process: GMAW, stage: walls, welder: K7, date: 2026-04-01}\n',
    };
    expect(gapsOf(files, 'walls', 'openings square')?.gaps[0]?.wouldMeet[0]?.what).toMatch(/^lacks `measured: \{top/u);
    expect(gapsOf(files, 'walls', 'welds accepted')?.gaps[0]).toMatchObject({ who: 'inspector', wouldMeet: [{ id: 'W-1' }] });
  });

  it('asks whoever may inspect to sign where nothing is missing, never who welded', () => {
    const files = {
      'tests.yaml': PRESSURE.replace('by: K7', 'by: K7, stage: services'),
      'services/water.yaml': WATER,
      'photos/photos.yaml': '- {id: P-1, file: a.jpg, stage: services, taken: 2026-04-01}\n',
    };
    const { today } = progressOf(files);
    expect(today.filter(({ stage }) => stage === 'services')).toMatchObject([
      { who: 'inspector (J2)', type: 'shellbook signoff T-1 services --by J2' },
    ]);
  });
});
