import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { KeepApart, Medium, Panel, PanelKind, Run, ServiceNode } from '../../../src/records/index.js';
import { limits, section } from '../../support/build.js';
import { circuit, levelPanel, lineMember, node, run, zone } from '../../support/services.js';
import { flatPanel } from '../../support/structure.js';
import { judged } from './judge.js';

const [a, b] = [node('A', [0, 0, 0]), node('B', [2000, 0, 0])];
const one = (more: Partial<Run> = {}, via: readonly Vec3[] = []) => ({ nodes: [a, b], runs: [run('R', a, b, via, more)] });
const names = (findings: readonly { readonly ids: readonly string[] }[]): readonly string[] =>
  findings.map((finding) => finding.ids[0] as string);

describe('service.length-differs', () => {
  it('tells a run longer by over 15 % and 300 mm, or shorter by over 2 % and 25 mm', () => {
    const by = (installedLengthMm: number) => judged('service.length-differs', one({ installedLengthMm }));
    expect(by(2299)).toEqual([]);
    expect(by(2301)[0]).toMatchObject({ severity: 'warning', ids: ['R'] });
    expect(by(2301)[0]?.message).toContain('2,301 mm long, expected about 2,000 mm');
    expect(by(1961)).toEqual([]);
    expect(by(1959)[0]?.message).toContain('shorter');
  });
});

describe('service.too-close and service.share-zone', () => {
  const pair = (first: Medium, second: Medium, apartMm: number) => {
    const ends = (medium: Medium, y: number, id: string) =>
      [node(`${id}1`, [0, y, 0], { medium }), node(`${id}2`, [2000, y, 0], { medium })] as const;
    const [g, w] = [ends(first, 0, 'G'), ends(second, apartMm, 'W')];
    return {
      nodes: [...g, ...w],
      runs: [run('GR', ...g), run('WR', ...w)],
      zones: [
        zone('Z', [
          [0, -100, -100],
          [2000, 200, 100],
        ]),
      ],
    };
  };
  const shop = (keepApart: readonly KeepApart[]) => ({ shop: { limits: { ...limits, keepApart } } });

  it('gas near mains is an error with both runs, the place and both distances', () => {
    const [finding] = judged('service.too-close', pair('gas', 'ac', 30), shop([{ media: ['gas', 'ac'], distanceMm: 50.8 }]));
    expect(finding).toMatchObject({ severity: 'error', ids: ['GR', 'WR'] });
    expect(finding?.message).toMatch(/within 30 mm of WR \(ac\) at x .*, expected at least 51 mm/u);
    expect(finding?.related?.[0]?.message).toContain('WR');
    expect(judged('service.too-close', pair('gas', 'ac', 60), shop([{ media: ['gas', 'ac'], distanceMm: 50.8 }]))).toEqual([]);
  });

  it('WIR-63 (from memory): low voltage within 13 mm of mains is a warning', () => {
    expect(
      judged('service.too-close', pair('dc', 'ac', 10), shop([{ media: ['dc', 'ac'], distanceMm: 12.7 }]))[0]?.severity,
    ).toBe('warning');
  });

  it('a shared cavity is told once with the runs of both', () => {
    const [finding, more] = judged(
      'service.share-zone',
      pair('dc', 'ac', 100),
      shop([{ media: ['dc', 'ac'], shareZone: false }]),
    );
    expect(finding).toMatchObject({ severity: 'warning', ids: ['Z', 'GR', 'WR'] });
    expect(more).toBeUndefined();
    expect(judged('service.share-zone', pair('dc', 'data', 100), shop([{ media: ['dc', 'ac'], shareZone: false }]))).toEqual([]);
  });
});

describe('service.cavity-full', () => {
  it('tells a cavity over the limit, by its percentage', () => {
    const size = { text: '1/2 in PEX', nominalMm: 12.7, material: 'PEX' };
    const shell = (side: number) => ({
      ...one({ size, medium: 'water' }),
      zones: [
        zone('Z', [
          [0, -side / 2, -side / 2],
          [2000, side / 2, side / 2],
        ]),
      ],
    });
    // ASTM F876 (from memory): 15.875 mm outside, 197.9 mm²: 49 % of 20 × 20, 22 % of 30 × 30
    expect(judged('service.cavity-full', shell(20))[0]?.message).toContain('49 % full with 1 run, expected at most 40 %');
    expect(judged('service.cavity-full', shell(30))).toEqual([]);
  });
});

