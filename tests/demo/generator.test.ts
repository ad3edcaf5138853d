import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { plantedYaml } from '../../demo-data/make/ov024/files.js';
import { storeFiles } from '../../demo-data/make/store-files.js';
import { DEMO } from './store.js';

describe('demo-data/make', () => {
  it('writes what is committed', async () => {
    const files = await storeFiles(DEMO);
    const differ = [...files]
      .filter(([name, made]) => !readFileSync(path.join(DEMO, name)).equals(Buffer.from(made)))
      .map(([name]) => name);
    expect(differ).toEqual([]);
    expect(plantedYaml()).toBe(readFileSync(new URL('planted.yaml', import.meta.url), 'utf8'));
  }, 240_000);
});
