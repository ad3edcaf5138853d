/** A book holds nothing of another customer's coach, also not in the words of a commit that touched both. */
import { describe, expect, it } from 'vitest';
import { historyFor } from '../../src/book/editions.js';
import { EDITIONS } from '../../src/book/input.js';
import type { Model } from '../../src/model/shell.js';
import { judged } from '../demo/store.js';

const model = (): Model => {
  const { model: demo } = judged('OV-021').assessment;
  return { ...demo, elsewhere: { ...demo.elsewhere, shells: () => ['OV-024', 'Q.7'] } as Model['elsewhere'] & object };
};
const printed = (edition: (typeof EDITIONS)[number], ...messages: readonly string[]): readonly string[] =>
  historyFor(
    { commits: messages.map((message, i) => ({ hash: `${i}`, date: '2026-06-08T16:40:00-05:00', author: 'A', message })) },
    model(),
    edition,
  ).commits.map(({ message }) => message);

describe.each(EDITIONS)('the revisions of the %s edition', (edition) => {
  it('say of a shared commit what is of this shell', () => {
    expect(
      printed(
        edition,
        'OV-021: type cases in; OV-024: rails and first cross tubes',
        'OV-024: rails and first cross tubes; OV-021: type cases in',
        'OV-024: first posts; left wall up; OV-021: type cases in; lamps in',
        'New tube in the library; the scale was calibrated',
      ),
    ).toEqual([
      'OV-021: type cases in',
      'OV-021: type cases in',
      'OV-021: type cases in; lamps in',
      'New tube in the library; the scale was calibrated',
    ]);
  });

  it('say no more of one that is about another shell than that', () => {
    expect(printed(edition, 'OV-024: first posts up', 'Truss of Q.7 like that of (OV-021)', 'Posts of OV-0245')).toEqual([
      'Recorded with the work on another shell',
      'Recorded with the work on another shell',
      'Posts of OV-0245',
    ]);
  });
});
