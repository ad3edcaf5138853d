import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from '../cli/literal-io.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

let store: SmallStore;
let jpeg: Buffer;
beforeAll(async () => {
  store = await laySmallStore();
  jpeg = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#446688' } })
    .jpeg()
    .toBuffer();
});
afterAll(() => store.remove());

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram([...args, '--quiet'], io);
  return { status, answer: io.answer(), messages: io.messages() };
}
const findings = async (): Promise<readonly string[]> => {
  const { answer } = await shellbook('check', 'T-1', '--json');
  return (JSON.parse(answer).findings as { rule: string; ids: readonly string[] }[]).map(
    ({ rule, ids }) => `${rule} ${ids.join(' ')}`,
  );
};

const file = (more: object = {}) => ({
  shellbook: 'notes',
  version: 1,
  shell: 'T-1',
  edition: 'service',
  revision: null,
  fingerprint: '9d'.repeat(32),
  notes: [
    {
      date: '2026-09-04',
      by: 'A. Technician',
      text: 'Splice made new: "heat shrink"\n- and *sealed*',
      of: ['DC-1/S1'],
      picture: { jpeg: jpeg.toString('base64'), sha256: createHash('sha256').update(jpeg).digest('hex') },
    },
  ],
  ...more,
});

describe('notes of a pocket page', () => {
  it('become amendments with their pictures, once, and bring no finding but their own', async () => {
    store.write('notes.json', JSON.stringify(file()));
    const before = await findings();
    const dry = await shellbook('import', 'notes', 'notes.json', '--dry-run');
    expect(dry).toMatchObject({ status: 0, messages: '' });
    expect(dry.answer).toContain('Would propose 1 amendment of T-1');
    const taken = await shellbook('import', 'notes', 'notes.json', '--json');
    expect(taken.status, taken.messages).toBe(0);
    const { added } = JSON.parse(taken.answer);
    expect(added.map(({ kind }: { kind: string }) => kind)).toEqual(['photo', 'amendment']);
    const ids = added.map(({ id }: { id: string }) => id) as readonly string[];
    const after = await findings();
    const more = after.filter((one) => !before.includes(one));
    expect(more.filter((one) => !ids.some((id) => one.includes(id)) && !one.startsWith('record.uncommitted'))).toEqual([]);
    const shown = await shellbook('where', 'T-1', 'DC-1/S1');
    expect(shown.status).toBe(0);
    const again = await shellbook('import', 'notes', 'notes.json');
    expect(again.answer).toContain('1 in the record already');
  });

  it.each([
    ['no JSON', '{', 'it is not JSON'],
    ['a list', '[]', 'is not a file of notes'],
    ['another version', JSON.stringify({ ...{ shellbook: 'notes', version: 2 } }), 'version'],
    [
      'a key more',
      JSON.stringify({
        shellbook: 'notes',
        version: 1,
        shell: 'T-1',
        edition: 'service',
        revision: null,
        fingerprint: '',
        notes: [],
        run: 'x',
      }),
      'not a file of notes',
    ],
  ])('refuses %s with one message', async (_what, content, said) => {
    store.write('bad.json', content);
    const { status, answer, messages } = await shellbook('import', 'notes', 'bad.json');
    expect([status, answer]).toEqual([2, '']);
    expect(messages).toContain(said);
    expect(messages).not.toMatch(/\n {4}at /u);
  });

  it('refuses a changed picture, what is no picture, an id that is not there, and another shell', async () => {
    const note = file().notes[0] as NonNullable<ReturnType<typeof file>['notes'][0]>;
    const text = Buffer.from('<svg onload=alert(1)>');
    const refused = async (content: object, ...more: readonly string[]): Promise<string> => {
      store.write('bad.json', JSON.stringify(content));
      const { status, messages } = await shellbook('import', 'notes', 'bad.json', ...more);
      expect(status).toBe(2);
      return messages;
    };
    const withNote = (more: object): object => file({ notes: [{ ...note, text: 'another', ...more }] });
    expect(await refused(withNote({ picture: { jpeg: jpeg.toString('base64'), sha256: '0'.repeat(64) } }))).toContain(
      'was changed since',
    );
    const sha256 = createHash('sha256').update(text).digest('hex');
    expect(await refused(withNote({ picture: { jpeg: text.toString('base64'), sha256 } }))).toContain(
      'cannot be read as a picture',
    );
    expect(await refused(withNote({ of: ['NO-99'] }))).toContain('NO-99');
    expect(await refused(withNote({ date: '2026-02-31' }))).toContain('not a file of notes');
    expect(await refused(file({ shell: 'T-9' }))).toContain('No shell T-9');
    expect(await refused(file(), '--shell', 'T-2')).toContain('is for shell T-1');
  });
});
