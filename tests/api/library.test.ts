import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { decided, openStore, parseQuantity, RULES, storeFromText, UserError, where } from '../../src/index.js';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const STORE = {
  'shop.yaml': 'shop: {name: Test shop}\n',
  'library/materials.yaml': '- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3, modulus: 69 GPa}\n',
  'library/sections.yaml': '- {id: B, shape: flat bar, depth: 100 mm, width: 10 mm}\n',
  'shells/A-1/shell.yaml': 'shell: A-1\n',
  'shells/A-1/members.yaml':
    '- {id: M-1, part: rail, section: B, alloy: 6061-T6, from: [0 mm, 0 mm, 0 mm], to: [2 m, 0 mm, 0 mm]}\n- {id: M-2, lenght: 3 in}\n',
};

describe('shellbook as a library', () => {
  it('computes from text alone, in SI', () => {
    const store = storeFromText(STORE);
    expect(store.shells).toEqual(['A-1']);
    const { figures, findings } = store.assess('A-1');
    // 100 × 10 mm flat, 2 m, 2700 kg/m³: 5.4 kg.
    expect(figures.takeOff.total.massKg).toBeCloseTo(5.4, 9);
    expect(findings.find(({ rule }) => rule === 'format.unknown-key')).toMatchObject({
      severity: 'error',
      place: { file: 'shells/A-1/members.yaml', line: 2 },
    });
  });
  it('names the nearest shell where there is none', () => {
    expect(() => storeFromText(STORE).assess('A-2')).toThrow(UserError);
    expect(() => storeFromText(STORE).assess('A-2')).toThrow('did you mean A-1');
  });
  it('reads a folder, and answers as the commands do', async () => {
    const store = await openStore(path.join(ROOT, 'demo-data'));
    expect(store.shells).toContain('OV-021');
    expect(store.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const assessment = store.assess('OV-021');
    expect(where(assessment, 'DC-21/S1')[0]).toMatchObject({ id: 'DC-21/S1', kind: 'node' });
    expect(decided(assessment).filter(({ severity }) => severity === 'error')).toEqual([]);
  });
  it('tells what the rules are, and reads quantities', () => {
    expect(new Set(RULES.map(({ name }) => name)).size).toBe(RULES.length);
    expect(parseQuantity('5-1/4 in', 'length')).toMatchObject({ ok: true, value: 133.35 });
  });
  it('is found under its name once built, with its types', () => {
    const script = `import { storeFromText } from 'shellbook';
      const { figures } = storeFromText(${JSON.stringify(STORE)}).assess('A-1');
      process.stdout.write(figures.takeOff.total.massKg.toFixed(1));`;
    const said = execFileSync(process.execPath, ['--input-type=module', '-e', script], { cwd: ROOT, encoding: 'utf8' });
    expect(said).toBe('5.4');
  });
});
