import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchHeads } from '../../src/entry/headers.js';
import type { ListWord } from '../../src/entry/lists/columns.js';
import { type ListPlan, planList } from '../../src/entry/lists/plan.js';
import { listTable } from '../../src/entry/lists/table.js';
import { listTexts } from '../../src/entry/lists/texts.js';
import { type RecordIndex, readKnown } from '../../src/entry/record-index.js';
import { readSheet } from '../../src/entry/sheet.js';
import { csvOf } from '../../src/entry/table.js';
import { readStoreText } from '../../src/store/read.js';
import { DEMO } from '../demo/store.js';
import { storeText } from '../support/store.js';

const NONE = { said: new Map<string, string>(), own: new Map<string, string>() };

function planOf(word: ListWord, csv: string, known: RecordIndex, more: Partial<Parameters<typeof planList>[0]> = {}): ListPlan {
  const sheet = readSheet(`${word}s.csv`, Buffer.from(csv));
  const heads = matchHeads(word, sheet.heads, NONE);
  expect(heads.filter(({ how }) => how !== 'certain')).toEqual([]);
  return planList({ word, sheet, heads, known, habits: {}, ahead: false, ...more });
}

/** A shell and its files; taking a plan in gives the shell as it is then. */
class Shell {
  readonly files: Map<string, string>;

  constructor(files: Readonly<Record<string, string>> = { 'shells/T-1/shell.yaml': 'shell: T-1\n' }) {
    this.files = new Map(Object.entries(files));
  }

  known(): RecordIndex {
    return readKnown(storeText(Object.fromEntries(this.files)), 'T-1');
  }

  take(word: ListWord, csv: string, more: Partial<Parameters<typeof planList>[0]> = {}): ListPlan {
    const known = this.known();
    const plan = planOf(word, csv, known, more);
    if (plan.faults.length === 0) for (const [file, text] of listTexts(plan, known)) this.files.set(file, text);
    return plan;
  }
}

const exported = (word: ListWord, known: RecordIndex): string => {
  const { heads, rows } = listTable(word, known);
  return csvOf(heads, rows);
};
const idsOf = (plan: ListPlan, kind: string): readonly string[] =>
  plan.added.filter((one) => one.kind === kind).map(({ id }) => id);

const PLACES = ',"10 in, 0 in, 4 in","10 in, 0 in, 4 in"';

describe('a wire list as electricians keep it', () => {
  const csv = `Wire #,From,To,AWG,Color,Fuse,Ft\n${Array.from({ length: 60 }, (_, i) => `${i + 1},DC panel,Load ${i + 1},14,red,15,${10 + i}`).join('\n')}\n`;

  it('needs no mapping: circuits, nodes and runs come in together', () => {
    const shell = new Shell();
    const plan = shell.take('wire', csv, { medium: 'dc' });
    expect(plan.faults).toEqual([]);
    expect([idsOf(plan, 'circuit'), idsOf(plan, 'node'), idsOf(plan, 'run')].map(({ length }) => length)).toEqual([60, 61, 60]);
    const known = shell.known();
    expect(known.find('circuit', '7')?.data).toEqual({
      id: 7,
      protection: { rating: '15 A', kind: 'fuse' },
      colour: 'red',
      conductor: { awg: 14 },
    });
    expect(known.find('run', '7/1')?.data).toMatchObject({
      circuit: 7,
      from: 'DC-PANEL',
      to: 'LOAD-7',
      installed_length: '16 ft',
    });
    // Nothing is concluded from what it is called.
    expect(known.find('node', 'DC-PANEL')?.data).toMatchObject({ kind: 'device', name: 'DC panel' });
  });

  it('changes nothing when it comes again, or when its export does', () => {
    const shell = new Shell();
    shell.take('wire', csv, { medium: 'dc' });
    expect(shell.take('wire', csv)).toMatchObject({ added: [], changed: [], faults: [] });
    expect(shell.take('wire', exported('wire', shell.known()))).toMatchObject({ added: [], changed: [], faults: [] });
  });

  it('takes the places when the tape was laid, as coordinates or as it tells them', () => {
    const shell = new Shell();
    shell.take('wire', csv, { medium: 'dc' });
    shell.files.set('shells/T-1/zones.yaml', '- {id: Z, name: z, box: [[0 in, 0, 0], [9 in, 9 in, 9 in]]}\n');
    const late =
      'Wire #,From,To,From x,From y,From z,To place\n7,DC panel,Load 7,1 in,on Z,3 in,"2 in aft of Z, 0, 1 in above Z"\n';
    const plan = shell.take('wire', late);
    expect(plan.faults).toEqual([]);
    expect(plan.changed.map(({ record, changes }) => [record.id, changes[0]?.new])).toEqual([
      ['DC-PANEL', ['1 in', 'on Z', '3 in']],
      ['LOAD-7', ['2 in aft of Z', '0', '1 in above Z']],
    ]);
    expect(shell.take('wire', exported('wire', shell.known()))).toMatchObject({ added: [], changed: [], faults: [] });
  });

  it('is the same circuit by its mark, and a further row with it a further run', () => {
    const shell = new Shell();
    const rows = (...lines: readonly string[]) => `Wire,From,To,AWG,Breaker,From place,To place\n${lines.join('\n')}\n`;
    shell.take('wire', rows(`12,P1,S1,14,20${PLACES}`, `12,S1,L1,14,${PLACES}`, `12,S1,L2,16,${PLACES}`), { medium: 'dc' });
    const known = shell.known();
    expect(known.ofKind('circuit').map(({ id }) => id)).toEqual(['12']);
    expect(known.ofKind('run').map(({ id }) => id)).toEqual(['12/1', '12/2', '12/3']);
    expect(known.find('circuit', '12')?.data.protection).toEqual({ rating: '20 A', kind: 'breaker' });
    expect(known.ofKind('run').map(({ data }) => data.conductor)).toEqual([{ awg: 14 }, { awg: 14 }, { awg: 16 }]);
    // The lamp moved: the other way round is the same run, a new gauge changes that alone.
    const plan = shell.take('wire', 'Wire,From,To,AWG\n12,L2,S1,18\n');
    expect(plan.changed.map(({ record, changes }) => [record.id, changes.map(({ new: now }) => now)])).toEqual([
      ['12/3', ['18']],
    ]);
  });

  it('changes what all runs of a circuit are made of at the circuit', () => {
    const shell = new Shell();
    shell.take('wire', csv, { medium: 'dc' });
    const plan = shell.take('wire', 'Wire #,From,To,AWG\n3,DC panel,Load 3,12\n');
    expect(plan.changed.map(({ kind, record }) => [kind, record.id])).toEqual([['circuit', '3']]);
  });

  it.each([
    ['Wire #,From,To,Fuse\n1,A,B,15\n1,B,C,20\n', 'has `20 A` here and `15 A` in row 2'],
    ['Wire #,From,To\n1,A,\n', 'no `to` for 1'],
    ['Wire #,From,To,Fuse\n1,A,B,big\n', 'expected a quantity'],
    ['Wire #,From,To,AWG\n1,A,B,2-Jan\n', 'expected a wire gauge'],
    ['Wire #,From,To,Service\n1,A,B,water\n', 'no medium of wires'],
    ['From,To\nA,B\n', 'no mark'],
    ['Wire #,From,To\n1,T-1,B\n', 'is the id of a shell'],
  ])('%j is told', (bad, said) => {
    const { faults } = new Shell().take('wire', bad.replace(/\n$/u, '\n'), { medium: 'dc' });
    expect(faults.map(({ message }) => message).join('\n')).toContain(said);
  });

  it('says what to add where no service says what runs in its wires', () => {
    expect(new Shell().take('wire', `Wire,From,To\n1,A,B\n`).faults[0]?.message).toContain('--medium dc');
  });
});

