import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { simpleGit } from 'simple-git';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import type { Asker } from '../../src/entry/asker.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore();
});
afterAll(() => store.remove());

const MEMBERS = 'shells/T-1/members.yaml';
const textOf = (file: string): string => readFileSync(path.join(store.root, file), 'utf8');
const sheet = (name: string, text: string): void => writeFileSync(path.join(store.root, name), text);

async function shellbook(args: readonly string[], ask?: () => Promise<Asker>) {
  const io = literalIo(store.root);
  const status = await runProgram(args, ask ? { ...io, ask } : io);
  return { status, answer: io.answer(), messages: io.messages() };
}

const CUT = `Mark,Description,Profile,Material,Start (in),End (in),Length (in),Cost
FL-3,floor stringer,RT2x2x1/8,6061-T6,"20, 0, 4","180, 0, 4",160,12.50
FL-2,floor rail right,RT2x2x1/8,6061-T6,,,159-1/2,9.75
`;

describe('import', () => {
  it('says how it reads columns that are not certain, and writes nothing unasked', async () => {
    sheet('cut.csv', CUT);
    const before = textOf(MEMBERS);
    const { status, answer, messages } = await shellbook(['import', 'members', 'cut.csv', '--shell', 'T-1']);
    expect(status).toBe(2);
    expect(answer).toBe('');
    expect(messages).toMatch(/Profile\s+section\s+by a close name/u);
    expect(messages).toMatch(/Cost\s+not read\s+fits no key/u);
    expect(messages).toContain('--yes');
    expect(textOf(MEMBERS)).toBe(before);
  });

  it('shows what would change', async () => {
    const before = textOf(MEMBERS);
    const { status, answer } = await shellbook(['import', 'members', 'cut.csv', '--shell', 'T-1', '--dry-run']);
    expect(status).toBe(0);
    expect(answer).toContain('1 member would be added, 1 would be changed');
    expect(answer).toContain('+ FL-3 (row 2): part: floor stringer');
    expect(answer.replace(/\s+/gu, ' ')).toContain('from: [20 in, 0 in, 4 in] (x 508, y 0, z 101.6 mm)');
    expect(answer).toContain('~ FL-2: cut_length 160 in → 159-1/2 in');
    expect(textOf(MEMBERS)).toBe(before);
  });

  it('writes once confirmed, keeps the columns, and says nothing new the second time', async () => {
    const args = ['import', 'members', 'cut.csv', '--shell', 'T-1'];
    const first = await shellbook([...args, '--yes', '--keep', '--commit']);
    expect(first.status).toBe(0);
    expect(textOf(MEMBERS)).toContain('- {id: FL-3, part: floor stringer, section: RT2x2x1/8, alloy: 6061-T6');
    expect(textOf(MEMBERS)).toContain('cut_length: 159-1/2 in}');
    expect(textOf('import.yaml')).toContain('Profile');
    const { latest } = await simpleGit({ baseDir: store.root }).log();
    expect(latest?.message).toBe('Record 2 members of T-1 from cut.csv');
    const before = textOf(MEMBERS);
    const second = await shellbook([...args, '--json']);
    expect(second.status).toBe(0);
    expect(JSON.parse(second.answer)).toMatchObject({ command: 'import', added: [], changed: [], unchanged: 2, files: [] });
    expect(textOf(MEMBERS)).toBe(before);
    const check = await shellbook(['check', 'T-1', '--json']);
    expect(JSON.parse(check.answer).findings.filter(({ rule }: { rule: string }) => rule.startsWith('format.'))).toEqual([]);
  });

  it('asks the person at the terminal instead', async () => {
    sheet('more.csv', 'Piece,Profile,Material,Start (in),End (in)\nFL-9,RT2x2x1/8,6061-T6,"20, 8, 4","180, 8, 4"\n');
    const asked: string[] = [];
    const asker = (yes: boolean): Asker => ({
      text: async () => '',
      choose: async () => '',
      confirm: async ({ text }) => {
        asked.push(text);
        return yes;
      },
    });
    const args = ['import', 'members', 'more.csv', '--shell', 'T-1'];
    expect((await shellbook(args, async () => asker(false))).status).toBe(2);
    expect((await shellbook(args, async () => asker(true))).status).toBe(0);
    expect(asked.map((text) => text.split(' ')[0])).toEqual(['Are', 'Are', 'Keep']);
    expect(textOf('import.yaml')).toContain('Piece');
    expect(textOf(MEMBERS)).toContain('FL-9');
  });

  it('tells every fault with its row and column, and writes nothing at all', async () => {
    sheet(
      'bad.csv',
      'id,section,alloy,from (in),to (in),cut_length\nFL-7,RT2x2x1/8,6061-T6,"0,0,0","9,0,0",9 in\nFL-8,RT2x2,6061-T6,"0,0,0","9,0,0",9\n',
    );
    const before = textOf(MEMBERS);
    const { status, answer } = await shellbook(['import', 'members', 'bad.csv', '--shell', 'T-1']);
    expect(status).toBe(2);
    expect(answer).toContain('row 3, column F (cut_length): Found the bare number `9`');
    expect(textOf(MEMBERS)).toBe(before);
  });

  it.each([
    [['import', 'membrs', 'cut.csv', '--shell', 'T-1'], 'Did you mean `members`'],
    [['import', 'members', 'cut.csv'], '--shell'],
    [['import', 'members', 'none.csv', '--shell', 'T-1'], 'it is not there'],
    [['import', 'members', 'cut.csv', '--shell', 'T-2'], 'No shell T-2'],
    [['import', 'members', 'cut.csv', '--shell', 'T-1', '--map', 'Profile'], 'Profile=section'],
    [['import', 'members', 'cut.csv', '--shell', 'T-1', '--dates', 'ymd'], 'expected m/d/y'],
  ])('%j says what to do instead', async (args, said) => {
    const { status, messages } = await shellbook(args);
    expect(status).toBe(2);
    expect(messages).toContain(said);
  });
});

