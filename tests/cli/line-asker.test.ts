import { PassThrough } from 'node:stream';
import { describe, expect, it, vi } from 'vitest';
import { LineAsker } from '../../src/cli/line-asker.js';

/** An asker whose person has typed these lines, at once or before anything was asked. */
function typed(text: string) {
  const input = new PassThrough();
  const output = new PassThrough();
  let shown = '';
  output.on('data', (bytes: Buffer) => {
    shown += bytes.toString('utf8');
  });
  const asker = new LineAsker(input, output);
  input.write(text);
  return { asker, input, shown: () => shown };
}

const BEAMS = ['SF-L', 'SF-R', 'CB-04', 'CB-05', 'CB-06', 'P-L-01', 'P-L-02', 'P-L-03', 'P-L-04', 'P-L-05'].map((value) => ({
  value,
  name: `${value}  of the floor`,
}));

describe('asking at a terminal', () => {
  it('gives each line to its question, however fast they were typed', async () => {
    const { asker } = typed('W-0113\nCB-04\n2\n\n3 in\ny\n');
    expect(await asker.text({ text: 'id' })).toBe('W-0113');
    expect(await asker.choose({ text: 'joins', choices: BEAMS })).toBe('CB-04');
    expect(await asker.choose({ text: 'type', choices: [{ value: 'fillet' }, { value: 'plug' }] })).toBe('plug');
    expect(
      await asker.choose({ text: 'stage', choices: [{ value: '', name: '(leave it out)' }, { value: 'floor' }], usual: '' }),
    ).toBe('');
    expect(await asker.text({ text: 'length' })).toBe('3 in');
    expect(await asker.confirm({ text: 'Add it?', usual: true })).toBe(true);
  });

  it('takes what is typed and never what happens to be shown', async () => {
    const { asker, input, shown } = typed('P-L\n');
    const answer = asker.choose({ text: 'joins', choices: BEAMS });
    await vi.waitFor(() => expect(shown()).toContain('Several have `P-L`:'));
    // 2 counts in the list that is shown now.
    input.write('2\n');
    expect(await answer).toBe('P-L-02');
  });

  it('drops what was typed behind an answer that will not do', async () => {
    const { asker, input, shown } = typed('W-1\nfive\n7 in\n9 in\n');
    const wrong = (answer: string) => (/^\d+ in$/u.test(answer) ? undefined : 'expected a length');
    expect(await asker.text({ text: 'id' })).toBe('W-1');
    const answer = asker.text({ text: 'length', wrong });
    await vi.waitFor(() => expect(shown()).toContain('expected a length\n  What you typed ahead (2 lines) is dropped.'));
    input.write('8 in\n');
    expect(await answer).toBe('8 in');
  });

  it('takes `=` for the answer of last time, and an empty one for nothing', async () => {
    const { asker } = typed('=\n\n');
    expect(await asker.text({ text: 'welder', last: 'K7' })).toBe('K7');
    expect(await asker.text({ text: 'welder', last: 'K7' })).toBe('');
  });

  it('agrees to nothing by an Enter from before the question', async () => {
    const { asker, input, shown } = typed('floor\n\n');
    expect(await asker.text({ text: 'stage' })).toBe('floor');
    const answer = asker.confirm({ text: 'Add it?', usual: true });
    await vi.waitFor(() => expect(shown()).toContain('Type y or n.'));
    input.write('n\n');
    expect(await answer).toBe(false);
  });

  it('ends with one message where the person goes away', async () => {
    const { asker, input } = typed('');
    const answer = asker.text({ text: 'id' });
    input.end();
    await expect(answer).rejects.toThrow('Given up: nothing was written.');
  });
});
