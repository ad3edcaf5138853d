import { describe, expect, it } from 'vitest';
import { chooseFile } from '../../src/entry/files.js';
import { habitsOf } from '../../src/entry/habits.js';
import { matchHeads } from '../../src/entry/headers.js';
import { keptColumns, ownWords, saidColumns, withKept } from '../../src/entry/mapping.js';
import { nextId } from '../../src/entry/numbering.js';
import { readKnown } from '../../src/entry/record-index.js';
import { readSheet } from '../../src/entry/sheet.js';
import { storeText } from '../support/store.js';

const NONE = { said: new Map<string, string>(), own: new Map<string, string>() };
const shown = (heads: ReturnType<typeof matchHeads>) => heads.map(({ column, unit, how }) => [column?.key, unit, how]);

describe('heads of columns', () => {
  it('are the keys, however they are written', () => {
    expect(shown(matchHeads('member', ['ID', 'Cut Length', 'from.x', 'To Z', 'x-bin'], NONE))).toEqual([
      ['id', undefined, 'certain'],
      ['cut_length', undefined, 'certain'],
      ['from.x', undefined, 'certain'],
      ['to.z', undefined, 'certain'],
      ['x-bin', undefined, 'certain'],
    ]);
  });

  it.each(['Cut length (in)', 'Cut length [in]', 'cut_length_in', 'Cut length, in', 'Cut Length (Inches)'])(
    '%j says its unit',
    (head) => {
      expect(shown(matchHeads('member', [head], NONE))).toEqual([['cut_length', 'in', 'certain']]);
    },
  );

  it('tells what looks like a unit and is none', () => {
    expect(matchHeads('member', ['cut_length (inx)'], NONE)[0]).toMatchObject({
      how: 'wrong',
      message: expect.stringContaining('is not a unit'),
    });
  });

  it('take no word for a unit that every object knows', () => {
    expect(matchHeads('member', ['cut_length constructor'], NONE)).toHaveLength(1);
  });

  it('are guessed from words of the trade and from slips, and a guess is said to be one', () => {
    expect(shown(matchHeads('member', ['Mark', 'Profile', 'Length (ft)', 'Aloy', 'Cost'], NONE))).toEqual([
      ['id', undefined, 'close'],
      ['section', undefined, 'close'],
      ['cut_length', 'ft', 'close'],
      ['alloy', undefined, 'close'],
      [undefined, undefined, 'unknown'],
    ]);
  });

  it('are not read twice: a guess gives way, two that say the same are a mistake', () => {
    expect(shown(matchHeads('member', ['id', 'Mark'], NONE))[1]).toEqual([undefined, undefined, 'unknown']);
    expect(matchHeads('member', ['heat', 'Heat'], NONE)[1]).toMatchObject({ how: 'wrong' });
  });

  it('are what the shop keeps in import.yaml, and what is said at the prompt', () => {
    const kept = keptColumns('members:\n  Profile used: section\n  Cost: skip\nweld:\n  Cost: note\n', 'member');
    const said = new Map([...kept, ...saidColumns(['Lot no=heat'])]);
    expect(shown(matchHeads('member', ['Profile Used', 'Cost', 'Lot No'], { ...NONE, said }))).toEqual([
      ['section', undefined, 'certain'],
      [undefined, undefined, 'unread'],
      ['heat', undefined, 'certain'],
    ]);
    expect(matchHeads('member', ['Cost'], { ...NONE, said: saidColumns(['Cost=price']) })[0]).toMatchObject({ how: 'wrong' });
    expect(() => keptColumns('membrs:\n  Cost: skip\n', 'member')).toThrow(/Found `membrs` in import.yaml/u);
  });

  it('are kept for the next sheet, comments and all', () => {
    const heads = matchHeads('member', ['id', 'Profile', 'Cost'], NONE);
    const first = withKept(null, 'member', heads);
    expect(keptColumns(first, 'member')).toEqual(
      new Map([
        ['profile', 'section'],
        ['cost', 'skip'],
      ]),
    );
    const second = withKept('# ours\nmembers:\n  Bin: skip # shelf\n', 'member', heads);
    expect(second).toBe('# ours\nmembers:\n  Bin: skip # shelf\n  Profile: section\n  Cost: skip\n');
  });

  it('of a ticket may be the shell’s own axles and tanks', () => {
    const known = readKnown(
      storeText({
        'shells/T-1/shell.yaml':
          'shell: T-1\nchassis:\n  axles: [{id: steer, x: 0 in}]\ntanks: [{id: FW, contents: water, capacity: 9 gal, at: [0 in, 0, 0]}]\n',
      }),
      'T-1',
    );
    const heads = matchHeads('ticket', ['Steer (lb)', 'Steer left (lb)', 'Water'], { ...NONE, own: ownWords('ticket', known) });
    expect(heads.map(({ column }) => column?.key)).toEqual(['readings.steer', 'readings.steer.left', 'condition.water']);
  });
});

