import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { openKeep } from '../../src/page/keep.js';
import { zoomed } from '../../src/page/pan-zoom.js';
import { monthsBetween } from '../../src/page/pocket/age.js';
import { numberIn } from '../../src/page/pocket/gauges.js';
import { inUnits } from '../../src/page/pocket/unit-order.js';
import { sha256Hex } from '../../src/page/sha256.js';

describe('the digest of a page without the browser’s cryptography', () => {
  // FIPS 180-4, examples of NIST: SHA-256 of `abc`, of nothing and of the message of two blocks.
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of “%s”', (text, digest) => {
    expect(sha256Hex(new TextEncoder().encode(text))).toBe(digest);
  });

  it('is Node’s for every length about a block', () => {
    for (let length = 0; length < 200; length++) {
      const bytes = Uint8Array.from({ length }, (_, i) => (i * 37 + length) % 256);
      expect(sha256Hex(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
    }
  });
});

describe('zooming', () => {
  const whole = { x: 0, y: 0, width: 1000, height: 400 };
  it('keeps the place under the fingers where it is, within the whole', () => {
    const near = zoomed(whole, whole, 2, [400, 100]);
    expect([near.width, near.height]).toEqual([500, 200]);
    expect((400 - near.x) / near.width).toBeCloseTo(0.4, 9);
    expect(zoomed(near, whole, 0.1, [0, 0])).toEqual(whole);
    expect(zoomed(whole, whole, 1e9, [1000, 400]).width).toBe(25);
  });
});

describe('units in the other order', () => {
  // 1 in is 25.4 mm and 1 lb 0.45359237 kg (NIST SP 811, appendix B.8).
  it.each([
    ['14 in (356 mm) × 18 in (457 mm)', '356 mm (14 in) × 457 mm (18 in)'],
    ['x 145.0, y −36.0, z 0.5 in (x 3,683, y −914, z 11 mm)', 'x 3,683, y −914, z 11 mm (x 145.0, y −36.0, z 0.5 in)'],
    ['148 ft·lb (201 N·m); 27 in·lb (3 N·m)', '201 N·m (148 ft·lb); 3 N·m (27 in·lb)'],
    ['6 ft 7-1/8 in (2,010 mm)', '2,010 mm (6 ft 7-1/8 in)'],
    ['38,102 lb (17,283 kg)', '17,283 kg (38,102 lb)'],
    ['floor, 6 ft 7-1/8 in above the floor', 'floor, 2,010 mm (6 ft 7-1/8 in) above the floor'],
    ['pared, 8-3/4 in sobre el piso', 'pared, 222 mm (8-3/4 in) sobre el piso'],
    ['U-bolt, 5/8 in grade 8 (note 3 in it)', 'U-bolt, 5/8 in grade 8 (note 3 in it)'],
  ])('%s', (us, metric) => {
    expect(inUnits(us, 'metric')).toBe(metric);
    if (us.includes(') ') || us.endsWith(')')) expect(inUnits(metric, 'us')).toBe(us);
    expect(inUnits(metric, 'metric')).toBe(metric);
  });
  it('turns heights back', () => {
    expect(inUnits('floor, 2,010 mm above the floor', 'us')).toBe('floor, 6 ft 7-1/8 in (2,010 mm) above the floor');
  });
});

describe('what the phone keeps', () => {
  it('is there for the page alone where storage is refused, and full storage is said', () => {
    const refused = openKeep('a ', () => {
      throw new Error('refused');
    });
    expect([refused.lasts, refused.put('k', 'v'), refused.get('k')]).toEqual([false, false, 'v']);
    const held = new Map<string, string>();
    const storage = {
      getItem: (key: string) => held.get(key) ?? null,
      removeItem: (key: string) => void held.delete(key),
      setItem(key: string, text: string) {
        if (text.length > 10) throw new Error('full');
        held.set(key, text);
      },
    } as unknown as Storage;
    const keep = openKeep('a ', () => storage);
    expect([keep.lasts, keep.put('k', 'v'), held.get('a k')]).toEqual([true, true, 'v']);
    expect([keep.put('k', 'x'.repeat(11)), keep.get('k')]).toEqual([false, 'x'.repeat(11)]);
  });
});

describe('figures that are typed, and months', () => {
  it('reads a number with either point, nothing as none, and no other text', () => {
    expect(['', ' 12 ', '12.5', '12,5', '-1', '1e3', 'ten'].map(numberIn)).toEqual([
      0,
      12,
      12.5,
      12.5,
      undefined,
      undefined,
      undefined,
    ]);
  });
  it('counts whole months', () => {
    const on = (day: string): number => monthsBetween('2026-07-10', new Date(`${day}T12:00:00`));
    expect(['2026-07-09', '2026-08-09', '2026-08-10', '2027-08-11'].map(on)).toEqual([0, 0, 1, 13]);
  });
});
