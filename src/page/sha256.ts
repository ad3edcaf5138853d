/** SHA-256 (FIPS 180-4) in lower-case hexadecimal: a page that was opened from a file has no cryptography of the browser's. */
export function sha256Hex(bytes: Uint8Array): string {
  const state = Uint32Array.from(FIRST);
  const words = new Uint32Array(64);
  const padded = pad(bytes);
  for (let at = 0; at < padded.length; at += 64) compress(state, words, padded, at);
  return [...state].map((word) => word.toString(16).padStart(8, '0')).join('');
}

/** The first 32 bits of the fractional parts of roots of the first primes: square roots, then cube roots. */
const PRIMES = primes(64);
const fraction = (value: number): number => Math.floor((value - Math.floor(value)) * 2 ** 32);
const FIRST = PRIMES.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));
const ROUND = PRIMES.map((prime) => fraction(Math.cbrt(prime)));

function primes(count: number): readonly number[] {
  const found: number[] = [];
  for (let one = 2; found.length < count; one++) if (found.every((prime) => one % prime !== 0)) found.push(one);
  return found;
}

function pad(bytes: Uint8Array): Uint8Array {
  const padded = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const bits = new DataView(padded.buffer);
  bits.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  bits.setUint32(padded.length - 4, (bytes.length * 8) >>> 0);
  return padded;
}

const turn = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

function compress(state: Uint32Array, w: Uint32Array, bytes: Uint8Array, at: number): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset + at, 64);
  for (let i = 0; i < 16; i++) w[i] = view.getUint32(4 * i);
  for (let i = 16; i < 64; i++) {
    const [a, b] = [w[i - 15] as number, w[i - 2] as number];
    const s0 = turn(a, 7) ^ turn(a, 18) ^ (a >>> 3);
    const s1 = turn(b, 17) ^ turn(b, 19) ^ (b >>> 10);
    w[i] = (w[i - 16] as number) + s0 + (w[i - 7] as number) + s1;
  }
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number];
  for (let i = 0; i < 64; i++) {
    const s1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
    const one = (h + s1 + ((e & f) ^ (~e & g)) + (ROUND[i] as number) + (w[i] as number)) | 0;
    const s0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
    const two = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + two) | 0];
  }
  for (const [i, add] of [a, b, c, d, e, f, g, h].entries()) state[i] = (state[i] as number) + add;
}