describe('habits of a sheet', () => {
  const habits = (csv: string) => {
    const sheet = readSheet('x.csv', Buffer.from(csv));
    return habitsOf(sheet, matchHeads('member', sheet.heads, NONE), {});
  };

  it('are taken from its own cells where they leave no doubt', () => {
    expect(habits('id;cut_length (mm)\nA;5,25\nB;1.905,5\n')).toMatchObject({
      decimalComma: true,
      told: [expect.stringContaining('decimal commas')],
    });
    expect(habits('id,cut_length (lb)\nA,"14,600"\n')).toMatchObject({ decimalComma: false, told: [] });
    expect(habits('id,date\nA,2/11/2026\nB,2/25/2026\n')).toMatchObject({ dates: 'm/d/y' });
    expect(habits('id,date\nA,25/2/2026\n')).toMatchObject({ dates: 'd/m/y' });
  });

  it.each([
    ['id;cut_length (mm)\nA;1,905\n', '--decimal-comma or --decimal-point'],
    ['id;cut_length (mm)\nA;5,25\nB;5.2\n', 'row 3'],
    ['id,date\nA,2/11/2026\n', '--dates'],
    ['id,date\nA,25/2/2026\nB,2/25/2026\n', '--dates'],
  ])('are asked for where %j can be read in two ways', (csv, said) => {
    expect(() => habits(csv)).toThrow(said);
  });
});

describe('what a new record gets', () => {
  const known = readKnown(
    storeText({
      'shells/T-1/shell.yaml': 'shell: T-1\n',
      'shells/T-1/welds-floor.yaml': '- {id: W-008, stage: floor}\n- {id: W-009, stage: floor}\n- {id: EXTRA, stage: floor}\n',
      'shells/T-1/welds-roof.yaml': '- {id: W-011, stage: roof}\n',
      'shells/T-1/members.yaml': '- {id: W-012}\n- {id: SF-L}\n- {id: CB-R}\n',
      'shells/T-1/services/dc.yaml': 'circuits: [{id: DC-1}]\nnodes: [{id: DCP}]\n',
      'shells/T-1/services/ac.yaml': 'circuits: [{id: AC-1}]\n',
    }),
    'T-1',
  );

  it('is the next number that nothing has, as wide as the others', () => {
    expect(nextId('weld', known)).toBe('W-013');
    expect(nextId('weld', known, new Set(['W-013']))).toBe('W-014');
  });

  it('is no number where the others mean something', () => {
    expect(nextId('member', known)).toBeUndefined();
  });

  it.each([
    ['weld', { id: 'W-13', stage: 'roof' }, 'welds-roof.yaml'],
    ['weld', { id: 'EXTRA-2' }, 'welds-floor.yaml'],
    ['member', { id: 'X' }, 'members.yaml'],
    ['run', { id: 'R', circuit: 'AC-1', from: 'DCP' }, 'services/ac.yaml'],
    ['run', { id: 'R', from: 'DCP' }, 'services/dc.yaml'],
    ['component', { id: 'C' }, 'components.yaml'],
  ] as const)('is a place: a %s %j goes to %s', (kind, data, file) => {
    expect(chooseFile(kind, data, known)).toMatchObject({ place: { file: `shells/T-1/${file}` } });
  });

  it('is a question where several files would do', () => {
    expect(chooseFile('node', { id: 'N' }, known)).toMatchObject({ ask: expect.stringContaining('--into') });
    expect(chooseFile('node', { id: 'N' }, known, 'ac')).toMatchObject({
      place: { file: 'shells/T-1/services/ac.yaml' },
    });
    expect(chooseFile('weld', { id: 'N' }, known, 'welds-walls.yaml')).toMatchObject({
      place: { file: 'shells/T-1/welds-walls.yaml' },
    });
    expect(chooseFile('weld', { id: 'N' }, known, 'members')).toMatchObject({
      ask: expect.stringContaining('holds no welds'),
    });
  });
});
