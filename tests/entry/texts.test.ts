import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMap, isSeq, type Node } from 'yaml';
import { appendRecords, type ListPlace } from '../../src/entry/append.js';
import { setValue, withValue } from '../../src/entry/change.js';
import { sameTyped } from '../../src/entry/same.js';
import { Splices, wireRootOf } from '../../src/entry/splices.js';
import { type Data, item } from '../../src/entry/yaml-text.js';
import { readDocument } from '../../src/source/document.js';

const MEMBERS: ListPlace = { file: 'members.yaml', path: ['members'], bare: true, usual: 'flow' };
const NODES: ListPlace = { file: 'services/dc.yaml', path: ['nodes'], bare: false, usual: 'flow' };
const AXLES: ListPlace = { file: 'shell.yaml', path: ['chassis', 'axles'], bare: false, usual: 'flow' };
const A: Data = { id: 'A', part: 'rail' };
const B: Data = { id: 'B', part: 'rail' };

const recordsOf = (text: string): unknown => readDocument('x.yaml', text).data;

describe('a record added to a file', () => {
  it.each([
    ['a new file', MEMBERS, null, '- {id: A, part: rail}\n'],
    ['a file of comments', MEMBERS, '# Floor\n# - {id: X}\n', '# Floor\n# - {id: X}\n- {id: A, part: rail}\n'],
    [
      'a bare list, below its last comment',
      MEMBERS,
      '# Floor\n- {id: X} # first\n# more to come\n',
      '# Floor\n- {id: X} # first\n# more to come\n- {id: A, part: rail}\n',
    ],
    ['a last line without end', MEMBERS, '- {id: X}', '- {id: X}\n- {id: A, part: rail}\n'],
    [
      'a list under its name',
      MEMBERS,
      'units: {length: in}\nmembers:\n  - {id: X}\n',
      'units: {length: in}\nmembers:\n  - {id: X}\n  - {id: A, part: rail}\n',
    ],
    ['a list of blocks', MEMBERS, '- id: X\n  part: rail\n', '- id: X\n  part: rail\n- id: A\n  part: rail\n'],
    ['blocks with blank lines between', MEMBERS, '- id: X\n\n- id: Y\n', '- id: X\n\n- id: Y\n\n- id: A\n  part: rail\n'],
    ['a list between braces', MEMBERS, '[{id: X}]\n', '[{id: X}, {id: A, part: rail}]\n'],
    [
      'one of three lists',
      NODES,
      'nodes:\n  - {id: X}\n\n# Runs\nruns:\n  - {id: R}\n',
      'nodes:\n  - {id: X}\n  - {id: A, part: rail}\n\n# Runs\nruns:\n  - {id: R}\n',
    ],
    [
      'a list that is not there yet',
      NODES,
      'medium: dc\nruns:\n  - {id: R}\n',
      'medium: dc\nruns:\n  - {id: R}\nnodes:\n  - {id: A, part: rail}\n',
    ],
    [
      'a name without a list',
      NODES,
      'nodes: # to come\nruns:\n  - {id: R}\n',
      'nodes: # to come\n  - {id: A, part: rail}\nruns:\n  - {id: R}\n',
    ],
    [
      'a list within a block',
      AXLES,
      'chassis:\n  gvwr: 1 lb\n  axles:\n    - {id: X}\ntanks: []\n',
      'chassis:\n  gvwr: 1 lb\n  axles:\n    - {id: X}\n    - {id: A, part: rail}\ntanks: []\n',
    ],
    [
      'a block that lacks the list',
      AXLES,
      'chassis:\n  gvwr: 1 lb\n# Tanks\ntanks: []\n',
      'chassis:\n  gvwr: 1 lb\n  axles:\n    - {id: A, part: rail}\n# Tanks\ntanks: []\n',
    ],
    ['a file that lacks the block', AXLES, 'shell: T-1\n', 'shell: T-1\nchassis:\n  axles:\n    - {id: A, part: rail}\n'],
  ] as const)('goes to %s', (_what, place, old, text) => {
    expect(appendRecords(place, old, [A])).toBe(text);
  });

  it('comes with others, and with a comment of its own', () => {
    expect(appendRecords(MEMBERS, '- {id: X}\n', [A, B], new Map([[B, 'which?\nof two']]))).toBe(
      '- {id: X}\n- {id: A, part: rail}\n# which? of two\n- {id: B, part: rail}\n',
    );
  });

  it('refuses a file that is not whole YAML, or has another form', () => {
    expect(() => appendRecords(MEMBERS, '- {id: X\n', [A])).toThrow(/not whole YAML/u);
    expect(() => appendRecords(NODES, 'nodes: none\n', [A])).toThrow(/not a list/u);
  });

  it('breaks a long line between fields', () => {
    const long = item({ id: 'A', part: 'x'.repeat(70), note: 'y'.repeat(60) }, 'flow', '  ');
    expect(long.split('\n').map((line) => line.length)).toEqual([89, 72, 0]);
    expect(recordsOf(long)).toEqual([{ id: 'A', part: 'x'.repeat(70), note: 'y'.repeat(60) }]);
  });

  it('reads back as it was meant, whatever was typed', () => {
    const text = fc.string({ unit: fc.constantFrom(...'ab1 ,:#{}[]&*!|>\'"%@`-?\\\n\t\u0007\u0085é'), maxLength: 12 });
    const value = fc.oneof(text, fc.array(text, { maxLength: 3 }), fc.dictionary(fc.constantFrom('x', 'y'), text));
    const record = fc.record({ id: fc.constant('A'), one: value, two: value });
    fc.assert(
      fc.property(record, fc.constantFrom('flow' as const, 'block' as const), (data, style) => {
        const { data: read, findings } = readDocument('x.yaml', item(data, style, ''));
        return findings.length === 0 && sameTyped((read as unknown[])[0], data);
      }),
    );
  });
});

