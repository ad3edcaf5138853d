import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { IDxf } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { expandDrawing } from '../../src/entry/dxf/expand.js';
import { keptLayers, saidLayers, withLayers } from '../../src/entry/dxf/layers.js';
import { drawnPieces } from '../../src/entry/dxf/pieces.js';
import { planPieces } from '../../src/entry/dxf/plan.js';
import { readDxf } from '../../src/entry/dxf/read.js';
import { dxfOf } from '../../src/entry/dxf/write.js';
import { keptColumns } from '../../src/entry/mapping.js';
import { readKnown } from '../../src/entry/record-index.js';
import { distance, type Vec3 } from '../../src/geometry/vector.js';
import { loadStore } from '../../src/model/load.js';
import type { Shell } from '../../src/records/index.js';
import { storeText } from '../support/store.js';

const file = (name: string): string => readFileSync(new URL(`drawings/${name}`, import.meta.url), 'utf8');
const LIBRARY = {
  'library/materials.yaml': '- {id: A1, kind: aluminium, density: 2700 kg/m3}\n',
  'library/sections.yaml': '- {id: RT, shape: rectangular tube, depth: 2 in, width: 2 in, wall: 1/8 in, corner_radius: 0 in}\n',
};
const shellOf = (files: Readonly<Record<string, string>>): Shell =>
  loadStore(storeText({ ...LIBRARY, ...files })).shells.get('T-1')?.model?.shell as Shell;

/** frame.dxf and the places in frame.json were written by ezdxf 0.18.1, another library: blocks within blocks, turned and stretched, planes with normals. */
describe('a drawing that another library wrote', () => {
  const { shapes, left } = expandDrawing(readDxf('frame.dxf', file('frame.dxf')));

  it('has every corner where that library has it', () => {
    const theirs = (JSON.parse(file('frame.json')) as Vec3[][]).flatMap((points, i) =>
      // An open line of three corners is two straight pieces here.
      i === 1 ? [points.slice(0, 2), points.slice(1)] : [points],
    );
    expect(shapes.map(({ points }) => points.length)).toEqual(theirs.map(({ length }) => length));
    shapes.forEach(({ points }, i) => {
      points.forEach((point, j) => {
        expect(distance(point, theirs[i]?.[j] as Vec3), `piece ${i}, corner ${j}`).toBeLessThan(1e-5);
      });
    });
  });

  it('gives pieces of a block the layer it was put on, an insert’s attribute as the mark, and tells what it leaves out', () => {
    expect(shapes.map(({ layer }) => layer)).toEqual([
      ...['RAILS', 'RAILS', 'RAILS', 'SKIN', 'SKIN', 'SKIN', 'DOORS', 'POSTS', 'POSTS', 'POSTS', 'POSTS'],
    ]);
    expect(shapes.map(({ said }) => said.id).filter((id) => id !== undefined)).toEqual(['P-77']);
    expect([...left]).toEqual([['polylines with arcs', 1]]);
  });
});

/** An independent reader of DXF; its types say less than it gives. */
const DxfParser = createRequire(import.meta.url)('dxf-parser') as new () => { parseSync(text: string): IDxf | null };

/** A repeatable draw between two numbers. */
function draws(seed: number): (low: number, high: number) => number {
  let state = seed;
  return (low, high) => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return low + ((high - low) * state) / 2147483648;
  };
}

const draw = draws(20);
const place = (): string =>
  `[${[draw(-900, 9000), draw(-1300, 1300), draw(-400, 2900)].map((one) => `${one.toFixed(3)} mm`).join(', ')}]`;
const FRAME = {
  'shells/T-1/shell.yaml': 'shell: T-1\n',
  'shells/T-1/members.yaml': [
    ...Array.from(
      { length: 300 },
      (_, i) =>
        `- {id: M-${i}, part: "post ${i}, Öse", section: RT, alloy: A1, from: ${place()}, to: ${place()}, roll: ${i % 90}}`,
    ),
    '- {id: G-1, alloy: A1, plate: {thickness: 5 mm, outline: [[0 mm, 0, 0], [90 mm, 0, 0], [0 mm, 0, 80 mm]]}}',
  ].join('\n'),
  'shells/T-1/panels.yaml':
    '- {id: SK-1, kind: skin, alloy: A1, thickness: 2 mm, outline: [[0 mm, 9 mm, 0], [900 mm, 9 mm, 0], [900 mm, 9 mm, 700 mm], [0 mm, 9 mm, 700 mm]]}\n',
  'shells/T-1/openings.yaml':
    '- {id: D-1, kind: door, wall: left, sill: [[5 mm, 0, 3 mm], [705 mm, 0, 3 mm]], width: 700 mm, height: 1800 mm}\n',
};
const drawn = shellOf(FRAME);
const dxf = dxfOf(drawn);
const expanded = expandDrawing(readDxf('t.dxf', dxf));

