import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ANSWERED, answerForm, answerSchema } from '../../src/cli/answers/index.js';
import { unitOf } from '../../src/cli/answers/shape.js';
import { COMMANDS } from '../../src/cli/commands/index.js';
import { CLOSABLE } from './closable.js';
import { shellbook } from './printed-book.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore({ ...CLOSABLE, '.gitignore': 'books/\nout/\n' });
  const picture = sharp({ create: { width: 64, height: 48, channels: 3, background: '#446688' } });
  store.write('out/phone/IMG_1.jpg', await picture.jpeg().toBuffer());
  store.write(
    'out/cut.csv',
    'id,part,stage,section,alloy,from,to\nFL-9,stringer,floor,RT2x2x1/8,6061-T6,"20, 0, 4 in","180, 0, 4 in"\n,x,,,,,\n',
  );
});
afterAll(() => store.remove());

/** In this order: each finds what those before it left. `statuses` that are an answer. */
const LINES: readonly (readonly [line: string, statuses?: readonly number[]])[] = [
  ['new-store out/other'],
  ['new-shell T-2 --store out/other'],
  ['check', [0, 1]],
  ['check T-1', [0, 1]],
  ['takeoff T-1'],
  ['weights T-1'],
  ['where T-1 DC-1'],
  ['where T-1 DC-1/S1'],
  ['where T-1 fuses'],
  ['behind T-1 AP-1'],
  ['near T-1 100,0,0in --within 6in'],
  ['isolate T-1 DC-1', [0, 1]],
  ['load T-1 DC-1/S1 --add 24W', [0, 1]],
  ['release T-1', [0, 1]],
  ['progress T-1'],
  ['mend T-1 service.role-missing --dry-run'],
  ['list'],
  ['trace welder K7'],
  ['trace heat none-such', [1]],
  ['history T-1'],
  ['history T-1 FL-1'],
  ['compare T-1 HEAD'],
  ['signoff T-1 floor --by J2 --date 2026-05-01'],
  ['close T-1 --no-books', [1]],
  ['signoff T-1 belly --by J2 --date 2026-05-01'],
  ['close T-1 --no-books'],
  ['close T-1 --no-books'],
  ['add component --shell T-1 --id CMP-1 --name hook --mass 1lb --at 100in,0in,60in --basis weighed'],
  ['undo --dry-run'],
  ['merge'],
  ['compare T-1 T-1-closed'],
  ['import members out/cut.csv --shell T-1 --yes --dry-run', [2]],
  ['export members T-1 --out out/tables'],
  ['photos T-1 out/phone --dry-run'],
  ['labels T-1 --out out/labels.pdf'],
  ['pocket T-1 --edition owner --out out/owner.html'],
  ['floor T-1 --out out/floor.html'],
  ['book T-1 --edition shop --out out/shop.pdf'],
  ['verify out/shop.pdf'],
  ['recover out/shop.pdf out/back'],
  ['backup out/all.tar.gz'],
  ['recover out/all.tar.gz out/all'],
  ['add run --shell T-1 --id DC-1/9 --circuit DC-1 --from DCP --to DC-1/L --installed-length 40ft'],
  ['decide service.length-differs DC-1/9 --as rework --by J2 --because seen'],
  ['key', [1]],
];

/** Of the demo's own pictures. */
const DEMO = fileURLToPath(new URL('../../demo-data/', import.meta.url));
const OF_PICTURES: typeof LINES = [['overlay OV-021 PH-053'], ['locate OV-021 PH-053 400,300 --on P-R-07', [0, 1]]];

/** Counts, shares, lines and pages: pure numbers. */
const BARE =
  /^(count|error|warning|note|decided|line|column|row|page|pages|unchanged|nodes|nodes_in_reach|found|recorded|joints|joints_in_two|clamps|torqued|isolated|dampers|markers|gussets|stations|seats|inspected|accepted|rejected|share|required|steer_share|repair_rate|reserve|redundancy|chi_square|normalised_residual|shellbook|files|number|built|planned|done|cards|pictures|pictures_left)$/u;
/** Maps whose keys are names out of the records, and what a record itself says. */
const NAMED: ReadonlySet<string> = new Set([
  'as_weighed',
  'normalised',
  'predicted',
  'residual',
  'adds_kg',
  'by_stage',
  'by_alloy',
  'by_section',
  'by_zone',
  'by_process',
  'kg_per_m_by_alloy',
]);
const AXLES_KG: ReadonlySet<string> = new Set(['as_weighed', 'normalised', 'predicted', 'residual']);
const OF_RECORDS: ReadonlySet<string> = new Set(['record', 'from', 'to']);