describe('service.outside-envelope', () => {
  const panels = [levelPanel('BP', [1000, 0, 0], [4000, 2000])];

  it('tells a way point and a node metres outside the coach', () => {
    const found = judged('service.outside-envelope', {
      ...one({}, [[1000, 2100, 0]]),
      panels,
      nodes: [a, b, node('F', [90000, 0, 0])],
    });
    expect(names(found)).toEqual(['F', 'R']);
    expect(found[1]?.message).toContain('feet');
  });

  it('names the slip that would bring the place back in', () => {
    const said = (at: Vec3) => judged('service.outside-envelope', { ...one({}, [at]), panels })[0]?.message ?? '';
    expect(said([12 * 2500, 0, 0])).toContain('fits when its feet are read as inches');
    expect(said([25.4 * 2900, 0, 0])).toContain('fits when its inches are read as millimetres');
    expect(said([1000, 0, 25.4 * 900 * 25.4])).toContain('look for feet and inches exchanged');
    expect(said([-3500, 0, 0])).toContain('fits when its feet');
  });

  it('leaves what is within a metre of it', () => {
    expect(judged('service.outside-envelope', { ...one({}, [[1000, 1900, 0]]), panels })).toEqual([]);
  });
});

describe('service.outside-zone', () => {
  const there: readonly Vec3[] = [[500, 0, 0]];
  const back: readonly Vec3[] = [[1500, 0, 0]];
  const zones = [
    zone('Z', [
      [0, -50, -50],
      [2000, 50, 50],
    ]),
    zone('FAR', [
      [0, 900, -50],
      [2000, 999, 50],
    ]),
  ];

  it('tells a named cavity that the run never enters, and notes a stray way point', () => {
    expect(judged('service.outside-zone', { ...one({ zones: ['Z', 'FAR'] }), zones })[0]).toMatchObject({
      severity: 'warning',
      ids: ['R', 'FAR'],
    });
    expect(
      judged('service.outside-zone', { ...one({ zones: ['Z'] }, [...there, [1000, 300, 0], ...back]), zones })[0]?.severity,
    ).toBe('note');
    // A way in or out of the cavity is no stray.
    expect(judged('service.outside-zone', { ...one({ zones: ['Z'] }, [...there, [1000, 300, 0]]), zones })).toEqual([]);
  });

  it('lets the run’s own tolerance pass', () => {
    expect(judged('service.outside-zone', { ...one({ zones: ['Z'] }, [...there, [1000, 80, 0], ...back]), zones })).toHaveLength(
      1,
    );
    expect(
      judged('service.outside-zone', { ...one({ zones: ['Z'], toleranceMm: 10 }, [...there, [1000, 80, 0], ...back]), zones }),
    ).toEqual([]);
  });
});

describe('service.no-tolerance, service.run-unmarked', () => {
  it('asks a concealed node and run for their tolerance, an open one not', () => {
    const zones = [
      zone('Z', [
        [-10, -50, -50],
        [900, 50, 50],
      ]),
    ];
    expect(names(judged('service.no-tolerance', { ...one(), zones }))).toEqual(['A', 'R']);
    expect(judged('service.no-tolerance', one())).toEqual([]);
    const known = { nodes: [{ ...a, toleranceMm: 10 }, b], runs: [run('R', a, b, [], { toleranceMm: 10 })], zones };
    expect(judged('service.no-tolerance', known)).toEqual([]);
  });

  it('notes a run without a tag of its own or its circuit’s', () => {
    expect(judged('service.run-unmarked', one())[0]).toMatchObject({ severity: 'note', ids: ['R'] });
    expect(judged('service.run-unmarked', one({ marking: 'R' }))).toEqual([]);
    expect(judged('service.run-unmarked', { ...one({ circuit: 'C' }), circuits: [circuit('C', { marking: 'C' })] })).toEqual([]);
  });
});

