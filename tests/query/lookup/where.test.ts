import { describe, expect, it } from 'vitest';
import { behind } from '../../../src/query/lookup/behind.js';
import { where } from '../../../src/query/lookup/where.js';
import { accessPanel, circuit, component, levelPanel, lineMember, node, run, zone } from '../../support/services.js';
import { assessment } from './assessment.js';

const dcp = node('DCP', [0, 0, 1200], { nodeKind: 'panel', name: 'House DC panel' });
const splice = node('DC-12/S1', [1000, 0, 150], { panel: 'AP-11', toleranceMm: 15 });
const lamp = node('DC-12/L1', [3000, 0, 150], { nodeKind: 'load', name: 'Bay light left rear' });
const conductor = { awg: '14', conductors: 2, ratingC: 105, material: 'copper' } as const;
const given = assessment({
  zones: [
    zone(
      'TROUGH',
      [
        [500, -400, 0],
        [4000, 400, 600],
      ],
      { name: 'belly service trough' },
    ),
  ],
  panels: [
    levelPanel('BP-04', [2000, 0, 0], [4000, 800]),
    accessPanel('AP-11', [1000, 0, 0], [300, 250], { of: 'BP-04' }),
    accessPanel('AP-12', [1500, 0, 0], [300, 250], { of: 'BP-04' }),
  ],
  circuits: [
    circuit('DC-12', {
      name: 'Bay lights left',
      marking: 'DC-12',
      voltageV: 12.8,
      loadA: 6,
      conductor,
      protection: { kind: 'fuse', ratingA: 15, at: 'DCP' },
    }),
    circuit('DC-13', { name: 'Bay lights right' }),
  ],
  nodes: [dcp, splice, lamp],
  runs: [
    run('DC-12/1', dcp, splice, [[0, 0, 150]], { circuit: 'DC-12' }),
    run('DC-12/2', splice, lamp, [], { circuit: 'DC-12' }),
  ],
  members: [lineMember('SF-L', 'NONE', [0, -430, 0], [4000, -430, 0])],
});
const ids = (query: string): readonly string[] => where(given, query).map((match) => match.id);

