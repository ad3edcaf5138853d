import type { Rec } from '../../yaml.js';
import type { Plant } from './plant.js';

/** Changes the bonding log of one panel. */
const bond =
  (id: string, with_: Rec): Plant['spoil'] =>
  (records) =>
    records.map((one) => (one.id === id ? { ...one, bond: { ...(one.bond as Rec), ...with_ } } : one));

/** Bonding, and a sheet that is not flat. */
export const SKINS: readonly Plant[] = [
  {
    rule: 'panel.bond-dew-point',
    id: 'SK-L-02',
    file: 'panels-skin.yaml',
    what: 'sheet came in from the yard, 2 K over the dew point',
    spoil: bond('SK-L-02', { surface: '10 C' }),
  },
  {
    rule: 'panel.bond-time',
    id: 'SK-L-05',
    file: 'panels-skin.yaml',
    what: 'bead open for 34 of 30 minutes',
    spoil: bond('SK-L-05', { open_time: '34 min' }),
  },
  {
    rule: 'panel.not-flat',
    id: 'SK-L-03',
    file: 'panels-skin.yaml',
    what: 'one corner half an inch out',
    spoil: (records) =>
      records.map((one) =>
        one.id === 'SK-L-03'
          ? {
              ...one,
              outline: (one.outline as (readonly string[])[]).map((corner, i) =>
                i === 2 ? [corner[0], '-49-1/2 in', corner[2]] : corner,
              ),
            }
          : one,
      ),
  },
];