/** Every key that is not written as promised, with the way to it. */
function slips(value: unknown, way: readonly string[] = []): readonly string[] {
  const key = way.at(-1) ?? '';
  if (OF_RECORDS.has(key) && typeof value !== 'number') return [];
  if (Array.isArray(value)) return value.flatMap((one) => slips(one, way));
  if (typeof value === 'object' && value !== null) {
    const free = NAMED.has(key);
    return Object.entries(value).flatMap(([name, one]) => [
      ...(free || /^[a-z][a-z0-9]*(_[a-z0-9]+)*$/u.test(name) ? [] : [`${[...way, name].join('.')} is not snake_case`]),
      ...slips(one, [...way, free && typeof one === 'number' ? key : name]),
    ]);
  }
  if (typeof value !== 'number' || BARE.test(key) || AXLES_KG.has(key) || key === 'kg_per_m_by_alloy') return [];
  return unitOf(key) === undefined ? [`${way.join('.')} has no unit`] : [];
}

const validate = new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true });

describe('--json', () => {
  for (const [i, [line, statuses = [0]]] of [...LINES, ...OF_PICTURES].entries()) {
    it(`${i + 1} ${line}`, async () => {
      const [command = '', ...args] = line.split(' ');
      const { status, answer, messages } = await shellbook(
        OF_PICTURES.some(([one]) => one === line) ? DEMO : store.root,
        command,
        ...args,
        '--json',
        '--quiet',
      );
      expect(statuses, messages).toContain(status);
      const told = JSON.parse(answer) as Readonly<Record<string, unknown>>;
      expect(Object.keys(told).slice(0, 4)).toEqual(['shellbook', 'command', 'shell', 'revision']);
      expect(told.revision === null || /^[0-9a-f]{40}$/u.test(told.revision as string), String(told.revision)).toBe(true);
      const promised = validate.compile(answerSchema(command) as object);
      promised(told);
      expect(promised.errors ?? []).toEqual([]);
      // And no key that is not promised.
      const exact = answerForm(command)?.safeParse(told);
      expect(exact?.error?.issues ?? []).toEqual([]);
      expect(slips(told)).toEqual([]);
    });
  }

  it('is tried here for every command that has an answer', () => {
    const tried = new Set([...LINES, ...OF_PICTURES].map(([line]) => line.split(' ')[0]));
    // The whole demo is run by its own tests.
    expect(ANSWERED.filter((command) => !tried.has(command))).toEqual(['demo']);
    const declared = COMMANDS.map(({ name }) =>
      name
        .replace(/^declare/u, '')
        .replace(/\B[A-Z]/gu, '-$&')
        .toLowerCase(),
    );
    // Their answer is a schema, or a script of the shell.
    expect(declared.filter((command) => !ANSWERED.includes(command)).sort()).toEqual(['completion', 'schema']);
  });

  it('is described for all commands by schema --answers', async () => {
    const { status, answer } = await shellbook(store.root, 'schema', '--answers');
    const all = JSON.parse(answer) as Readonly<Record<string, unknown>>;
    expect([status, Object.keys(all).sort()]).toEqual([0, ANSWERED]);
    expect(all.load).toEqual(JSON.parse(JSON.stringify(answerSchema('load'))));
  });

  it('is described by schema answer-NAME', async () => {
    const { status, answer } = await shellbook(store.root, 'schema', 'answer-weights');
    expect(status).toBe(0);
    expect(JSON.parse(answer)).toEqual(JSON.parse(JSON.stringify(answerSchema('weights'))));
    expect(answer).toContain('"description": "in kilograms"');
    const wrong = await shellbook(store.root, 'schema', 'answer-weight');
    expect([wrong.status, wrong.messages]).toEqual([2, expect.stringMatching(/No command `weight`.*weights/su)]);
  });

  it('goes to standard output alone, one object, with nothing of a terminal in it', async () => {
    const answer = execFileSync(
      process.execPath,
      ['--import', import.meta.resolve('tsx'), path.resolve('src/main.ts'), 'list', '--json', '--store', store.root],
      { encoding: 'utf8', env: { ...process.env, FORCE_COLOR: '1' } },
    );
    expect(JSON.parse(answer)).toMatchObject({ shellbook: 1, command: 'list' });
    expect(answer).not.toContain('\u001b');
  });
});