describe('a pipe list', () => {
  it('reads sizes as plumbers write them', () => {
    const shell = new Shell();
    const csv = 'Line,From,To,Size,Material,PSI,Ft,From place,To place\nCW,Pump,Sink,1/2,PEX,50,6';
    const plan = shell.take('pipe', `${csv}${PLACES}\n`, { medium: 'water' });
    expect(plan.faults).toEqual([]);
    expect(shell.known().find('circuit', 'CW')?.data).toMatchObject({ size: '1/2 in PEX', working_pressure: '50 psi' });
    expect(shell.take('pipe', exported('pipe', shell.known()))).toMatchObject({ added: [], changed: [], faults: [] });
  });
});

const text = await readStoreText(DEMO, 'OV-021');
const services = new Map([...text.files].filter(([file]) => /services|shell\.yaml|zones/u.test(file)));
const demo = (): RecordIndex => readKnown({ ...text, files: services }, 'OV-021');

describe('the lists of the demo', () => {
  it.each([
    ['wire', 100],
    ['pipe', 40],
  ] as const)('its %ss, taken in again, change nothing', (word, least) => {
    const known = demo();
    const plan = planOf(word, exported(word, known), known);
    expect(plan).toMatchObject({ added: [], changed: [], faults: [] });
    expect(plan.unchanged.length).toBeGreaterThan(least);
  });
});

describe('any list', () => {
  const word = fc.constantFrom('A', 'B', 'Bus bar', 'P/1', 'Lamp 3', 'ground', 'S.7');
  const row = fc.record({
    mark: fc.constantFrom('1', '02', '1.10', 'W-3', '1e3', '0x10'),
    from: word,
    to: word,
    awg: fc.constantFrom('', '14', '2/0', '#10 AWG'),
    colour: fc.constantFrom('', 'red', 'blue/white'),
    load: fc.constantFrom('', '25 W'),
    length: fc.constantFrom('', '7', '5-1/4', '12.5'),
  });

  it('gives an export that changes nothing, whatever was in it', () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
        const shell = new Shell();
        const lines = rows.map(({ mark, from, to, awg, colour, load, length }) =>
          [mark, from, to, awg, colour, load, length].map((cell) => `"${cell}"`).join(','),
        );
        const csv = `Wire #,From,To,AWG,Color,Load,Ft,From place,To place\n${lines.map((line) => `${line},"1 in, 2 in, 3 in","1 in, 2 in, 3 in"`).join('\n')}\n`;
        const plan = shell.take('wire', csv, { medium: 'dc' });
        if (plan.faults.length > 0) return;
        expect(shell.take('wire', csv)).toMatchObject({ added: [], changed: [], faults: [] });
        expect(shell.take('wire', exported('wire', shell.known()))).toMatchObject({ added: [], changed: [], faults: [] });
      }),
      { numRuns: Math.min(1000, Number(process.env.SHELLBOOK_FUZZ ?? 15)) },
    );
  });
});
