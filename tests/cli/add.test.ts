import { readFileSync } from 'node:fs';
import path from 'node:path';
import { simpleGit } from 'simple-git';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { runProgram } from '../../src/cli/program.js';
import type { Asker, MenuChoice } from '../../src/entry/asker.js';
import { columnsOf } from '../../src/entry/columns.js';
import { ENTRY_KINDS } from '../../src/entry/homes.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

const PEOPLE = `- {id: K7, name: K. Marrow, role: welder, qualified: [{process: GMAW, positions: [2F], from: 2026-01-01, until: 2028-01-01}]}
- {id: B9, name: B. Tolliver, role: welder, qualified: [{process: GTAW, positions: [2F], from: 2026-01-01, until: 2028-01-01}]}
`;
const WELDS = `# Floor
- {id: W-001, joins: [FL-1, FL-2], type: fillet, size: 1/8 in, length: 2 in, process: GMAW, position: 2F, stage: floor,
   welder: K7, date: 2026-03-02} # the first
`;

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore({ 'library/people.yaml': PEOPLE, 'shells/T-1/welds.yaml': WELDS });
});
afterAll(() => store.remove());

const textOf = (file: string): string => readFileSync(path.join(store.root, file), 'utf8');

async function shellbook(args: readonly string[], ask?: () => Promise<Asker>) {
  const io = literalIo(store.root);
  const status = await runProgram(args, ask ? { ...io, ask } : io);
  return { status, answer: io.answer(), messages: io.messages() };
}

const ADD = ['add', 'weld', '--shell', 'T-1'];
const GIVEN = ['--joins', 'FL-1, FL-2', '--type', 'fillet', '--size', '1/8 in', '--length', '3 in', '--process', 'GMAW'];

