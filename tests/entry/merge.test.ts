import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { mergeRecords } from '../../src/entry/merge/merge.js';
import { settle } from '../../src/entry/merge/settle.js';
import { conflictsIn } from '../../src/source/conflicts.js';
import { readDocument } from '../../src/source/document.js';

const NAMES = { ours: 'here', theirs: 'coming in' };
const WELDS = 'records/shells/T-1/welds.yaml';
const merged = (base: string, ours: string, theirs: string, file = WELDS) => mergeRecords(file, { base, ours, theirs }, NAMES);

const BASE = `# Floor
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, welder: K7}   # first
# over the axle
- {id: W-2, joins: [B, C], type: fillet, size: 1/4 in, welder: K7,
   inspections: [{method: VT, by: J2, date: 2026-03-02, result: reject}]}
- {id: W-3, joins: [C, D], type: fillet, size: 1/4 in}
`;
const edit = (text: string, ...changes: readonly (readonly [string, string])[]): string =>
  changes.reduce((at, [from, to]) => {
    expect(at).toContain(from);
    return at.replace(from, to);
  }, text);

/** Each result was worked out by hand from the three texts. */
describe('two people’s changes of one list', () => {
  it('take both additions at the end, ours first', () => {
    const result = merged(BASE, `${BASE}- {id: W-4, joins: [A, D]}\n`, `${BASE}# by the door\n- {id: W-5, joins: [A, E]}\n`);
    expect(result).toEqual({
      text: `${BASE}- {id: W-4, joins: [A, D]}\n# by the door\n- {id: W-5, joins: [A, E]}\n`,
      clashes: [],
    });
  });

  it('take a record of each in a file that had examples only', () => {
    const starter = '# - {id: W-0001, joins: [..]}\n';
    expect(merged(starter, `${starter}- {id: W-1}\n`, `${starter}- {id: W-2}\n`)?.text).toBe(
      `${starter}- {id: W-1}\n- {id: W-2}\n`,
    );
  });

  it('take different fields of one record, and every comment', () => {
    const ours = edit(BASE, [
      'id: W-1, joins: [A, B], type: fillet, size: 1/4 in',
      'id: W-1, joins: [A, B], type: fillet, size: 5/16 in',
    ]);
    const theirs = edit(BASE, ['welder: K7}   # first', 'welder: B9}   # first'], ['# over the axle', '# over the rear axle']);
    expect(merged(BASE, ours, theirs)).toEqual({
      text: edit(
        BASE,
        ['size: 1/4 in, welder: K7}   # first', 'size: 5/16 in, welder: B9}   # first'],
        ['# over the axle', '# over the rear axle'],
      ),
      clashes: [],
    });
  });

  it('take the looks that two inspectors added to one weld', () => {
    const add = (look: string): string => edit(BASE, ['result: reject}]', `result: reject}, ${look}]`]);
    const result = merged(
      BASE,
      add('{method: VT, by: J2, date: 2026-03-04, result: accept}'),
      add('{method: PT, by: J5, date: 2026-03-05, result: accept}'),
    );
    expect(result?.clashes).toEqual([]);
    expect(
      parse(result?.text ?? '')[1].inspections.map((one: { by: string; method: string }) => `${one.method} ${one.by}`),
    ).toEqual(['VT J2', 'VT J2', 'PT J5']);
  });

  it('take a record away that the other side left as it was', () => {
    const gone = edit(BASE, ['- {id: W-3, joins: [C, D], type: fillet, size: 1/4 in}\n', '']);
    const theirs = edit(BASE, ['welder: K7}   # first', 'welder: B9}   # first']);
    expect(merged(BASE, gone, theirs)).toEqual({
      text: edit(gone, ['welder: K7}   # first', 'welder: B9}   # first']),
      clashes: [],
    });
    expect(merged(BASE, theirs, gone)?.text).toBe(edit(gone, ['welder: K7}   # first', 'welder: B9}   # first']));
  });

  it('keep the order of the list, as of stages', () => {
    const base = '- {id: floor, name: Floor}\n- {id: belly, name: Belly}\n';
    const theirs = '- {id: floor, name: Floor}\n- {id: walls, name: Walls}\n- {id: belly, name: Belly}\n';
    expect(merged(base, `${base}- {id: fitout, name: Fit-out}\n`, theirs, 'library/stages.yaml')?.text).toBe(
      `${theirs}- {id: fitout, name: Fit-out}\n`,
    );
  });

  it('take keys of shell.yaml that stand side by side, and axles of both', () => {
    const base = `shell: T-1
title: Coach
vin: 1M8GDM9AXKP042788
chassis:
  gvwr: 20000 lb
  axles:
    - {id: front, x: 0 in}
`;
    const ours = edit(base, ['title: Coach', 'title: Travelling library'], ['gvwr: 20000 lb', 'gvwr: 21000 lb']);
    const theirs = edit(base, ['042788', '042789'], ['x: 0 in}\n', 'x: 0 in}\n    - {id: rear, x: 200 in}\n']);
    expect(merged(base, ours, theirs, 'shells/T-1/shell.yaml')).toEqual({
      text: edit(theirs, ['title: Coach', 'title: Travelling library'], ['gvwr: 20000 lb', 'gvwr: 21000 lb']),
      clashes: [],
    });
  });

  it('take a node of one and a run of the other in one service', () => {
    const base =
      'service: House\nmedium: dc\ncircuits:\nnodes:\n  - {id: N1, kind: load}\nruns:\n  - {id: R1, from: N1, to: N1}\n';
    const ours = edit(base, ['kind: load}\n', 'kind: load}\n  - {id: N2, kind: load}\n']);
    const theirs = edit(base, ['to: N1}\n', 'to: N1}\n  - {id: R2, from: N1, to: N1}\n']);
    expect(merged(base, ours, theirs, 'shells/T-1/services/dc.yaml')?.text).toBe(
      edit(ours, ['to: N1}\n', 'to: N1}\n  - {id: R2, from: N1, to: N1}\n']),
    );
  });
});

