/** DER (ITU-T X.690) of the few values that are put together by hand. */

/** A value with its tag and its length. */
export function tlv(tag: number, ...parts: readonly Uint8Array[]): Buffer {
  const value = Buffer.concat(parts);
  return Buffer.concat([Buffer.from([tag]), lengthOf(value.length), value]);
}

function lengthOf(length: number): Buffer {
  if (length < 0x80) return Buffer.from([length]);
  const digits: number[] = [];
  for (let left = length; left > 0; left = Math.floor(left / 256)) digits.unshift(left % 256);
  return Buffer.from([0x80 | digits.length, ...digits]);
}

/** SET OF: members in ascending order of their bytes (X.690, 11.6), which is what makes the same set the same bytes. */
export const setOf = (members: readonly Uint8Array[]): Buffer =>
  tlv(0x31, ...members.map((one) => Buffer.from(one)).sort(Buffer.compare));
