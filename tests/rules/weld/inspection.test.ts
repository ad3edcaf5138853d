import { describe, expect, it } from 'vitest';
import type { Inspection } from '../../../src/records/index.js';
import { notInspected } from '../../../src/rules/weld/not-inspected.js';
import { ownInspection } from '../../../src/rules/weld/own-inspection.js';
import { rejectedOpen } from '../../../src/rules/weld/rejected-open.js';
import { buildModel, record } from '../../support/build.js';
import { judgeStructure } from '../../support/judge-structure.js';
import { lineMember, sections, weld } from '../../support/structure.js';

const look = (result: Inspection['result'], date: string, more: Partial<Inspection> = {}): Inspection => ({
  method: 'VT',
  by: 'J2',
  date,
  result,
  ...more,
});
const inspected = (inspections: readonly Inspection[]) =>
  buildModel({ welds: [weld('W', [['A', 'B']], { inspections, welder: 'K7' })] });

describe('weld.not-inspected', () => {
  const signoffs = [{ ...record('S'), stage: 'floor', role: 'lead', by: 'P', date: '2026-03-01' }];
  const severity = (stage: string | undefined, memberStage: string | undefined, signed: boolean) =>
    judgeStructure(
      notInspected,
      buildModel(
        {
          members: [lineMember('A', [0, 0, 0], [100, 0, 0], { stage: memberStage })],
          welds: [weld('W', [['A', 'B']], { stage })],
          signoffs: signed ? signoffs : [],
        },
        { sections },
      ),
    ).map((finding) => finding.severity);

  it.each([
    ['floor', undefined, true, ['error']],
    [undefined, 'floor', true, ['error']],
    ['walls', 'floor', true, ['warning']],
    ['floor', undefined, false, ['warning']],
  ] as const)('stage %s of members of stage %s, signed %s', (stage, memberStage, signed, expected) => {
    expect(severity(stage, memberStage, signed)).toEqual(expected);
  });

  it('is quiet once anything was looked at', () => {
    expect(judgeStructure(notInspected, inspected([look('reject', '2026-02-11')]))).toEqual([]);
  });
});

describe('weld.rejected-open', () => {
  it.each([
    ['rejected only', [look('reject', '2026-02-11', { reason: 'undercut' })], 1],
    ['accepted the day after', [look('reject', '2026-02-11'), look('accept', '2026-02-12')], 0],
    ['accepted the same day, later in the list', [look('reject', '2026-02-11'), look('accept', '2026-02-11')], 0],
    ['accepted the same day, earlier in the list', [look('accept', '2026-02-11'), look('reject', '2026-02-11')], 1],
    ['accepted before', [look('accept', '2026-02-10'), look('reject', '2026-02-11')], 1],
    ['listed out of order', [look('accept', '2026-02-12'), look('reject', '2026-02-11')], 0],
    ['accepted by another method', [look('reject', '2026-02-11', { method: 'PT' }), look('accept', '2026-02-12')], 1],
  ] as const)('%s', (_name, inspections, found) => {
    expect(judgeStructure(rejectedOpen, inspected(inspections)).length).toBe(found);
  });
});

describe('weld.own-inspection', () => {
  it.each([
    ['by the welder', [look('accept', '2026-02-11', { by: 'K7' })], 1],
    ['by another', [look('accept', '2026-02-11')], 0],
    ['by both', [look('accept', '2026-02-11', { by: 'K7' }), look('accept', '2026-02-12')], 0],
    ['rejected by the welder', [look('reject', '2026-02-11', { by: 'K7' })], 0],
  ] as const)('%s', (_name, inspections, found) => {
    expect(judgeStructure(ownInspection, inspected(inspections)).length).toBe(found);
  });
});
