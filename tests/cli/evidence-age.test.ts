import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CLOSABLE } from './closable.js';
import { shellbook } from './printed-book.js';
import { FILES, laySmallStore, type SmallStore } from './small-store.js';

const DC = 'shells/T-1/services/dc.yaml';
const MOVED = '[[70 in, 6 in, 0 in]]';
const moved = (more = ''): string =>
  (FILES[DC] as string).replace('via: [[70 in, 0 in, 0 in]], zones: [TROUGH],', `via: ${MOVED}, zones: [TROUGH],${more}`);

let store: SmallStore;
beforeEach(async () => {
  store = await laySmallStore(CLOSABLE);
});
afterEach(() => store.remove());

interface Found {
  readonly rule: string;
  readonly message: string;
  readonly ids: readonly string[];
}

async function stale(): Promise<readonly Found[]> {
  const { answer } = await shellbook(store.root, 'check', 'T-1', '--json', '--quiet');
  const { findings } = JSON.parse(answer) as { readonly findings: readonly Found[] };
  return findings.filter((one) => one.rule === 'order.evidence-stale');
}

describe('evidence of before the last change', () => {
  it('counts while nothing has changed: the first commit is no change', async () => expect(await stale()).toEqual([]));
  it('no longer counts once a line is re-routed and committed', async () => {
    store.write(DC, moved());
    await store.commit('DC-1/1 goes round the jack');
    const [found, ...more] = await stale();
    expect(more).toEqual([]);
    expect(found?.ids).toEqual(['DC-1/1', 'P-2', 'TS-1']);
    expect(found?.message).toMatch(
      /DC-1\/1 was changed on \d{4}-\d\d-\d\d; photo P-2 of 2026-04-08, test TS-1 of 2026-04-08 are from before that/u,
    );
  });
  it('nor while that is not committed yet', async () => {
    store.write(DC, moved());
    expect((await stale())[0]?.message).toContain('not committed yet');
  });
  it('counts again from the date of the change, where that is typed: evidence of that day is new', async () => {
    store.write(
      DC,
      moved().replace(
        `via: ${MOVED}, zones: [TROUGH], tolerance: 15 mm, date: 2026-04-07`,
        `via: ${MOVED}, zones: [TROUGH], tolerance: 15 mm, date: 2026-04-08`,
      ),
    );
    await store.commit('DC-1/1 went round the jack on the 8th');
    expect(await stale()).toEqual([]);
  });
  it('is kept by an entry that was mended, not by one that changed again after', async () => {
    const mended = " corrected: {date: 2026-05-02, by: K7, why: 'typed from the wrong line of the sheet'},";
    store.write(DC, moved(mended));
    await store.commit('Mend DC-1/1');
    expect(await stale()).toEqual([]);
    store.write(DC, moved(mended).replace(MOVED, '[[70 in, 9 in, 0 in]]'));
    await store.commit('Move DC-1/1');
    expect((await stale()).map((one) => one.ids[0])).toEqual(['DC-1/1']);
  });
  it('is kept through notes, a move to another file, and a figure that was not there before', async () => {
    const text = FILES[DC] as string;
    const line = text.split('\n').find((one) => one.includes('id: DC-1/1,')) as string;
    store.write(DC, text.replace(`${line}\n`, '').replace('date: 2026-04-07}', 'date: 2026-04-07, note: behind the jack}'));
    store.write(
      'shells/T-1/services/dc-more.yaml',
      `service: More\nmedium: dc\nruns:\n${line.replace('date:', 'installed_length: 6 ft, date:')}\n`,
    );
    await store.commit('Sort the runs');
    expect(await stale()).toEqual([]);
  });
  it('blocks the close', async () => {
    store.write(DC, moved());
    await store.commit('DC-1/1 goes round the jack');
    const { status, answer, messages } = await shellbook(store.root, 'close', 'T-1', '--no-books');
    expect(status).toBe(1);
    expect((answer + messages).replace(/\s+/gu, ' ')).toContain('DC-1/1 was changed on');
  });
});

describe('a store within a larger repository', () => {
  const within = (folder: string): Readonly<Record<string, string>> =>
    Object.fromEntries(Object.entries({ ...FILES, ...CLOSABLE }).map(([file, text]) => [`${folder}/${file}`, text]));
  const rules = async (root: string): Promise<readonly string[]> => {
    const { answer } = await shellbook(`${root}/coach`, 'check', 'T-1', '--json', '--quiet');
    return (JSON.parse(answer) as { readonly findings: readonly Found[] }).findings.map((one) => one.rule);
  };
  it('takes a commit of its own for a change of the coach, and none that also changes what lies outside it', async () => {
    const larger = await laySmallStore(within('coach'));
    try {
      larger.write(`coach/${DC}`, moved());
      larger.write('program.txt', 'the records have another form now');
      await larger.commit('Give records and program another form');
      expect(await rules(larger.root)).toContain('record.shared-history');
      expect(await rules(larger.root)).not.toContain('order.evidence-stale');
      larger.write(`coach/${DC}`, moved().replace(MOVED, '[[70 in, 9 in, 0 in]]'));
      await larger.commit('DC-1/1 goes round the jack');
      expect(await rules(larger.root)).toContain('order.evidence-stale');
    } finally {
      larger.remove();
    }
  });
});