describe('a row that is gone from its sheet', () => {
  const args = ['import', 'members', 'floor.csv', '--shell', 'T-1', '--yes'];
  const rows = (...ids: readonly string[]) =>
    `id,section,alloy,from (in),to (in)\n${ids.map((id) => `${id},RT2x2x1/8,6061-T6,"20, 3, 4","180, 3, 4"`).join('\n')}\n`;

  it('is named each time, until it is marked or kept', async () => {
    sheet('floor.csv', rows('G-1', 'G-2', 'G-3'));
    await shellbook(args);
    sheet('floor.csv', rows('G-1'));
    const named = await shellbook([...args, '--json']);
    expect(JSON.parse(named.answer)).toMatchObject({ gone: ['G-2', 'G-3'], changed: [], files: [] });
    expect((await shellbook(args)).answer).toContain('Gone from floor.csv but still in the records: G-2, G-3.');
    await shellbook([...args, '--gone', 'mark']);
    expect(textOf(MEMBERS).match(/x-gone: floor\.csv/gu)).toHaveLength(2);
    expect((await shellbook([...args, '--gone', 'keep'])).answer).not.toContain('Gone from');
    expect(JSON.parse((await shellbook([...args, '--json'])).answer).gone).toEqual([]);
    expect(textOf(MEMBERS)).toContain('G-2');
    expect((await shellbook([...args, '--gone', 'drop'])).messages).toContain('expected ask, keep or mark');
  });

  it('tells like faults of a column once', async () => {
    sheet('like.csv', rows('H-1', 'H-2', 'H-3', 'H-4').replaceAll('6061-T6', '6061-TT'));
    const { answer } = await shellbook(['import', 'members', 'like.csv', '--shell', 'T-1', '--yes']);
    expect(answer.match(/6061-TT/gu)).toHaveLength(1);
    expect(answer.replace(/\s+/gu, ' ')).toContain('(the same in rows 3, 4, 5)');
  });
});