describe('add from options', () => {
  it('writes the record below the others and leaves them as they are', async () => {
    const { status, answer } = await shellbook([
      ...ADD,
      '--id',
      'next',
      ...GIVEN,
      '--set',
      'inspections.1.method=VT',
      '--inspections.1.by',
      'K7',
      '--inspections.1.date',
      '2026-03-03',
      '--inspections.1.result',
      'accept',
      '--commit',
    ]);
    expect(status).toBe(0);
    expect(answer).toContain('Added weld W-002 to shells/T-1/welds.yaml (the only one).');
    const text = textOf('shells/T-1/welds.yaml');
    expect(text.startsWith(WELDS)).toBe(true);
    expect(text.slice(WELDS.length)).toBe(
      '- {id: W-002, joins: [FL-1, FL-2], type: fillet, size: 1/8 in, length: 3 in, process: GMAW,\n   inspections: [{method: VT, by: K7, date: 2026-03-03, result: accept}]}\n',
    );
    const { latest } = await simpleGit({ baseDir: store.root }).log();
    expect(latest?.message).toBe('Record weld W-002 of T-1: FL-1 to FL-2, 1/8 in fillet');
  });

  it('takes a list piece by piece, and refuses any other field that is given twice', async () => {
    const rest = ['--type', 'fillet', '--size', '1/8 in', '--length', '3 in', '--process', 'GMAW', '--dry-run', '--json'];
    const pieces = [...ADD, '--id', 'next', '--joins', 'FL-2', '--joins', 'FL-1'];
    const { answer } = await shellbook([...pieces, ...rest]);
    expect(JSON.parse(answer).record.joins).toEqual(['FL-2', 'FL-1']);
    const twice = await shellbook([...pieces, ...rest, '--size', '1/4 in']);
    expect([twice.status, twice.messages]).toEqual([
      2,
      expect.stringContaining('--size is given twice, as `1/8 in` and as `1/4 in`: give it once'),
    ]);
  });

  it('takes from a like record what is not evidence', async () => {
    const { answer } = await shellbook([
      ...ADD,
      '--id',
      'next',
      '--like',
      'W-001',
      '--joins',
      'FL-2, FL-1',
      '--dry-run',
      '--json',
    ]);
    const { record, dry_run } = JSON.parse(answer);
    expect(dry_run).toBe(true);
    expect(record).toMatchObject({ id: 'W-003', joins: ['FL-2', 'FL-1'], type: 'fillet', welder: 'K7', position: '2F' });
    expect(record).not.toHaveProperty('date');
    expect(textOf('shells/T-1/welds.yaml')).not.toContain('W-003');
  });

  it.each([
    [
      ['add', 'tank', '--id', 'GREY', '--contents', 'grey', '--capacity', '20 gal', '--at', '0 in, 0, 0'],
      'shells/T-1/shell.yaml',
      '  - {id: GREY, contents: grey, capacity: 20 gal, at: [0 in, 0, 0]}\nseats:',
    ],
    [['add', 'axle', '--id', 'tag', '--x', '200 in'], 'shells/T-1/shell.yaml', '    - {id: tag, x: 200 in}\n  bare:'],
    [
      ['add', 'run', '--id', 'DC-1/9', '--circuit', 'DC-1', '--from', 'DCP', '--to', 'DC-1/L'],
      'shells/T-1/services/dc.yaml',
      '  - {id: DC-1/9, circuit: DC-1, from: DCP, to: DC-1/L}\n',
    ],
    [
      [
        'add',
        'ticket',
        '--id',
        'T-9',
        '--date',
        '2026-07-01',
        '--set',
        'condition.fuel=3/4',
        '--readings.front',
        '3,320 lb',
        '--readings.rear.left',
        '1200 lb',
        '--readings.rear.right',
        '1210 lb',
      ],
      'shells/T-1/weights.yaml',
      '- id: T-9\n  condition: {fuel: 3/4}\n  readings: {front: "3,320 lb", rear: {left: 1200 lb, right: 1210 lb}}\n  date: 2026-07-01\n',
    ],
    [
      ['add', 'signoff', '--stage', 'floor', '--role', 'inspector', '--by', 'K7', '--date', '2026-03-05'],
      'shells/T-1/signoffs.yaml',
      '- {role: inspector, stage: floor, date: 2026-03-05, by: K7}\n',
    ],
    [
      ['add', 'loading-condition', '--name', 'show day', '--set', 'condition.fuel=1'],
      'shells/T-1/shell.yaml',
      'conditions:\n  - {name: show day, condition: {fuel: 1}}\n',
    ],
  ])('%j', async (args, file, text) => {
    expect((await shellbook([...args, '--shell', 'T-1'])).status).toBe(0);
    expect(textOf(file)).toContain(text);
    const check = await shellbook(['check', 'T-1', '--json']);
    expect(JSON.parse(check.answer).findings.filter(({ rule }: { rule: string }) => rule.startsWith('format.'))).toEqual([]);
  });

  it('has no option of its own that a record has a field of', async () => {
    const own = ['shell', 'like', 'into', 'dry-run', 'commit', 'store', 'json', 'quiet', 'color', 'set', 'help'];
    for (const kind of ENTRY_KINDS)
      expect(
        columnsOf(kind).filter(({ key }) => own.includes(key)),
        kind,
      ).toEqual([]);
  });

  it.each([
    [[...ADD, '--id', 'next'], /Missing for a weld:.*--joins .*--type/su],
    [[...ADD, ...GIVEN], /--id .*--id next/su],
    [[...ADD, '--id', 'next', ...GIVEN, '--welder', 'K8'], /`K8` for `welder`.*Did you mean `K7`/su],
    [[...ADD, '--id', 'next', ...GIVEN.map((word) => (word === '1/8 in' ? '5' : word))], /bare number `5` for `size`.*`5 in`/su],
    [[...ADD, '--id', 'FL-1', ...GIVEN], /`FL-1` is already the ID of a member.*W-/su],
    [[...ADD, '--id', 'W-001', ...GIVEN], /is already the ID of a weld/u],
    [[...ADD, '--weldr', 'K7'], /no `weldr`, expected --welder/u],
    [[...ADD, '--id'], /Missing value after --id/u],
    [['add', 'wled', '--shell', 'T-1'], /No record kind wled. Did you mean `weld`/u],
    [['add', 'weld', '--id', 'x'], /--shell QF-007/u],
    [['add', 'member', '--shell', 'T-1', '--id', 'M', '--alloy', '6061-T6'], /expected `section`, `from` and `to` for a tube/u],
  ])('%j says what is missing or wrong, and writes nothing', async (args, said) => {
    const before = textOf('shells/T-1/welds.yaml');
    const { status, answer, messages } = await shellbook(args);
    expect(status).toBe(2);
    expect(answer).toBe('');
    expect(messages).toMatch(said);
    expect(textOf('shells/T-1/welds.yaml')).toBe(before);
  });

  it('lists the fields of a kind', async () => {
    const { status, answer } = await shellbook(['add', 'weld', '--help']);
    expect(status).toBe(0);
    expect(answer).toContain('shellbook add weld --shell');
    expect(answer).toMatch(/--joins +The two parts that it joins.*\(needed\)/su);
    for (const line of answer.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });
});

describe('a service', () => {
  it('is started as a file of its own, and takes records', async () => {
    const { status, messages } = await shellbook([
      'add',
      'service',
      '--shell',
      'T-1',
      '--id',
      'water',
      '--service',
      'Water',
      '--medium',
      'watr',
    ]);
    expect(status).toBe(2);
    expect(messages).toContain('expected `water`');
    expect(
      (await shellbook(['add', 'service', '--shell', 'T-1', '--id', 'water', '--service', 'Water', '--medium', 'water'])).status,
    ).toBe(0);
    expect((await shellbook(['add', 'service', '--shell', 'T-1', '--id', 'water'])).messages).toMatch(/--service .*--medium/su);
    const tap = ['add', 'node', '--shell', 'T-1', '--into', 'water', '--id', 'TAP', '--kind', 'valve', '--at', '90 in, 0, 10 in'];
    expect((await shellbook(tap)).status).toBe(0);
    expect(textOf('shells/T-1/services/water.yaml')).toBe(
      'service: Water\nmedium: water\ncircuits:\nnodes:\n  - {id: TAP, kind: valve, at: [90 in, 0, 10 in]}\nruns:\n',
    );
  });
});

describe('a file with marks and line ends of another system', () => {
  it('keeps them', async () => {
    store.write('shells/T-1/clamps.yaml', '\uFEFF# U-bolts\r\n- {id: UB-1, kind: U-bolt, at: [0 in, 0, 0]}\r\n');
    const args = ['add', 'clamp', '--shell', 'T-1', '--id', 'next', '--kind', 'U-bolt', '--at', '9 in, 0, 0'];
    expect((await shellbook(args)).status).toBe(0);
    expect(textOf('shells/T-1/clamps.yaml')).toBe(
      '\uFEFF# U-bolts\r\n- {id: UB-1, kind: U-bolt, at: [0 in, 0, 0]}\r\n- {id: UB-2, kind: U-bolt, at: [9 in, 0, 0]}\r\n',
    );
  });
});

describe('fifty at once', () => {
  it('lose none, and none has the number of another', async () => {
    const results = await Promise.all(Array.from({ length: 50 }, () => shellbook([...ADD, '--id', 'next', ...GIVEN])));
    expect(results.map(({ status }) => status)).toEqual(Array.from({ length: 50 }, () => 0));
    const ids = [...textOf('shells/T-1/welds.yaml').matchAll(/\{id: (W-\d+)/gu)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(52);
    expect(ids).toHaveLength(52);
  });
});

describe('add by asking', () => {
  /** Answers by key; shows what was offered. */
  function scripted(answers: Readonly<Record<string, string>>, confirms: Readonly<Record<string, boolean>> = {}) {
    const offered = new Map<string, readonly MenuChoice[]>();
    const usual = new Map<string, string | undefined>();
    const wrong = new Map<string, string | undefined>();
    const keyOf = (text: string): string => /^[\w.]+/u.exec(text)?.[0] ?? text;
    const asker: Asker = {
      async text(question) {
        const key = keyOf(question.text);
        usual.set(key, question.usual);
        wrong.set(key, question.wrong?.('5'));
        return answers[key] ?? question.usual ?? '';
      },
      async choose({ text, choices, usual: first }) {
        const key = keyOf(text);
        if (!offered.has(key)) offered.set(key, choices);
        usual.set(key, first);
        const next = text.includes('(so far') ? answers[`${key} 2`] : answers[key];
        return next ?? first ?? (choices[0] as MenuChoice).value;
      },
      confirm: async ({ text, usual: preset }) => (/^(Add|Write) it/u.test(text) ? true : (confirms[text] ?? preset)),
    };
    return { asker, offered, usual, wrong };
  }

  it('offers what the store knows, the likeliest first, and what the last one had', async () => {
    const { asker, offered, usual, wrong } = scripted({ joins: 'FL-1', 'joins 2': 'FL-2', length: '7 in', date: '2026-03-09' });
    const { status, answer, messages } = await shellbook(['add', 'weld', '--shell', 'T-1'], async () => asker);
    expect(status).toBe(0);
    expect(usual.get('id')).toMatch(/^W-0\d\d$/u);
    expect(offered.get('joins')?.map(({ value }) => value)).toContain('BP-1');
    expect(offered.get('type')?.map(({ value }) => value)).toContain('plug');
    expect(wrong.get('length')).toMatch(/bare number `5` for `length`/u);
    expect(offered.get('welder')?.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['K7  qualified', 'B9  not qualified']),
    );
    expect(messages).toContain('length: 7 in');
    expect(answer).toContain('Added weld W-');
    expect(textOf('shells/T-1/welds.yaml')).toMatch(/joins: \[FL-1, FL-2\], type: fillet, size: 1\/8 in, length: 7 in/u);
  });

  it('loses no answer to a wrong one', async () => {
    const { asker } = scripted({ joins: 'FL-1', 'joins 2': 'FL-2', length: '7 in', welder: 'K8', date: '2026-03-09' });
    const { status, messages } = await shellbook(['add', 'weld', '--shell', 'T-1'], async () => asker);
    expect(status).toBe(2);
    expect(messages).toMatch(/Not written:\n.*joins: \[FL-1, FL-2\].*Did you mean `K7`/su);
  });

  it('asks only for what was not given', async () => {
    const { asker, usual } = scripted({});
    const given = ['add', 'component', '--shell', 'T-1', '--name', 'heater', '--at', '90 in, 0, 8 in', '--mass', '14 lb'];
    const { status } = await shellbook(given, async () => asker);
    expect(status).toBe(0);
    expect([...usual.keys()]).not.toContain('name');
    expect(textOf('shells/T-1/components.yaml')).toContain('{id: CMP-01, name: heater, mass: 14 lb');
  });

  it('leaves out what is optional unless it is answered', async () => {
    const { asker } = scripted({
      joins: 'FL-1',
      'joins 2': 'FL-2',
      size: '1/8 in',
      length: '7 in',
      type: 'fillet',
      process: 'GMAW',
    });
    await shellbook(['add', 'weld', '--shell', 'T-1', '--id', 'W-OPT'], async () => asker);
    const line = /\{id: W-OPT[^}]*\}/u.exec(textOf('shells/T-1/welds.yaml'))?.[0];
    expect(line).toBe('{id: W-OPT, joins: [FL-1, FL-2], type: fillet, size: 1/8 in, length: 7 in, process: GMAW}');
  });

  it('asks for the looks at a weld, one after the other', async () => {
    const { asker } = scripted(
      {
        'inspections.1.method': 'VT',
        'inspections.1.by': 'K7',
        'inspections.1.date': '2026-03-10',
        'inspections.1.result': 'accept',
        process: 'GMAW',
      },
      { 'inspections: Every look at it, rejects too. Record one?': true },
    );
    const given = ['add', 'weld', '--shell', 'T-1', '--id', 'W-SEEN', ...GIVEN.slice(0, -2), '--welder', 'B9'];
    const { status, messages } = await shellbook(given, async () => asker);
    expect(status, messages).toBe(0);
    expect(textOf('shells/T-1/welds.yaml')).toMatch(
      /id: W-SEEN[^[]*\[FL-1, FL-2\][^}]*inspections: \[\{method: VT, by: K7, date: 2026-03-10, result: accept\}\]/u,
    );
  });

  it('asks for records of the library, and for qualifications', async () => {
    const { asker } = scripted(
      { id: 'J9', name: 'J. Ostler', role: 'inspector', 'qualified.1.method': 'VT', 'qualified.1.from': '2026-01-01' },
      { 'qualified: What they are qualified for, with dates. Record one?': true },
    );
    const { status, messages } = await shellbook(['add', 'person'], async () => asker);
    expect(status, messages).toBe(0);
    expect(textOf('library/people.yaml')).toContain(
      '{id: J9, name: J. Ostler, role: inspector, qualified: [{method: VT, from: 2026-01-01}]}',
    );
  });

  it('asks for corners one by one', async () => {
    const corners = ['0 in, 0 in, 60 in', '20 in, 0 in, 60 in', '20 in, 10 in, 60 in', ''];
    const { asker } = scripted({ id: 'PN-9', thickness: '1/8 in' });
    const text: Asker['text'] = async (question) =>
      question.text.startsWith('outline, place') ? (corners.shift() ?? '') : asker.text(question);
    const given = ['add', 'panel', '--shell', 'T-1', '--kind', 'interior'];
    const { status, messages } = await shellbook(given, async () => ({ ...asker, text }));
    expect(status, messages).toBe(0);
    expect(textOf('shells/T-1/panels.yaml')).toMatch(
      /id: PN-9,[^}]*outline: \[\[0 in, 0 in, 60 in\], \[20 in, 0 in, 60 in\], \[20 in, 10 in, 60 in\]\]/u,
    );
  });

  it('repeats the last one with --last, under the next number', async () => {
    const { status, answer } = await shellbook([
      'add',
      'weld',
      '--shell',
      'T-1',
      '--last',
      '--joins',
      'FL-2, FL-1',
      '--json',
      '--dry-run',
    ]);
    expect(status).toBe(0);
    expect(JSON.parse(answer).record).toMatchObject({
      id: expect.stringMatching(/^W-\d+$/u),
      joins: ['FL-2', 'FL-1'],
      type: 'fillet',
    });
    expect((await shellbook(['add', 'gusset', '--last', '--shell', 'T-1'])).status).toBe(2);
  });
});