describe('a value changed in a file', () => {
  const FILE = `# Floor
- {id: X, part: rail, section: RT2x2x1/8, # two inch
   fixing: {method: screws}}
- id: Y # second
  part: "rail, left"
  inspections:
    - {method: VT, result: reject} # undercut
  joins: [a, b]
`;
  const changed = (index: number, ...changes: readonly (readonly [readonly (string | number)[], unknown])[]): string => {
    const splices = new Splices(FILE);
    const root = wireRootOf('members.yaml', FILE);
    const node = isSeq(root) ? (root.items[index] as Node) : null;
    if (!isMap(node)) throw new Error('no record');
    for (const [path, value] of changes) setValue(splices, node, path, value);
    return splices.apply();
  };

  it.each([
    [0, ['part'], 'beam', FILE.replace('part: rail,', 'part: beam,')],
    [0, ['fixing', 'method'], 'rivets', FILE.replace('screws', 'rivets')],
    [0, ['fixing', 'count'], '8', FILE.replace('screws}', 'screws, count: 8}')],
    [0, ['stage'], 'floor', FILE.replace('screws}}', 'screws}, stage: floor}')],
    [1, ['part'], 'rail', FILE.replace('"rail, left"', 'rail')],
    [1, ['joins'], ['a', 'c'], FILE.replace('[a, b]', '[a, c]')],
    [1, ['inspections', 0, 'by'], 'J2', FILE.replace('reject}', 'reject, by: J2}')],
    [
      1,
      ['inspections', 1],
      { method: 'VT', result: 'accept' },
      FILE.replace('# undercut\n', '# undercut\n    - {method: VT, result: accept}\n'),
    ],
    [1, ['stage'], 'floor', `${FILE}  stage: floor\n`],
  ] as const)('of record %i at %j touches nothing else', (index, path, value, text) => {
    expect(changed(index, [path, value])).toBe(text);
  });

  it('comes with others in one go', () => {
    const text = changed(0, [['part'], 'beam'], [['stage'], 'floor'], [['heat'], 'H-1']);
    expect(text).toContain('part: beam');
    expect((recordsOf(text) as Data[])[0]).toEqual(
      withValue(withValue(withValue((recordsOf(FILE) as Data[])[0], ['part'], 'beam'), ['stage'], 'floor'), ['heat'], 'H-1'),
    );
  });
});