describe('a shell as a drawing', () => {
  it('is read by another reader, in millimetres, a layer for each section and kind', () => {
    const theirs = new DxfParser().parseSync(dxf);
    expect(theirs?.header.$INSUNITS).toBe(4);
    const lines = theirs?.entities.filter(({ type }) => type === 'LINE') as unknown as {
      layer: string;
      vertices: { x: number; y: number; z: number }[];
    }[];
    expect(lines).toHaveLength(300);
    lines.forEach(({ layer, vertices }, i) => {
      const { shape } = drawn.members[i] as Shell['members'][number];
      if (shape.kind !== 'line') throw new Error('a plate is no line');
      const [from, to] = vertices.map(({ x, y, z }): Vec3 => [x, y, z]);
      expect(layer).toBe('MEMBERS_RT');
      expect(distance(from as Vec3, shape.from) + distance(to as Vec3, shape.to)).toBeLessThan(0.001);
    });
    expect(Object.keys(theirs?.tables.layer.layers ?? {})).toEqual(['0', 'MEMBERS_RT', 'OPENINGS', 'PANELS_SKIN', 'PLATES']);
  });

  it('comes back whole into an empty shell, no end further off than a millimetre', () => {
    const empty = { 'shells/T-1/shell.yaml': 'shell: T-1\ndatum: {origin: [100 mm, 0 mm, -20 mm]}\n' };
    const known = readKnown(storeText({ ...LIBRARY, ...empty }), 'T-1');
    const { pieces } = drawnPieces({ drawing: expanded, layers: new Map(), mmPerUnit: 1, shell: shellOf(empty), known });
    const { plan, texts } = planPieces({ name: 't.dxf', pieces, known, unit: 'in', ahead: false, mostBytes: 1e9 });
    expect([plan.faults, plan.added.length]).toEqual([[], 303]);
    const back = shellOf({ ...empty, ...Object.fromEntries(texts) });
    const furthest = drawn.members.map(({ id, shape }, i) => {
      const other = back.members.find((one) => one.id === id) as Shell['members'][number];
      expect([other.part, other.alloy], id).toEqual([drawn.members[i]?.part, 'A1']);
      const corners = (one: typeof shape): readonly Vec3[] => (one.kind === 'line' ? [one.from, one.to] : one.outline);
      return Math.max(...corners(shape).map((point, j) => distance(point, corners(other.shape)[j] as Vec3)));
    });
    expect(furthest).toHaveLength(301);
    expect(Math.max(...furthest)).toBeLessThan(1);
    expect(back.openings[0]).toMatchObject({ id: 'D-1', openingKind: 'door', wall: 'left', widthMm: 700, heightMm: 1800 });
  });

  it('changes nothing where it lies already, and only what moved where something did', () => {
    const known = readKnown(storeText({ ...LIBRARY, ...FRAME }), 'T-1');
    const planOf = (text: string) => {
      const of = { drawing: expandDrawing(readDxf('t.dxf', text)), layers: new Map(), mmPerUnit: 1, shell: drawn, known };
      return planPieces({ name: 't.dxf', pieces: drawnPieces(of).pieces, known, unit: 'mm', ahead: false, mostBytes: 1e9 }).plan;
    };
    expect(planOf(dxf)).toMatchObject({ added: [], changed: [], faults: [] });
    // Without its own words a piece is known by where it lies.
    const bare = dxf.replace(/1001\r\nSHELLBOOK\r\n(?:1000\r\n.*\r\n)*/gu, '');
    const layers = saidLayers(['MEMBERS_RT=member', 'PLATES=member', 'PANELS_SKIN=panel', 'OPENINGS=opening']);
    const of = { drawing: expandDrawing(readDxf('t.dxf', bare)), layers, mmPerUnit: 1, shell: drawn, known };
    expect(new Set(drawnPieces(of).pieces.map(({ id }) => id))).toEqual(
      new Set(['M', 'G', 'SK', 'D'].flatMap((one) => [...drawn.byId.keys()].filter((id) => id.startsWith(`${one}-`)))),
    );
    const { shape } = drawn.members[7] as { shape: { from: Vec3 } };
    const x = String(Number(shape.from[0].toFixed(4)));
    const moved = planOf(dxf.replace(`10\r\n${x}\r\n`, `10\r\n${Number(x) + 25}\r\n`));
    expect(moved.changed.map(({ record }) => record.id)).toEqual(['M-7']);
  });
});