describe('a wire list', () => {
  const LIST =
    'Wire #,From,To,AWG,Color,Fuse,Ft,To place\nW-7,DCP,DC-1/S1,14,red,15,6,\nW-7,DC-1/S1,Step light,14,red,,4,"110 in, 10 in, 6 in"\n';

  it('comes in whole without a mapping, and out again as it stands', async () => {
    sheet('wires.csv', LIST);
    const args = ['import', 'wires', 'wires.csv', '--shell', 'T-1'];
    const first = await shellbook([...args, '--commit']);
    expect(first.answer).toContain('1 circuit, 1 node and 2 runs added, 0 changed');
    const { latest } = await simpleGit({ baseDir: store.root }).log();
    expect(latest?.message).toBe('Record 1 circuit, 1 node and 2 runs of T-1 from wires.csv');
    const remembered = textOf('import.yaml');
    await shellbook(['import', 'wires', 'wires.csv', '--shell', 'T-1', '--yes']);
    expect(textOf('import.yaml')).toBe(remembered);
    const back = await shellbook(['export', 'wires', 'T-1']);
    sheet('back.csv', back.answer);
    const again = await shellbook(['import', 'wires', 'back.csv', '--shell', 'T-1', '--json']);
    expect(JSON.parse(again.answer)).toMatchObject({ added: [], changed: [], faults: [], files: [] });
    const where = await shellbook(['where', 'T-1', 'W-7']);
    expect(where.status).toBe(0);
    const check = await shellbook(['check', 'T-1', '--json']);
    expect(JSON.parse(check.answer).findings.filter(({ rule }: { rule: string }) => rule.startsWith('format.'))).toEqual([]);
  });

  it.each([
    [['import', 'wires', 'wires.csv'], '--shell'],
    [['import', 'wirs', 'wires.csv', '--shell', 'T-1'], 'Did you mean `wires`'],
    [['import', 'wires', 'wires.csv', '--shell', 'T-1', '--medium', 'steam'], 'expected one of dc'],
  ])('%j says what to do instead', async (args, said) => {
    const { status, messages } = await shellbook(args);
    expect([status, messages.includes(said)]).toEqual([2, true]);
  });
});

describe('a drawing', () => {
  const DRAWING = [
    '0',
    'SECTION',
    '2',
    'ENTITIES',
    ...['0', 'LINE', '8', 'RAILS', '10', '20', '20', '9', '11', '180', '21', '9'],
    '0',
    'TEXT',
    '0',
    'ENDSEC',
    '0',
    'EOF',
    '',
  ].join('\n');
  const args = ['import', 'dxf', 'frame.dxf', '--shell', 'T-1'];

  it('says what its layers would become, takes them in once they are said, and knows its pieces again', async () => {
    sheet('frame.dxf', DRAWING);
    expect((await shellbook(args)).messages).toContain('--unit in');
    const shown = await shellbook([...args, '--unit', 'in', '--dry-run']);
    expect(shown.answer).toMatch(/RAILS +not read: say what it is with --layer +1/u);
    expect(shown.answer).toContain('Left out: TEXT (1).');
    expect((await shellbook([...args, '--unit', 'in'])).messages).toContain("--layer 'RAILS=skip'");
    const said = ['--layer', 'RAILS=member, section=RT2x2x1/8, alloy=6061-T6', '--unit', 'in'];
    expect((await shellbook([...args, ...said, '--keep'])).answer).toContain('1 member added');
    expect(textOf(MEMBERS)).toContain('RAILS-001');
    const again = await shellbook([...args, '--unit', 'in', '--json']);
    expect(JSON.parse(again.answer)).toMatchObject({
      added: [],
      changed: [],
      unchanged: 1,
      layers_not_read: [],
      left_out: [{ what: 'TEXT' }],
    });
  });

  it('goes out by layer and comes back without a change', async () => {
    expect((await shellbook(['export', 'dxf', 'T-1', '--out', 'coach.dxf'])).answer).toContain('Wrote coach.dxf');
    expect(textOf('coach.dxf')).toContain('RUNS_DC');
    const back = await shellbook(['import', 'dxf', 'coach.dxf', '--shell', 'T-1', '--json']);
    expect(JSON.parse(back.answer)).toMatchObject({ added: [], changed: [], faults: [], layers_not_read: [] });
  });

  it.each([
    ['AC1027\u0000\u0000\u0000', 'closed format'],
    ['ISO-10303-21;\nHEADER;', 'is a STEP file'],
    ['0', 'holds one byte'],
    ['id,part\nA,x\n', 'expected a group code'],
  ])('%j is told for what it is', async (text, said) => {
    sheet('odd.dxf', text);
    const { status, messages } = await shellbook(['import', 'dxf', 'odd.dxf', '--shell', 'T-1']);
    expect([status, messages]).toEqual([2, expect.stringContaining(said)]);
  });
});

