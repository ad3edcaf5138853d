import { describe, expect, it } from 'vitest';
import { scanIds } from '../../src/entry/scan-ids.js';
import { isData } from '../../src/entry/yaml-text.js';
import { readDocument } from '../../src/source/document.js';
import { readStoreText } from '../../src/store/read.js';
import { DEMO } from '../demo/store.js';

describe('ids from the lines of a file', () => {
  it.each([
    ['- {id: A, part: x}\n- {id: "B 1", part: y}\n- id: C\n  part: z\n', ['A', 'B 1', 'C']],
    ['# Floor\n- {id: A,\n   part: x} # the first\n', ['A']],
    ['', []],
  ])('%j', (text, ids) => {
    expect(scanIds(text)).toEqual(ids);
  });

  it.each([
    ['- {part: x, id: A}\n'],
    ['members:\n  - {id: A}\n'],
    ['- {id: A} # id: B\n'],
    ['- &a {id: A}\n- *a\n'],
    ['- {id: A, note: "- # x"}\n'],
    ['- id: |\n   A\n'],
    ['[{id: A}]\n'],
  ])('are left to the reader where the lines leave a doubt: %j', (text) => {
    expect(scanIds(text)).toBeUndefined();
  });

  it('are those that the reader finds, in every list of the demo', async () => {
    const { files } = await readStoreText(DEMO);
    let scanned = 0;
    for (const [file, text] of files) {
      const { data } = readDocument(file, text);
      const ids = Array.isArray(data) ? scanIds(text) : undefined;
      if (ids === undefined) continue;
      scanned++;
      expect(ids, file).toEqual((data as unknown[]).flatMap((one) => (isData(one) ? String(one.id) : [])));
    }
    expect(scanned).toBeGreaterThan(20);
  });
});
