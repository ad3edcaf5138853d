import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Photo } from '../../../src/records/index.js';
import { gussetMissing } from '../../../src/rules/opening/gusset-missing.js';
import { gussetPhoto } from '../../../src/rules/opening/gusset-photo.js';
import { notMeasured } from '../../../src/rules/opening/not-measured.js';
import { outOfSquare } from '../../../src/rules/opening/out-of-square.js';
import { sag } from '../../../src/rules/opening/sag.js';
import { buildModel, record } from '../../support/build.js';
import { judgeStructure } from '../../support/judge-structure.js';
import { opening, plateMember } from '../../support/structure.js';

const withDiagonals = (d1: number, d2: number) => opening('O', { measured: { diagonalsMm: [d1, d2], headerSag: [] } });

describe('opening.out-of-square', () => {
  it.each([
    // the limit of the test shop is 1/8 in
    [2240, 2240 - 3.175, 0],
    [2240, 2240 - 3.2, 1],
    [2240 - 3.2, 2240, 1],
  ])('diagonals of %d and %d mm', (d1, d2, found) => {
    expect(judgeStructure(outOfSquare, buildModel({ openings: [withDiagonals(d1, d2)] })).length).toBe(found);
  });
  it('GEO-22: tells the racking of 0.2°', () => {
    const [finding] = judgeStructure(outOfSquare, buildModel({ openings: [withDiagonals(2239.1879, 2232.9437)] }));
    expect(finding).toMatchObject({ severity: 'warning', ids: ['O'] });
    expect(finding?.message).toContain('0.20°');
  });
});

describe('opening.sag', () => {
  const sagged = (dropMm: number) => opening('O', { measured: { headerSag: [{ atMm: 900, dropMm }] }, header: 'H' });
  it.each([
    // the limit of the test shop is 1/16 in
    [1.5875, 0],
    [1.7, 1],
  ])('a drop of %d mm', (dropMm, found) => {
    const findings = judgeStructure(sag, buildModel({ openings: [sagged(dropMm)] }));
    expect(findings.map(({ ids }) => ids)).toEqual(found === 1 ? [['O', 'H']] : []);
  });
});

describe('opening.gusset-missing', () => {
  const corner = (x: number, z: number): Vec3[] => [
    [x, -1200, z],
    [x + 60, -1200, z],
    [x, -1200, z + 60],
  ];
  const four = [
    plateMember('G1', corner(1000, 500), 8),
    plateMember('G2', corner(2940, 500), 8),
    plateMember('G3', corner(1000, 1440), 8),
    plateMember('G4', corner(2940, 1440), 8),
  ];
  it('is quiet with one at each corner, named or of role gusset', () => {
    expect(judgeStructure(gussetMissing, buildModel({ members: four, openings: [opening('O')] }))).toEqual([]);
  });
  it('names the bare corners', () => {
    const [finding] = judgeStructure(gussetMissing, buildModel({ members: four.slice(0, 3), openings: [opening('O')] }));
    expect(finding).toMatchObject({ severity: 'error', ids: ['O'] });
    expect(finding?.message).toContain('upper rear');
    expect(finding?.message).not.toContain('upper front');
  });
  it('names a recorded gusset that stands elsewhere, of a door too', () => {
    const away = plateMember('G9', corner(6000, 500), 8);
    const door = opening('O', { openingKind: 'door', gussets: ['G9'] });
    expect(judgeStructure(gussetMissing, buildModel({ members: [away], openings: [door] }))[0]?.ids).toEqual(['O', 'G9']);
  });
});

describe('opening.not-measured', () => {
  it('is a note where both diagonals are not on record', () => {
    const list = [opening('A'), opening('B', { measured: { topMm: 2000, headerSag: [] } }), withDiagonals(2236, 2236)];
    const found = judgeStructure(notMeasured, buildModel({ openings: list }));
    expect(found.map(({ ids, severity }) => [ids[0], severity])).toEqual([
      ['A', 'note'],
      ['B', 'note'],
    ]);
    expect(found[0]?.message).toContain('not verified');
  });
});

describe('opening.gusset-photo', () => {
  const at = (id: string, x: number, z: number) =>
    plateMember(
      id,
      [
        [x, -1200, z],
        [x + 80, -1200, z],
        [x, -1200, z + 80],
      ],
      8,
    );
  const judged = (of: readonly string[], more: { stage?: string; kind?: string; own?: readonly string[] } = {}) =>
    judgeStructure(
      gussetPhoto,
      buildModel({
        members: [at('G1', 1000, 500), { ...at('G2', 2920, 1420), photos: [...(more.own ?? [])] }],
        openings: [opening('SO', { stage: 'walls', openingKind: more.kind ?? 'slide-out' })],
        photos: [{ ...record('PH'), file: 'a.jpg', of }] as readonly Photo[],
        signoffs:
          more.stage === undefined ? [] : [{ ...record('S'), stage: more.stage, role: 'lead', by: 'J2', date: '2026-01-01' }],
      }),
    ).map(({ ids, severity }) => [ids, severity]);

  it('R25: wants a photo of each gusset, named by either record', () => {
    // common practice, no source
    expect(judged(['G1', 'G2'])).toEqual([]);
    expect(judged(['G1'], { own: ['PH'] })).toEqual([]);
    expect(judged(['SO'])).toEqual([[['SO', 'G1', 'G2'], 'note']]);
  });

  it('is a warning once the opening’s stage is signed off, and asks nothing of a door', () => {
    expect(judged(['G1'], { stage: 'walls' })).toEqual([[['SO', 'G2'], 'warning']]);
    expect(judged(['G1'], { stage: 'floor' })).toEqual([[['SO', 'G2'], 'note']]);
    expect(judged([], { kind: 'door' })).toEqual([]);
  });
});