describe('layers', () => {
  it('are said once and kept', () => {
    const said = saidLayers(['FLOOR=member, section=RT, alloy=A1', 'NOTES=skip', 'SKIN=panels, thickness=0.090 in']);
    const kept = withLayers('member:\n  Cost: skip\n', said);
    expect(keptLayers(kept)).toEqual(said);
    expect(keptLayers(withLayers(kept, saidLayers(['FLOOR=skip']))).get('FLOOR')).toBe('skip');
    expect([...keptColumns(kept, 'member')]).toEqual([['cost', 'skip']]);
  });

  it.each([
    ['FLOOR', 'expected a layer'],
    ['FLOOR=beam', 'expected member, panel, opening or skip'],
    ['FLOOR=member, sectoin=RT', 'as `section`'],
  ])('%j is told', (one, said) => {
    expect(() => saidLayers([one])).toThrow(said);
  });
});

describe('a hostile drawing', () => {
  const entities = (...lines: readonly (string | number)[]): string =>
    ['0', 'SECTION', '2', 'ENTITIES', ...lines, '0', 'ENDSEC', '0', 'EOF', ''].join('\n');
  const LINE = [0, 'LINE', 8, 'A', 10, 0, 20, 0, 30, 0, 11, 1, 21, 0, 31, 0];
  const block = (name: string, ...inner: readonly (string | number)[]): string =>
    [0, 'BLOCK', 2, name, 10, 0, 20, 0, 30, 0, ...inner, 0, 'ENDBLK'].join('\n');
  const insert = (name: string): readonly (string | number)[] => [0, 'INSERT', 8, 'A', 2, name, 10, 0, 20, 0, 30, 0];
  const withBlocks = (blocks: readonly string[], name: string): string =>
    ['0', 'SECTION', '2', 'BLOCKS', ...blocks, '0', 'ENDSEC', entities(...insert(name))].join('\n');

  it.each([
    ['no number', entities(...LINE.map((one) => (one === 1 ? 'NaN' : one))), ':16: Found `NaN`, expected a number'],
    ['a number without an end', entities(...LINE.map((one) => (one === 1 ? '1e400' : one))), 'expected a number'],
    ['text of another kind', 'id,part\nA,x\n', ':1: Found `id,part`'],
    ['one cut short', entities(...LINE).slice(0, -20), 'not saved or copied whole'],
    ['a number alone', '0\nLINE', 'has no section of a DXF drawing'],
    ['more lines than any coach has', entities('0\nLINE\n'.repeat(2001).trimEnd()), 'more than 2000 lines and faces'],
    [
      'a polyline without an end',
      entities('0\nPOLYLINE', ...Array.from({ length: 5001 }, () => '0\nVERTEX')),
      'a polyline of more than 5000 corners',
    ],
  ])('is told at its line: %s', (_what, text, said) => {
    expect(() => readDxf('x.dxf', text, 2000)).toThrow(said);
  });

  it('with a block within itself, or ten in ten in ten, is bounded', () => {
    const itself = expandDrawing(readDxf('x.dxf', withBlocks([block('B', ...insert('B'), ...LINE)], 'B')));
    expect([itself.shapes.length, [...itself.left]]).toEqual([1, [['blocks within themselves', 1]]]);
    const names = [...'ABCDEFGHI'];
    const nested = names.map((name, i) =>
      block(name, ...(i === 8 ? LINE : Array.from({ length: 10 }, () => insert(names[i + 1] as string)).flat())),
    );
    const bomb = expandDrawing(readDxf('x.dxf', withBlocks(nested, 'A')));
    expect(bomb.shapes.length).toBeLessThanOrEqual(100_000);
    expect([...bomb.left.keys()]).toContain('pieces beyond the first 100,000');
    expect([...expandDrawing(readDxf('x.dxf', withBlocks([], 'Z'))).left]).toEqual([
      ['inserts of a block that is not in the drawing', 1],
    ]);
  });
});
