/** One list of repairs, for the book and for whoever asks at the prompt. */
import { describe, expect, it } from 'vitest';
import { doneWords, repairsOf } from '../../src/query/repairs.js';
import { answerTopic, TOPICS } from '../../src/query/topics/index.js';
import type { Shell } from '../../src/records/index.js';
import { judged } from '../demo/store.js';

type Given = Pick<Shell, 'findings' | 'welds' | 'amendments'>;
const look = (date: string, result: 'accept' | 'reject', more: object = {}) => ({
  method: 'VT',
  by: 'J2',
  date,
  result,
  ...more,
});
const weld = (id: string, ...inspections: readonly object[]) => ({
  id,
  joins: [
    ['A', 'B'],
    ['A', 'C'],
  ],
  inspections,
});
const shell = {
  findings: [
    {
      id: 'NC-1',
      raised: '2026-03-02',
      of: ['W-1'],
      description: 'undercut',
      decision: 'repair',
      reason: 'ground out',
      closed: '2026-03-04',
    },
    { id: 'NC-2', raised: '2026-03-09', of: ['P-1'], description: 'dent' },
  ],
  welds: [
    weld('W-1', look('2026-03-01', 'reject'), look('2026-03-04', 'accept')),
    weld('W-2', look('2026-03-05', 'reject', { reason: 'crack' }), look('2026-03-06', 'accept', { repair: 1 })),
    weld('W-3', look('2026-03-07', 'reject'), look('2026-03-08', 'reject', { reason: 'porosity' })),
    weld('W-4', look('2026-03-01', 'accept')),
    weld('W-5', look('2026-02-01', 'accept', { repair: 2 })),
  ],
  amendments: [{ id: 'AM-1', date: '2026-08-01', changes: ['DC-1'], reason: 'fuse down to 7.5 A', by: 'E1' }],
} as unknown as Given;

describe('what was repaired', () => {
  it('is every finding, every weld that was rejected and has none, and every later change, newest first', () => {
    expect(repairsOf(shell).map((one) => [one.date, one.id, one.of, one.what, doneWords(one, (day) => `<${day}>`)])).toEqual([
      ['2026-08-01', 'AM-1', ['DC-1'], 'fuse down to 7.5 A', 'changed after delivery'],
      ['2026-03-09', 'NC-2', ['P-1'], 'dent', 'not decided; still open'],
      [
        '2026-03-07',
        'W-3',
        ['A', 'B', 'C'],
        'rejected, reason not recorded; then porosity',
        'no later accept recorded: not proved',
      ],
      ['2026-03-05', 'W-2', ['A', 'B', 'C'], 'crack', 'welded again; accepted <2026-03-06>'],
      ['2026-03-02', 'NC-1', ['W-1'], 'undercut', 'repaired; ground out; closed <2026-03-04>'],
      ['2026-02-01', 'W-5', ['A', 'B', 'C'], 'repaired, reason not recorded', 'welded again; accepted <2026-02-01>'],
    ]);
  });

  it('is the same list at the prompt', () => {
    const { assessment } = judged('OV-021');
    const said = TOPICS.filter(({ name }) => name === 'repairs').flatMap((topic) =>
      answerTopic(assessment, topic).rows.map(({ id }) => id),
    );
    expect(said).toEqual(repairsOf(assessment.model.shell).map(({ id }) => id));
    expect(said.length).toBeGreaterThan(15);
  });
});
