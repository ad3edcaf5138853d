/** What was found by spoiling stores at random, each as a case of its own. */
import { describe, expect, it } from 'vitest';
import { EDITIONS } from '../../src/book/input.js';
import { runProgram } from '../../src/cli/program.js';
import { fittingScale } from '../../src/drawing/sheet.js';
import { processNumber } from '../../src/drawing/weld-symbol/process-number.js';
import { columnFor } from '../../src/entry/columns.js';
import { parseQuantity } from '../../src/quantity/parse.js';
import { neverTyped } from '../../src/records/form/unknown-key.js';
import { smallStore } from '../book/small-store.js';
import { literalIo } from '../cli/literal-io.js';
import { laySmallStore } from '../cli/small-store.js';
import { loadOne } from '../support/store.js';
import { assessmentOf } from './assessed.js';
import { pageComplaints } from './pipeline.js';

const spoiled = (file: string, from: string, to: string): Record<string, string> => {
  const text = smallStore()[file] as string;
  if (!text.includes(from)) throw new Error(`${file} has no ${from}`);
  return smallStore({ [file]: text.replace(from, to) });
};

describe('a store that was found by chance', () => {
  it.each([
    [
      'a section a hundred kilometres deep, drawn at 1:1000 and labelled along all of it',
      'library/sections.yaml',
      'depth: 5 in',
      'depth: 5000000 in',
    ],
    ['a rail that ends on the moon', 'shells/T-1/members.yaml', 'to: [372 in', 'to: [15000000000 in'],
    [
      'a node so far away',
      'shells/T-1/services/dc-house.yaml',
      'at: [220 in, -40 in, 0 in]',
      'at: [2200000000 in, -40 in, 0 in]',
    ],
    [
      'a component far beneath the ground',
      'shells/T-1/components.yaml',
      'at: [300 in, 0 in, -4 in]',
      'at: [300 in, 0 in, -5000000 in]',
    ],
    ['a panel of a square mile', 'shells/T-1/panels.yaml', '[360 in, 20 in, -2 in]', '[63360 in, 63360 in, -2 in]'],
    ['an opening wider than a town', 'shells/T-1/openings.yaml', 'width: 36 in', 'width: 5000000 in'],
    ['axles a mile apart', 'shells/T-1/shell.yaml', 'x: 255 in', 'x: 63360 in'],
    ['members of no length', 'library/sections.yaml', 'depth: 5 in', 'depth: 1e-9 mm'],
  ])('is printed in seconds: %s', async (_what, file, from, to) => {
    const assessment = assessmentOf(spoiled(file, from, to));
    if (!assessment) throw new Error('the shell is gone');
    for (const at of EDITIONS.keys()) expect(await pageComplaints(assessment, at, '')).toEqual([]);
  });

  it('is printed in our own markup where a picture shows what is behind a panel', async () => {
    const assessment = assessmentOf(spoiled('shells/T-1/photos/photos.yaml', 'of: [DC-12/S1]', 'of: [TROUGH, DC-12/S1]'));
    if (!assessment) throw new Error('the shell is gone');
    expect(await pageComplaints(assessment, EDITIONS.indexOf('service'), '')).toEqual([]);
  });

  it('sends no mark of direction from an id to a terminal, and its bytes to a file', async () => {
    const store = await laySmallStore({
      'shells/T-1/components.yaml':
        '- {id: \u202eabc, name: Generator, mass: 700 lb, at: [300 in, 0 in, -4 in], basis: weighed}\n',
    });
    const told = async (terminal: boolean): Promise<string> => {
      const io = literalIo(store.root, {}, terminal);
      await runProgram(['export', 'components', 'T-1'], io);
      return io.answer();
    };
    expect(await told(true)).toContain('\\u{202e}abc');
    expect(await told(true)).not.toContain('\u202e');
    expect(await told(false)).toContain('\u202eabc');
    store.remove();
  });

  it('has drawings that fit their sheets, whatever is typed', () => {
    for (const size of [1, 250_000, 1e6, 1e9, 1e12]) {
      const reduction = fittingScale(size, size / 3, 250, 180);
      expect(size / reduction).toBeLessThanOrEqual(250 + 1e-6);
    }
  });

  it.each(['constructor', '__proto__', 'toString', 'hasOwnProperty'])(
    'knows nothing by the name of what every object has: %s',
    (word) => {
      expect(columnFor('component', word)).toBeUndefined();
      expect(columnFor('component', `at.${word}`)).toBeUndefined();
      expect(neverTyped('component', word)).toBeUndefined();
      expect(processNumber(word)).toBe(word.toUpperCase());
      expect(parseQuantity(`5 ${word}`, 'mass')).toMatchObject({ ok: false });
      const { findings } = loadOne(
        smallStore({
          'shells/T-1/components.yaml': `- {id: GEN, name: Generator, mass: 700 lb, at: [0 in, 0 in, 0 in], ${word}: 1}\n`,
        }),
      );
      expect(findings.map(({ message }) => message).join('\n')).toContain(word);
    },
  );

  it('has no quantity beyond what can be reckoned with', () => {
    for (const typed of ['1e308 in', '1e300 in', '-1e308 in', '9e99 ft 1 in', '1e15 in'])
      expect(parseQuantity(typed, 'length')).toMatchObject({ ok: false });
    expect(parseQuantity('1e308', 'mass', { mass: 'lb' })).toMatchObject({ ok: false });
    expect(parseQuantity('200 GPa', 'pressure')).toMatchObject({ ok: true });
  });

  it.each(['{id: P-1, file: p1.jpg}', '[p1.jpg]', ''])('is told in words what stands for a file: %j', (typed) => {
    const photos = 'shells/T-1/photos/photos.yaml';
    const { findings } = loadOne(smallStore({ [photos]: `- {id: P-9, file: ${typed}, of: [SF-L]}\n` }));
    const said = findings.map(({ message }) => message).join('\n');
    expect(said).toContain('P-9');
    expect(said).not.toMatch(/\[object|undefined/u);
  });
});
