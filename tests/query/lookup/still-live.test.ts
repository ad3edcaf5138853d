import { describe, expect, it } from 'vitest';
import { stillLive } from '../../../src/query/lookup/still-live.js';
import { judged } from '../../demo/store.js';

describe('what stays live with one main off', () => {
  const found = stillLive(judged('OV-021').assessment);
  const at = (id: string) => found.flatMap(({ opened }) => opened).find((one) => one.id === id);

  it('is told at the switch too: its line side keeps battery, solar and what charges from shore and generator', () => {
    // The record: DC-00/2, DC-S/3, DC-S2/2 and DC-C/2 end on the line side of BAT/MD, DC-00/3 on its load side.
    expect(at('BAT/MD')).toMatchObject({
      sources: [],
      before: { runs: ['DC-00/2', 'DC-S/3', 'DC-S2/2', 'DC-C/2'], sources: ['SHORE', 'GEN', 'BAT', 'SOL'] },
    });
  });

  it('holds both sides of a switch whose panel has another source', () => {
    expect(at('CH/MD')).toMatchObject({ sources: ['CH/ALT'], before: { runs: ['CH-00/2', 'CH-00/3'] } });
    expect(at('SHORE/B')).toMatchObject({ sources: ['GEN'], before: { runs: ['AC-SH/1'], sources: ['SHORE'] } });
  });
});