describe('add chassis', () => {
  it('asks for the vehicle, its axles and bare weights, and keeps what stood in the file', async () => {
    await shellbook(['new-shell', 'T-9']);
    const before = textOf('shells/T-9/shell.yaml');
    const said: Record<string, readonly string[]> = {
      vin: ['1M8GDM9AXKP042788'],
      title: ['Travelling library'],
      gvwr: ['37600 lb'],
      id: ['steer', 'drive', 'FUEL'],
      capacity: ['60 gal'],
      at: ['90 in, -38 in, 0 in'],
      x: ['0 in', '255 in'],
      gawr: ['14600 lb', '23000 lb'],
      'tyres.count': ['2', '4'],
      'tyres.load_index': ['150', '[146, 143]'],
      'condition.FUEL': ['1/4'],
      'readings.steer': ['9840 lb'],
      'readings.drive': ['7120 lb'],
    };
    const asked: Record<string, number> = {};
    const wrongVin: (string | undefined)[] = [];
    let axles = 0;
    const asker: Asker = {
      async text(question) {
        const key = /^[\w.]+/u.exec(question.text)?.[0] ?? '';
        if (key === 'vin') wrongVin.push(question.wrong?.('1M8GDM9A1KP042788'), question.wrong?.('1M8'));
        asked[key] = (asked[key] ?? 0) + 1;
        const answer = said[key]?.[(asked[key] as number) - 1] ?? '';
        expect(question.wrong?.(answer), `${key}: ${answer}`).toBeUndefined();
        return answer;
      },
      choose: async ({ text, usual }) => usual ?? (/^contents/u.test(text) ? 'diesel' : ''),
      confirm: async ({ text, usual }) => (/axle.*so far|an axle/u.test(text) ? axles++ < 2 : /tank/u.test(text) ? usual : true),
    };
    const { status, messages } = await shellbook(['add', 'chassis', '--shell', 'T-9'], async () => asker);
    expect(status, messages).toBe(0);
    expect(wrongVin).toEqual([expect.stringContaining('`X` by the others'), expect.stringContaining('is not a vehicle number')]);
    const text = textOf('shells/T-9/shell.yaml');
    for (const line of before.split('\n')) if (line.startsWith('#')) expect(text).toContain(line);
    expect(parse(text)).toMatchObject({
      vin: '1M8GDM9AXKP042788',
      title: 'Travelling library',
      chassis: {
        gvwr: '37600 lb',
        axles: [
          { id: 'steer', gawr: '14600 lb' },
          { id: 'drive', x: '255 in' },
        ],
        bare: { condition: { FUEL: '1/4' }, readings: { steer: '9840 lb', drive: '7120 lb' } },
      },
    });
    const { answer } = await shellbook(['check', 'T-9', '--json']);
    expect((JSON.parse(answer).findings as { rule: string }[]).filter(({ rule }) => rule.startsWith('format.'))).toEqual([]);
  });
});