describe('export', () => {
  it('gives one table on standard output, or all of them in a folder', async () => {
    const one = await shellbook(['export', 'nodes', 'T-1']);
    expect(one.status).toBe(0);
    expect(one.answer.split('\r\n')[0]).toBe('id,kind,name,at,panel,circuit,tolerance,role,stage');
    const all = await shellbook(['export', 'all', 'T-1', '--out', 'tables']);
    expect(all.answer).toContain('members.csv');
    expect(readFileSync(path.join(store.root, 'tables', 'nodes.csv'), 'utf8')).toBe(one.answer);
    expect((await shellbook(['export', 'all', 'T-1'])).status).toBe(2);
  });

  it('writes a workbook, or a template to fill in, that import reads', async () => {
    expect((await shellbook(['export', 'all', 'T-1', '--out', 'all.xlsx'])).answer).toContain('Wrote all.xlsx');
    const back = await shellbook(['import', 'nodes', 'all.xlsx', '--sheet', 'nodes', '--shell', 'T-1', '--json']);
    expect(JSON.parse(back.answer)).toMatchObject({ added: [], changed: [], faults: [] });
    expect((await shellbook(['export', 'wires', '--template'])).answer).toContain('Wrote wires.xlsx');
    const empty = await shellbook(['import', 'wires', 'wires.xlsx', '--shell', 'T-1', '--json']);
    expect(JSON.parse(empty.answer)).toMatchObject({ added: [], changed: [], faults: [] });
    const bad = await shellbook(['export', 'members', '--template', '--out', 'folder']);
    expect([bad.status, bad.messages]).toEqual([2, expect.stringContaining('expected the name of a workbook')]);
    expect((await shellbook(['export', 'members'])).messages).toContain('Name the shell');
  });

  it('hands sheets over in the COBie manner, without the customer unless asked', async () => {
    const shell = path.join(store.root, 'shells/T-1/shell.yaml');
    writeFileSync(
      shell,
      readFileSync(shell, 'utf8').replace('vin:', 'customer: {name: Ann Onym, contact: ann@example.org}\nvin:'),
    );
    const read = (name: string): string => readFileSync(path.join(store.root, 'handover', `${name}.csv`), 'utf8');
    expect((await shellbook(['export', 'all', 'T-1', '--cobie', '--out', 'handover'])).status).toBe(0);
    expect(read('Facility')).toMatch(/^Name,CreatedBy,CreatedOn,Category,ProjectName/u);
    expect(read('Facility')).toMatch(/,"in build, to sign off next: floor"\r?\n$/u);
    expect(read('Space')).toContain('TROUGH');
    expect(read('System')).toContain('BAT,DCP,DC-1/S1,DC-1/L');
    expect(read('Component')).toMatch(/^DC-1\/S1,.*,TROUGH,/mu);
    expect(['Facility', 'Contact'].map(read).join('')).not.toContain('Onym');
    await shellbook(['export', 'all', 'T-1', '--cobie', '--with-customer', '--out', 'handover']);
    expect(read('Contact')).toContain('Ann Onym');
  });
});