describe('two people’s changes of one field', () => {
  const ours = edit(BASE, ['joins: [C, D], type: fillet, size: 1/4 in', 'joins: [C, D], type: fillet, size: 5/16 in']);
  const theirs = edit(BASE, ['joins: [C, D], type: fillet, size: 1/4 in', 'joins: [C, D], type: plug, size: 3/8 in']);
  const both = merged(BASE, ours, theirs);

  it('are a question by name: both forms stand there, around that record alone', () => {
    expect(both?.clashes).toMatchObject([
      { name: 'W-3', fields: [{ path: ['size'], base: '1/4 in', ours: '5/16 in', theirs: '3/8 in' }] },
    ]);
    expect(both?.text).toBe(
      `${BASE.slice(0, BASE.indexOf('- {id: W-3'))}<<<<<<< W-3: here
- {id: W-3, joins: [C, D], type: fillet, size: 5/16 in}
=======
- {id: W-3, joins: [C, D], type: plug, size: 3/8 in}
>>>>>>> W-3: coming in
`,
    );
  });

  it('are told by the check as what they are, at their line', () => {
    const { findings } = readDocument('welds.yaml', both?.text ?? '');
    expect(findings).toMatchObject([{ rule: 'format.conflict', ids: ['W-3'], place: { line: 6, column: 1 } }]);
    expect(findings[0]?.message).toMatch(/Two people changed `W-3`.*shellbook merge/u);
  });

  it('are settled field by field', async () => {
    const asked: string[] = [];
    const text = await settle('shells/T-1/welds.yaml', both?.text ?? '', {
      text: async () => '',
      confirm: async () => true,
      async choose({ text: question, choices }) {
        asked.push(`${question}: ${choices.map(({ name }) => name).join(' | ')}`);
        return question.includes('size') ? 'coming in' : 'here';
      },
    });
    expect(asked).toEqual([
      'shells/T-1/welds.yaml:6: W-3, type: fillet  (here) | plug  (coming in)',
      'shells/T-1/welds.yaml:6: W-3, size: 5/16 in  (here) | 3/8 in  (coming in)',
    ]);
    expect(text).toBe(edit(BASE, ['[C, D], type: fillet, size: 1/4 in', '[C, D], type: fillet, size: 3/8 in']));
  });

  it('taken away here and changed there are one too', () => {
    const gone = edit(BASE, ['- {id: W-3, joins: [C, D], type: fillet, size: 1/4 in}\n', '']);
    expect(merged(BASE, gone, theirs)?.clashes).toEqual([{ name: 'W-3', fields: [], gone: 'ours' }]);
  });

  it('of the units of a file are one about all of it: bare numbers would change their meaning', () => {
    const base = 'units: {length: in}\nmembers:\n  - {id: A, roll: 0}\n';
    const added = `${base}  - {id: B, cut_length: 40}\n`;
    const result = merged(base, added, base.replace('length: in', 'length: mm'), 'shells/T-1/members.yaml');
    expect(result?.clashes).toMatchObject([{ name: 'units' }]);
    expect(conflictsIn(result?.text ?? '')).toHaveLength(1);
  });

  it('of a pair of parts or a way of points are never joined end to end', () => {
    const way = (via: string): string => `nodes:\nruns:\n  - {id: R1, from: A, to: B, via: [${via}]}\n`;
    const one = '[1 in, 0, 0]';
    const result = merged(way(one), way(`${one}, [2 in, 0, 0]`), way(`${one}, [9 in, 0, 0]`), 'shells/T-1/services/dc.yaml');
    expect(result?.clashes).toMatchObject([{ name: 'R1', fields: [{ path: ['via'] }] }]);
  });
});

