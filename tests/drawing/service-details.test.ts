import { describe, expect, it } from 'vitest';
import { serviceDetails } from '../../src/drawing/index.js';
import { smallAssessment } from '../book/small-store.js';

const SHEET = { widthMm: 247, heightMm: 150 };

/** A fuse board on the front wall: positions in two columns, `count` of them, 40 mm apart. */
const board = (count: number): Record<string, string> => ({
  'shells/T-1/services/dc-fuses.yaml': `
service: Fuse board
medium: dc
nodes:
  - {id: FB, kind: panel, name: Front fuse board, at: [100 mm, -600 mm, 1500 mm]}
${Array.from(
  { length: count },
  (_, at) =>
    `  - {id: F-${at + 1}, kind: terminal, at: [100 mm, ${at % 2 === 0 ? -700 : -500} mm, ${1500 + Math.floor(at / 2) * 40} mm]}`,
).join('\n')}
`,
});

describe('details of a service', () => {
  it('draw a crowd again by itself, from where it lies spread, with every id', () => {
    const [detail, ...more] = serviceDetails(smallAssessment(board(12)), 'dc', SHEET);
    expect(more).toEqual([]);
    expect(detail?.title).toBe('Direct current: detail at Front fuse board, looking forward');
    for (let at = 1; at <= 12; at++) expect(detail?.svg).toContain(`>F-${at}<`);
    // Larger than any whole view: 15 m of coach on a sheet want 1:60 or less.
    expect(Number(detail?.scale.split(':')[1])).toBeLessThanOrEqual(10);
  });

  it('draw nothing of what stands apart or is few', () => {
    expect(serviceDetails(smallAssessment(board(8)), 'dc', SHEET)).toEqual([]);
    expect(serviceDetails(smallAssessment(), 'gas', SHEET)).toEqual([]);
  });
});
