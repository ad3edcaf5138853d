import { describe, expect, test } from 'vitest';
import { canonical, canonicalRecords } from '../../src/archive/canonical.js';
import { fingerprint, sha256 } from '../../src/archive/fingerprint.js';
import { loadOne } from '../support/store.js';

describe('SHA-256', () => {
  test.each([
    // HSH-01 to HSH-04: FIPS 180-4, NIST examples
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
  ])('%#', (text, digest) => expect(sha256(text)).toBe(digest));
});

describe('canonical form', () => {
  test('numbers', () => {
    // HSH-05: RFC 8785 3.2.2.3
    expect(canonical(JSON.parse('[333333333.33333329,1E30,4.50,2e-3,1e-27,-0]'))).toBe(
      '[333333333.3333333,1e+30,4.5,0.002,1e-27,0]',
    );
  });

  test('keys are sorted by UTF-16 units, at every depth, without spaces', () => {
    // RFC 8785 3.2.3: the example's key order
    const keys = ['\u20ac', '\r', '\ufb33', '1', '\ud83d\ude00', '\u0080', '\u00f6'];
    const sorted = Object.keys(JSON.parse(canonical(Object.fromEntries(keys.map((key) => [key, 0])))) as object);
    expect(sorted).toEqual(['1', '\r', '\u0080', '\u00f6', '\u20ac', '\ud83d\ude00', '\ufb33']);
    expect(canonical({ b: [{ d: 1, c: null }], a: true })).toBe('{"a":true,"b":[{"c":null,"d":1}]}');
  });
});

describe('fingerprint of a shell', () => {
  const FILES: Readonly<Record<string, string>> = {
    'library/materials.yaml':
      '- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3}\n- {id: 5052-H32, kind: aluminium, density: 2680 kg/m3}\n',
    'library/sections.yaml': '- {id: RT, shape: rectangular tube, depth: 6 in, width: 2 in, wall: 1/4 in}\n',
    'shells/T-1/members.yaml':
      '- {id: M-2, section: RT, alloy: 6061-T6, from: [0, 0, 0], to: [1 m, 0, 0]}\n- {id: M-1, section: RT, alloy: 6061-T6, from: [0, 0, 0], to: [2 m, 0, 0]}\n',
    'shells/T-1/photos/photos.yaml': '- {id: P-1, file: P-1.jpg, of: [M-1]}\n',
    'shells/T-1/photos/P-1.jpg': 'x',
  };
  const PHOTO = 'shells/T-1/photos/P-1.jpg';
  const print = (files: Readonly<Record<string, string>>, photo = 'aa') =>
    fingerprint(loadOne(files).model, new Map([[PHOTO, photo]]));
  const whole = print(FILES);
  const member = FILES['shells/T-1/members.yaml'] as string;

  test('is 64 hex digits, the hash of the canonical lines', () => {
    const { model } = loadOne(FILES);
    const lines = canonicalRecords(model, new Map([[PHOTO, 'aa']]));
    expect(whole).toBe(sha256(lines.map(({ text }) => `${text}\n`).join('')));
    expect(whole).toMatch(/^[0-9a-f]{64}$/u);
  });

  test('comments, spaces, key order, record order and the split into files do not count', () => {
    const [first = '', second = ''] = member.split('\n');
    const other = {
      ...FILES,
      'shells/T-1/members.yaml': `# rails\n${second}\n`,
      'shells/T-1/members-b.yaml': `${first}   # left\n`,
    };
    expect(print(other)).toBe(whole);
    const turned = member.replace('- {id: M-2, section: RT,', '- {section: RT, id: M-2, ');
    expect(print({ ...FILES, 'shells/T-1/members.yaml': turned })).toBe(whole);
  });

  test('any record, any library record in use and any picture counts', () => {
    expect(print({ ...FILES, 'shells/T-1/members.yaml': member.replace('2 m', '2.001 m') })).not.toBe(whole);
    const sections = (FILES['library/sections.yaml'] as string).replace('1/4 in', '3/8 in');
    expect(print({ ...FILES, 'library/sections.yaml': sections })).not.toBe(whole);
    expect(print({ ...FILES, 'shells/T-1/shell.yaml': 'shell: T-1\ntitle: Another\n' })).not.toBe(whole);
    expect(print(FILES, 'ab')).not.toBe(whole);
    expect(fingerprint(loadOne(FILES).model)).not.toBe(whole);
  });

  test('a library record that nothing uses does not count', () => {
    const materials = (FILES['library/materials.yaml'] as string).replace('2680', '2690');
    expect(print({ ...FILES, 'library/materials.yaml': materials })).toBe(whole);
  });

  test('a changed record changes its own line and no other', () => {
    const lines = (files: Readonly<Record<string, string>>) => canonicalRecords(loadOne(files).model, new Map());
    const before = lines(FILES);
    const after = lines({ ...FILES, 'shells/T-1/members.yaml': member.replace('2 m', '3 m') });
    const changed = before.filter((one, i) => one.text !== after[i]?.text).map(({ kind, id }) => `${kind} ${id}`);
    expect(changed).toEqual(['member M-1']);
  });
});