describe('service.no-grommet', () => {
  it('tells a run through a member without one', () => {
    const TUBE = section('TUBE', { shape: 'rectangular tube', depthMm: 100, widthMm: 50, wallMm: 3, cornerRadiusMm: 0 });
    const library = { sections: new Map([[TUBE.id, TUBE]]) };
    const members = [lineMember('CB', 'TUBE', [1000, -500, 0], [1000, 500, 0])];
    const [finding] = judged('service.no-grommet', { ...one(), members }, { library });
    expect(finding).toMatchObject({ severity: 'warning', ids: ['R', 'CB'] });
    expect(finding?.message).toContain('grommets: [CB]');
    expect(judged('service.no-grommet', { ...one({ grommets: ['CB'] }), members }, { library })).toEqual([]);
  });
});

describe('service.no-sealant', () => {
  const sheet = (panelKind: PanelKind, id = 'P'): Panel => ({
    ...flatPanel(id, 0),
    panelKind,
    alloy: '5052-H32',
    outline: [
      [1000, -500, -500],
      [1000, 500, -500],
      [1000, 500, 500],
      [1000, -500, 500],
    ],
  });
  const through = (panelKind: PanelKind, more = {}) => judged('service.no-sealant', { ...one(more), panels: [sheet(panelKind)] });

  it('tells a run through an outside panel, sealed by neither name nor place', () => {
    const [finding] = through('belly');
    expect(finding).toMatchObject({ severity: 'note', ids: ['R', 'P'] });
    expect(finding?.message).toContain('sealed: [P]');
    expect(through('skin', { grommets: ['P'] })).toHaveLength(1);
    expect(through('roof', { sealed: ['P'] })).toEqual([]);
    expect(through('cap', { sealed: [[1010, 0, 0]] })).toEqual([]);
  });

  it('asks none of a lining inside', () => {
    expect(through('interior')).toEqual([]);
  });
});

describe('service.bare-earth', () => {
  const stud = (bonding: boolean, more: Partial<ServiceNode> = {}) => {
    const ends = [
      node('E', [0, 0, 0], { nodeKind: 'terminal', ...more }),
      node('L', [1000, 0, 0], { nodeKind: 'load' }),
    ] as const;
    const bond = run('EB/1', ends[1], ends[0], [], { circuit: 'EB' });
    return judged('service.bare-earth', { nodes: [...ends], runs: [bond], circuits: [circuit('EB', { bonding })] });
  };

  it('notes the stud of an earth bond without an insulator on record, whatever it is called', () => {
    expect(stud(true)[0]).toMatchObject({ severity: 'note', ids: ['E'] });
    expect(stud(true, { insulator: true })).toEqual([]);
  });

  it('asks none of a bar, nor of a stud that no bond ends on', () => {
    expect(stud(true, { role: 'busbar', name: 'earth stud 1' })).toEqual([]);
    expect(stud(false, { name: 'earth stud 1' })).toEqual([]);
  });
});

describe('service.trapped-water', () => {
  const tank = node('T', [0, 0, 500], { nodeKind: 'source', medium: 'water' });
  const tap = node('K', [4000, 0, 500], { nodeKind: 'load', medium: 'water' });
  const sag = (bottom: number) => ({
    nodes: [tank, tap],
    runs: [
      run(
        'W',
        tank,
        tap,
        [
          [1000, 0, bottom],
          [3000, 0, bottom],
        ],
        { size: { text: '3/4 in PEX', nominalMm: 19.05, material: 'PEX' } },
      ),
    ],
  });

  it('tells a low point that keeps over 0.2 L, with its litres and place', () => {
    const [finding] = judged('service.trapped-water', sag(0));
    expect(finding).toMatchObject({ severity: 'warning', ids: ['W'] });
    expect(finding?.message).toMatch(/keeps 1\.\d L level/u);
  });

  it('passes a line that lies level with its ends', () => {
    expect(judged('service.trapped-water', sag(620))).toEqual([]);
  });
});

describe('service.support-spacing', () => {
  it('ABYC E-11, 18 in (from memory): notes wires supported less often', () => {
    expect(judged('service.support-spacing', one({ supportsMm: 600 }))[0]).toMatchObject({ severity: 'note', ids: ['R'] });
    expect(judged('service.support-spacing', one({ supportsMm: 457.2 }))).toEqual([]);
    expect(judged('service.support-spacing', one({ supportsMm: 600, medium: 'water' }))).toEqual([]);
  });
});