describe('what cannot be taken apart', () => {
  it.each([
    ['two records of one id', '- {id: W-1}\n- {id: W-1}\n'],
    ['a record without one', '- {type: fillet}\n'],
    ['no YAML', '- {id: W-1\n'],
    ['marks of an earlier merge', '<<<<<<< a\n- {id: W-1}\n=======\n>>>>>>> b\n'],
  ])('is left to a merge by lines: %s', (_what, text) => {
    expect(merged(BASE, text, `${BASE}- {id: W-9}\n`)).toBeUndefined();
  });

  it('finds marks that lack their others', () => {
    expect(conflictsIn('a\n<<<<<<< x\nb\n').map(({ line, from, to }) => [line, from, to])).toEqual([[2, 2, 14]]);
    expect(conflictsIn('>>>>>>> x\n')).toHaveLength(1);
  });
});

/** The same merge on plain data, by hand: by id, then by field. */
type Weld = Readonly<Record<string, string>>;
function byHand(base: readonly Weld[], ours: readonly Weld[], theirs: readonly Weld[]): Map<string, Weld> | 'clash' {
  const result = new Map<string, Weld>();
  const [b, o, t] = [base, ours, theirs].map((list) => new Map(list.map((one) => [one.id as string, one]))) as [
    Map<string, Weld>,
    Map<string, Weld>,
    Map<string, Weld>,
  ];
  const same = (x?: Weld, y?: Weld): boolean =>
    JSON.stringify(Object.entries(x ?? {}).sort()) === JSON.stringify(Object.entries(y ?? {}).sort());
  for (const id of new Set([...b.keys(), ...o.keys(), ...t.keys()])) {
    const [x, y, z] = [b.get(id), o.get(id), t.get(id)];
    if (same(y, z) || same(x, z)) {
      if (y) result.set(id, y);
    } else if (same(x, y)) {
      if (z) result.set(id, z);
    } else if (!y || !z) return 'clash';
    else {
      const fields: Record<string, string> = {};
      for (const key of new Set([...Object.keys(x ?? {}), ...Object.keys(y), ...Object.keys(z)])) {
        const value = y[key] === z[key] || x?.[key] === z[key] ? y[key] : x?.[key] === y[key] ? z[key] : undefined;
        if (y[key] !== z[key] && x?.[key] !== z[key] && x?.[key] !== y[key]) return 'clash';
        if (value !== undefined) fields[key] = value;
      }
      result.set(id, fields);
    }
  }
  return result;
}

describe('any two changes', () => {
  const list = fc.uniqueArray(
    fc.record(
      {
        id: fc.constantFrom('W-1', 'W-2', 'W-3', 'W-4'),
        type: fc.constantFrom('fillet', 'plug'),
        filler: fc.constantFrom('ER4043', 'ER5356'),
        welder: fc.constantFrom('K7', 'B9'),
      },
      { requiredKeys: ['id'] },
    ),
    { selector: ({ id }) => id, minLength: 1 },
  );
  const textOf = (records: readonly object[]): string =>
    records
      .map(
        (one) =>
          `- {${Object.entries(one)
            .map(([key, value]) => `${key}: ${value}`)
            .join(', ')}}\n`,
      )
      .join('');

  it('give what the same merge gives when done by hand on the fields, or a question', () => {
    fc.assert(
      fc.property(list, list, list, (base, ours, theirs) => {
        const result = merged(textOf(base), textOf(ours), textOf(theirs));
        const wanted = byHand(base as Weld[], ours as Weld[], theirs as Weld[]);
        if (wanted === 'clash') {
          expect(result?.clashes.length).toBeGreaterThan(0);
          return;
        }
        expect(result?.clashes).toEqual([]);
        const found = new Map(((parse(result?.text ?? '') ?? []) as Weld[]).map((one) => [one.id, one]));
        expect(Object.fromEntries(found)).toEqual(Object.fromEntries(wanted));
      }),
      { numRuns: 300 },
    );
  });
});