describe('where', () => {
  it('puts the whole id first, then what starts with it', () => {
    expect([...ids('DC-12')].sort()).toEqual(['DC-12', 'DC-12/1', 'DC-12/2', 'DC-12/L1', 'DC-12/S1']);
    expect(ids('DC-12')[0]).toBe('DC-12');
    expect(where(given, 'dc-12/s1')[0]?.quality).toBe('exact');
  });

  it('finds by name, by words of a name, and forgives a slip', () => {
    expect(ids('bay lights left')[0]).toBe('DC-12');
    // The second is so named by its circuit, and lies in the rear.
    expect(ids('light rear')).toEqual(['DC-12/L1', 'DC-12/2']);
    expect(where(given, 'bay lihgts right').map((match) => [match.id, match.quality])).toEqual([['DC-13', 'close']]);
    expect(ids('no such thing')).toEqual([]);
    expect(ids('  ')).toEqual([]);
  });

  it('forgives letter case and missing signs, and slips in single words', () => {
    expect(where(given, 'dc12').map((match) => [match.id, match.quality])[0]).toEqual(['DC-12', 'exact']);
    expect(where(given, 'dc 12 s1')[0]).toMatchObject({ id: 'DC-12/S1', quality: 'exact' });
    expect(where(given, 'rear left lihgt').map((match) => [match.id, match.quality])).toContainEqual(['DC-12/L1', 'close']);
  });

  it('finds by colour and place: left is y < 0, rear the last third', () => {
    const [a, b] = [node('A', [3500, -300, 100]), node('B', [3800, -300, 100])];
    const [c, d] = [node('C', [200, 300, 100]), node('D', [500, 300, 100])];
    const wired = assessment({
      nodes: [a, b, c, d],
      runs: [run('R-1', a, b, [], { colour: 'red/black' }), run('R-2', c, d, [], { colour: 'red/black' })],
      members: [lineMember('SF-L', 'NONE', [0, -430, 0], [4000, -430, 0])],
    });
    const found = (query: string) => where(wired, query).map((match) => match.id);
    expect(found('red/black rear left')).toEqual(['R-1']);
    expect(found('Black/Red left back')).toEqual(['R-1']);
    expect(found('red front right')).toEqual(['R-2']);
    expect(found('red/black').sort()).toEqual(['R-1', 'R-2']);
    // A place alone is no name of anything.
    expect(found('rear left')).toEqual([]);
  });

  it('tells ends, joints, make and what was tested, repaired and changed', () => {
    const facts = Object.fromEntries(where(given, 'DC-12')[0]?.facts.map(({ head, value }) => [head, value]) ?? []);
    expect(facts).toMatchObject({ ends: ['DCP', 'DC-12/L1'], joints: ['DC-12/S1'], 'made of': '2 × 14 AWG' });
    const panel = where(given, 'AP-11')[0]?.facts.find(({ head }) => head === 'set in');
    expect(panel?.value).toBe('BP-04');
  });

  it('tells a node its place, its panels best first and its protection', () => {
    const [match] = where(given, 'DC-12/S1');
    expect(match).toMatchObject({ kind: 'node', service: 's', position: [1000, 0, 150], open: false });
    expect(match?.panels.map((panel) => panel.panel)).toEqual(['AP-11', 'AP-12']);
    expect(match?.panels[0]).toMatchObject({ distanceMm: 150, reach: 'hand', blockedBy: [] });
    expect(match?.panels[1]?.distanceMm).toBeCloseTo(Math.hypot(350, 150), 9);
    expect(match?.protection).toMatchObject({ circuit: 'DC-12', kind: 'fuse', ratingA: 15, at: 'DCP', open: true });
  });

  it('tells a run its way and length, and how to follow it', () => {
    const [match] = where(given, 'DC-12/1');
    expect(match?.path).toEqual([
      [0, 0, 1200],
      [0, 0, 150],
      [1000, 0, 150],
    ]);
    expect(match?.lengthMm).toBeCloseTo(2050, 9);
    expect(match?.follow).toEqual(['AP-11']);
  });

  it('tells a circuit its figures, and its way from the protection to the worst load', () => {
    const [match] = where(given, 'DC-12');
    expect(match?.circuit).toMatchObject({ protectionA: 15, worstLoad: 'DC-12/L1', ampacityA: 25 });
    expect(match?.path).toEqual([
      [0, 0, 1200],
      [0, 0, 150],
      [1000, 0, 150],
      [3000, 0, 150],
    ]);
    expect(match?.lengthMm).toBeCloseTo(4050, 9);
    expect(match?.position).toEqual([0, 0, 1200]);
  });

  it('says of a node and a run whether they lie open', () => {
    expect(where(given, 'DCP')[0]).toMatchObject({ id: 'DCP', open: true, panels: [] });
    const [a, b] = [node('A', [0, 0, 2000]), node('B', [1000, 0, 2000])];
    const lost = { ...node('LOST', [0, 0, 0]), at: undefined } as never;
    const free = assessment({ nodes: [a, b, lost], runs: [run('R-1', a, b), run('R-2', a, lost)] });
    expect(where(free, 'R-1')[0]).toMatchObject({ open: true, lengthMm: 1000 });
    // Without a way nobody knows.
    expect(where(free, 'R-2')[0]).toMatchObject({ open: false, path: [] });
    expect(where(given, 'DC-12/2')[0]?.open).toBe(false);
    expect(where(free, 'LOST')[0]).toMatchObject({ open: false, panels: [], position: undefined });
  });

  it('tells a node the protection of the first circuit that a run brings to it, whatever else ends there', () => {
    const [a, b] = [node('A', [0, 0, 2000]), node('B', [1000, 0, 2000])];
    const wired = assessment({
      circuits: [
        circuit('C-1', { protection: { kind: 'fuse', ratingA: 15 } }),
        circuit('C-2', { protection: { kind: 'breaker', ratingA: 30 } }),
      ],
      nodes: [a, b],
      runs: [run('R-0', a, b), run('R-1', a, b, [], { circuit: 'C-1' }), run('R-2', a, b, [], { circuit: 'C-2' })],
    });
    for (const id of ['A', 'B', 'R-1']) expect(where(wired, id)[0]?.protection).toMatchObject({ circuit: 'C-1', ratingA: 15 });
    expect(where(wired, 'R-2')[0]?.protection).toMatchObject({ circuit: 'C-2', ratingA: 30 });
    expect(where(wired, 'R-0')[0]?.protection).toBeUndefined();
  });

  it('tells a circuit the place of its protection, and its way through runs that were typed from either end', () => {
    const typedBack = run('BK/2', lamp, splice, [[3000, 0, 500]], { circuit: 'BK' });
    const backwards = assessment({
      circuits: [circuit('BK', { voltageV: 12.8, loadA: 6, conductor, protection: { kind: 'fuse', ratingA: 15, at: 'DCP' } })],
      nodes: [{ ...dcp, place: 'behind the driver' }, splice, lamp],
      runs: [run('BK/1', dcp, splice, [], { circuit: 'BK' }), typedBack],
    });
    const [match] = where(backwards, 'BK');
    expect(match?.path).toEqual([
      [0, 0, 1200],
      [1000, 0, 150],
      [3000, 0, 500],
      [3000, 0, 150],
    ]);
    expect(match?.place).toBe('behind the driver');
    // One that nobody gave runs has no way.
    expect(where(given, 'DC-13')[0]).toMatchObject({ path: [], position: undefined, place: undefined });
  });

  describe('equipment', () => {
    const water = node('PUMP/W', [1000, 0, 140], { medium: 'fresh water' as never, of: ['PUMP'], circuit: 'H2O' });
    const power = node('PUMP/P', [1000, 0, 150], { of: ['PUMP'], circuit: 'DC-12' });
    const pump = (at: readonly [number, number, number]) =>
      where(
        assessment({
          panels: [
            levelPanel('BP-04', [2000, 0, 0], [4000, 800]),
            accessPanel('AP-11', [1000, 0, 0], [300, 250], { of: 'BP-04' }),
            accessPanel('AP-12', [1500, 0, 0], [300, 250], { of: 'BP-04' }),
          ],
          components: [component('PUMP', at, [60, 60, 60])],
          circuits: [
            circuit('H2O', { medium: 'fresh water' as never }),
            circuit('DC-12', { protection: { kind: 'fuse', ratingA: 15 } }),
          ],
          nodes: [water, power],
        }),
        'PUMP',
      ).find(({ id }) => id === 'PUMP');

    it('is protected by the circuit of its electric connection, whichever is recorded first', () => {
      expect(pump([1000, 0, 200])?.protection).toMatchObject({ circuit: 'DC-12', kind: 'fuse', ratingA: 15 });
    });

    it('is behind the panels that open onto itself and onto its connections, each once', () => {
      for (const at of [
        [1000, 0, 200],
        [9000, 0, 200],
      ] as const) {
        const found = pump(at);
        expect(found?.path).toEqual([]);
        expect(found?.panels.map(({ panel }) => panel)).toEqual(['AP-11', 'AP-12']);
      }
    });
  });

  it('finds panels, zones and members as well', () => {
    expect(where(given, 'SF-L')[0]).toMatchObject({ kind: 'member', position: [2000, -430, 0] });
    expect(where(given, 'service trough')[0]).toMatchObject({ kind: 'zone', id: 'TROUGH' });
    expect(where(given, 'AP-11')[0]).toMatchObject({ kind: 'panel', position: [1000, 0, 0] });
  });
});

describe('behind', () => {
  it('gives the contents of an access panel, nothing for another panel', () => {
    expect(behind(given, 'AP-11')?.map((item) => item.id)).toContain('DC-12/S1');
    expect(behind(given, 'BP-04')).toBeUndefined();
    expect(behind(given, 'constructor')).toBeUndefined();
  });
});
