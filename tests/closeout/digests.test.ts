import { describe, expect, it } from 'vitest';
import { coverageOf, digestOf } from '../../src/closeout/coverage.js';
import { signedStages } from '../../src/closeout/signed.js';
import { loadStore } from '../../src/model/load.js';
import type { DigestForm } from '../../src/records/substance.js';

const DAY = '2026-03-01';

/** A coach with one valve and one weld, signed with this digest. */
function modelOf({ node = '', weld = '', digest = '' }: { node?: string; weld?: string; digest?: string }) {
  const files = new Map([
    ['shop.yaml', 'shop: {name: S}\n'],
    ['library/stages.yaml', '- {id: floor, name: Floor}\n'],
    ['shells/T-1/shell.yaml', 'shell: T-1\n'],
    [
      'shells/T-1/welds.yaml',
      `- {id: W-1, joins: [A, B], type: fillet, size: 5 mm, length: 90 mm, process: GMAW, stage: floor${weld}}\n`,
    ],
    [
      'shells/T-1/services/gas.yaml',
      `service: Gas\nmedium: gas\nnodes:\n  - {id: V-1, kind: valve, at: [1 m, 0 m, 1 m], stage: floor${node}}\n`,
    ],
    [
      'shells/T-1/signoffs.yaml',
      digest === '' ? '[]\n' : `- {stage: floor, role: inspector, by: J2, date: ${DAY}, digest: ${digest}}\n`,
    ],
  ]);
  const model = loadStore({ root: '', files, photos: new Map() }).shells.get('T-1')?.model;
  if (!model) throw new Error('not read');
  return model;
}

const signed = (way: DigestForm, of = {}): string => digestOf(coverageOf(modelOf(of), 'floor', DAY, way), way);
const standing = (digest: string, now = {}) => signedStages(modelOf({ ...now, digest }))[0]?.standing;

describe('a sign-off', () => {
  const DESCRIBED = ', role: shut-off, slot: {row: 1, number: 2}, place: by the step, of: [TK-1]';

  it.each(['c1', 'c2'] as const)('of way %s stands when keys that only describe are added', (way) => {
    expect(standing(signed(way))).toBe('holds');
    expect(standing(signed(way), { node: DESCRIBED })).toBe('holds');
    expect(standing(signed(way, { node: DESCRIBED }))).toBe('holds');
  });

  it.each(['c1', 'c2'] as const)('of way %s lapses when a place or a size changes', (way) => {
    expect(standing(signed(way), { weld: ', position: 2F' })).toBe('lapsed');
    expect(standing(signed(way), { node: ', tolerance: 20 mm' })).toBe('lapsed');
  });

  it('lapses by a note in the earlier way, which counted notes, and not in the later one', () => {
    const noted = { weld: ', note: cleaned twice, x-bench: 4' };
    expect(standing(signed('c1'), noted)).toBe('lapsed');
    expect(standing(signed('c1', noted), noted)).toBe('holds');
    expect(standing(signed('c2'), noted)).toBe('holds');
  });

  it('is not verified in a way that this program does not know', () => {
    expect(standing(signed('c2').replace('c2-', 'c3-'))).toBe('not verified');
  });
});
