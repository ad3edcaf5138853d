import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess.js';
import { unmetHoldPoints } from '../../src/closeout/hold-points.js';
import { decide } from '../../src/rules/decide.js';
import { loadOne } from '../support/store.js';

/** What one hold point of the stage `floor` lacks, by the ids that it blames and its message. */
function lacks(holdPoint: string, files: Readonly<Record<string, string>>): readonly string[] {
  const loaded = loadOne({
    'library/stages.yaml': `- {id: floor, name: Floor, hold_points: ["${holdPoint}"]}\n- {id: walls, name: Walls}\n`,
    'library/materials.yaml': '- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3}\n',
    'library/instruments.yaml': '- {id: PT-1, kind: pull gauge, resolution: 1 lbf, calibrated: 2026-01-01, due: 2027-01-01}\n',
    ...Object.fromEntries(Object.entries(files).map(([name, text]) => [`shells/T-1/${name}`, text])),
  });
  const { model, findings } = assess(loaded.model, loaded.findings);
  return unmetHoldPoints({ model, findings: decide(findings, model.shell.findings) }, 'floor').map(
    ({ ids, message }) => `${ids.join(' ')}| ${message}`,
  );
}

const clamp = (more: string): string => `- {id: UB-1, kind: U-bolt, at: [0 m, 0 m, 0 m], stage: floor${more}}\n`;
const opening = (measured: string): string =>
  `- {id: DR-1, kind: door, stage: floor, sill: [[0 m, 0 m, 0 m], [1 m, 0 m, 0 m]], width: 1 m, height: 2 m${measured}}\n`;
const SQUARE = ', measured: {top: 1 m, bottom: 1 m, front: 2 m, rear: 2 m, diagonals: [2236 mm, 2236 mm]}';
const RACKED = ', measured: {top: 1 m, bottom: 1 m, front: 2 m, rear: 2 m, diagonals: [2236 mm, 2250 mm]}';
const DECIDED =
  '- {id: NC-1, raised: 2026-03-01, of: [DR-1], rules: [opening.out-of-square], description: racked, decision: use as is, reason: door fits, approved_by: J2}\n';
const skin = (more: string): string =>
  `- {id: SK-1, kind: skin, stage: floor, thickness: 2 mm, outline: [[0 m, 0 m, 0 m], [1 m, 0 m, 0 m], [1 m, 1 m, 0 m]], fixing: {method: bonded, lot: A-1}${more}}\n`;
const pull = (measured: string): string =>
  `- {id: TS-9, kind: coupon pull, of: [SK-1], limit: 250 lbf, measured: ${measured}, instrument: PT-1, date: 2026-03-01}\n`;

describe('a hold point', () => {
  it('of the form `{check, words}` is looked at by its check, whatever it is called; another word is told', () => {
    const stages = (check: string) => `- {id: floor, name: Floor, hold_points: [{check: ${check}, words: On the pads}]}\n`;
    const read = (check: string) => loadOne({ 'library/stages.yaml': stages(check) });
    const { model, findings } = read('weighed');
    expect(unmetHoldPoints({ model, findings }, 'floor')).toMatchObject([
      { holdPoint: 'On the pads', message: expect.stringContaining('No scale ticket is for stage floor') },
    ]);
    expect(read('weihged').store.findings[0]?.message).toMatch(/`weihged`.*`weighed`/u);
  });

  it.each<[string, Record<string, string>, RegExp | null]>([
    ['U-bolts torqued', { 'clamps.yaml': clamp('') }, /^UB-1\| Clamp UB-1 has no torque on record/u],
    ['clamps torqued', { 'clamps.yaml': clamp(', torque: 150 ft.lb') }, null],
    [
      'clamps torqued',
      { 'clamps.yaml': clamp(', torque: 150 ft.lb').replace('stage: floor', 'stage: walls') },
      /^\| No clamp of stage floor is on record, so `clamps torqued` is not verified, expected them in clamps\.yaml; /u,
    ],
    ['constructor', {}, /^\| No passed test of kind `constructor` is of stage floor/u],
    ['welds accepted', {}, /^\| No weld of stage floor is on record, so `welds accepted` is not verified/u],
    ['openings square', { 'openings.yaml': opening('') }, /^DR-1\| Opening DR-1 is not measured/u],
    ['openings square', { 'openings.yaml': opening(RACKED) }, /^DR-1\| Diagonals of opening DR-1 differ/u],
    ['openings square', { 'openings.yaml': opening(RACKED), 'findings.yaml': DECIDED }, null],
    ['openings square', { 'openings.yaml': opening(SQUARE) }, null],
    ['bond coupons', { 'panels.yaml': skin('') }, /^SK-1\| Panel SK-1 is bonded and its bond is not on record/u],
    ['bond log', { 'panels.yaml': skin(', bond: {surface: 21 C}') }, /no coupon is named/u],
    [
      'bond coupons',
      { 'panels.yaml': skin(', bond: {coupon: TS-9}'), 'tests.yaml': pull('200 lbf') },
      /coupon TS-9 did not pass/u,
    ],
    ['bond coupons', { 'panels.yaml': skin(', bond: {coupon: TS-9}'), 'tests.yaml': pull('250 lbf') }, null],
    ['weighed', {}, /^T-1\| No scale ticket is for stage floor/u],
    ['weighed', { 'weights.yaml': '- {id: T-5, date: 2026-03-01, stage: floor, gross: 4000 kg}\n' }, null],
    ['bare chassis weighed', {}, /The bare chassis is not weighed/u],
    [
      'findings decided',
      { 'findings.yaml': '- {id: NC-1, raised: 2026-03-01, of: [T-1], description: dent}\n' },
      /^NC-1 T-1\| Finding NC-1 of T-1 is not decided/u,
    ],
    ['photos', { 'clamps.yaml': clamp('') }, /No photo shows anything of stage floor/u],
    [
      'photos',
      { 'clamps.yaml': clamp(''), 'photos/photos.yaml': '- {id: P-1, file: a.jpg, of: [UB-1]}\n', 'photos/a.jpg': 'x' },
      null,
    ],
    [
      'continuity and insulation tests',
      {
        'tests.yaml':
          '- {id: TS-1, kind: continuity, of: [T-1], limit: 1 ohm, measured: 0.2 ohm, instrument: PT-1, date: 2026-03-01, stage: floor}\n',
      },
      /No passed test of kind `insulation` is of stage floor/u,
    ],
    ['sprung floor tried', {}, /so `sprung floor tried` is not verified, expected a test in tests\.yaml/u],
    [
      'rain test',
      { 'tests.yaml': '- {id: TS-1, kind: rain, of: [T-1], limit: 0, measured: 0, date: 2026-03-01, stage: floor}\n' },
      null,
    ],
    [
      'rain test',
      { 'tests.yaml': '- {id: TS-1, kind: rain, of: [T-1], limit: 0, measured: 2, date: 2026-03-01, stage: floor}\n' },
      /No passed test of kind `rain`/u,
    ],
  ])('%s with %o', (holdPoint, files, expected) => {
    const found = lacks(holdPoint, files);
    if (expected === null) expect(found).toEqual([]);
    else expect(found).toEqual([expect.stringMatching(expected)]);
  });
});
