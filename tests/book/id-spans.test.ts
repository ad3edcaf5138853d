import { describe, expect, it } from 'vitest';
import { idSpans, shortRefs } from '../../src/book/id-spans.js';

const texts = (ids: readonly string[]): readonly string[] => idSpans(ids).map(({ text }) => text);

describe('ids that follow each other', () => {
  it('are told by the first and the last, from three on', () => {
    expect(texts(['AP-01', 'AP-02', 'AP-03', 'AP-05'])).toEqual(['AP-01 to AP-03', 'AP-05']);
    expect(texts(['AP-01', 'AP-02'])).toEqual(['AP-01', 'AP-02']);
    expect(idSpans(['DC-01/F', 'DC-02/F', 'DC-03/F'])[0]).toMatchObject({ id: 'DC-01/F', text: 'DC-01/F to DC-03/F' });
  });

  it('are no row where a number, a stem, a tail or a width of digits is another', () => {
    for (const ids of [
      ['A-1', 'A-3', 'A-4'],
      ['A-1', 'B-2', 'A-3'],
      ['A-1/F', 'A-2/G', 'A-3/F'],
      ['A-9', 'A-10', 'A-11'],
    ])
      expect(texts(ids), ids.join()).toEqual(ids);
  });

  it('say what stands before the last stroke once', () => {
    const told = shortRefs(['DC-04/5', 'DC-04/6', 'DC-05/1', 'X']);
    expect(told.map(({ text }) => text)).toEqual(['DC-04/5', '/6', 'DC-05/1', 'X']);
    expect(told.map(({ id }) => id)).toEqual(['DC-04/5', 'DC-04/6', 'DC-05/1', 'X']);
  });
});
