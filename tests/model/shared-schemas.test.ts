import { describe, expect, it } from 'vitest';
import { loadStore } from '../../src/model/load.js';
import { Schemas } from '../../src/records/schema.js';

describe('schemas that shells share', () => {
  const head = (id: string, datum: string): readonly (readonly [string, string])[] => [
    [`shells/${id}/shell.yaml`, `shell: ${id}\ntitle: ${id}\n${datum}`],
    [`shells/${id}/components.yaml`, 'units: {length: in}\ncomponents:\n  - {id: C-1, name: Pump, mass: 4 kg, at: [10, 0, 2]}\n'],
  ];
  const shells = [
    ['A', ''],
    ['B', 'datum: {origin: [100 mm, 0 mm, 0 mm]}\n'],
    ['C', 'datum: {origin: [0 mm, 50 mm, 0 mm]}\n'],
    ['D', ''],
  ] as const;
  const at = (files: ReadonlyMap<string, string>, id: string) =>
    loadStore({ root: '', files, photos: new Map() }).shells.get(id)?.model.shell.components[0]?.at;

  it('give each the places of its own datum, in whatever order they are read', () => {
    const all = new Map([['shop.yaml', 'shop: {name: S}\n'] as const, ...shells.flatMap(([id, datum]) => head(id, datum))]);
    // 10 in is 254 mm, 2 in is 50.8 mm, by the definition of the inch (25.4 mm, exact).
    const places = { A: [254, 0, 50.8], B: [354, 0, 50.8], C: [254, 50, 50.8], D: [254, 0, 50.8] };
    const ids = shells.map(([id]) => id);
    for (const order of [ids, [...ids].reverse()])
      for (const id of order) expect(at(all, id)?.map((mm) => Number(mm.toFixed(9)))).toEqual(places[id]);
  });

  it('are the same for the same units and datum only', () => {
    const one = Schemas.for({}, [1, 2, 3]);
    expect(Schemas.for({}, [1, 2, 3])).toBe(one);
    expect(Schemas.for({}, [1, 2, 4])).not.toBe(one);
    expect(Schemas.for({ length: 'in' } as never, [1, 2, 3])).not.toBe(one);
    for (let i = 0; i < 100; i++) Schemas.for({}, [i, 0, 9]);
    expect(Schemas.for({}, [1, 2, 3]).of('weld')).toBeDefined();
  });
});
