import { describe, expect, it } from 'vitest';
import { ask } from '../../../src/query/lookup/ask.js';
import { lookupOf } from '../../../src/query/lookup/lookup-of.js';
import { judged } from '../../demo/store.js';

const lookup = () => lookupOf(judged('OV-021').assessment);

describe('a question in everyday words', () => {
  it.each([
    ['water shut-off', 'valves'],
    ['may I weld here', 'alloy'],
    ['was this repaired before', 'repairs'],
    ['stain under the ceiling', 'leak'],
    ['may I plug a 1,500 W heater in here', 'plug'],
    ['cracked skin', 'skin'],
    ['the slide-out sticks', 'slide'],
    ['what does each axle carry', 'axles'],
    ['how much may I put in the rear bay', 'bay'],
  ])('%s: %s', (query, topic) => {
    expect(ask(lookup(), query).topics.map(({ topic: name }) => name)).toContain(topic);
  });

  it('offers what the words may mean where nothing is called so, and gives it as no answer', () => {
    const { topics, matches } = ask(lookup(), 'panel for pump');
    expect(topics).toEqual([]);
    expect(new Set(matches.map(({ quality }) => quality))).toEqual(new Set(['close']));
    expect(matches.map(({ id }) => id)).toContain('DC-22');
    expect(matches.length).toBeLessThanOrEqual(10);
  });

  it('lets no word that only stands beside others ask a question', () => {
    expect(ask(lookup(), 'ceiling').topics).toEqual([]);
    expect(ask(lookup(), 'water').topics).toEqual([]);
  });
});

describe('the lifting points', () => {
  const rows = () => ask(lookup(), 'lifting').topics[0];

  it('say what to unbolt first and what each is asked to carry', () => {
    const first = rows()?.rows.find(({ id }) => id === 'LIFT-1');
    const value = (head: string) => first?.facts.find((one) => one.head === head)?.value;
    expect(String(value('unbolt first'))).toContain('U-bolts UB-01');
    expect(value('asked to carry')).toMatch(/ lb \(.* kg\)$/u);
  });

  it('are weighed together against the whole that is lifted', () => {
    // Four points of 36 kN each, as the demo's record declares them.
    expect(rows()?.notes[0]).toMatch(/^Lift: 4 points together are declared for 144 kN and lift .*, the shell\./u);
  });
});
