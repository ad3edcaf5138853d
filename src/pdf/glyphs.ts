/**
 * True where a page's instructions show glyph 0 of a font by its number, two bytes a glyph (`<000A0000> Tj`): what the browser writes for
 * a sign that no font has. Each byte is looked at once.
 */
export function lacksGlyph(bytes: Uint8Array): boolean {
  let digits = -1;
  let glyph = 0;
  let lacking = false;
  for (let at = 0; at < bytes.length; at++) {
    const byte = bytes[at] as number;
    if (byte === LESS) {
      digits = 0;
      glyph = 0;
      lacking = false;
    } else if (digits >= 0) {
      const digit = HEX[byte] ?? -1;
      if (digit >= 0) {
        glyph = digits % 4 === 0 ? digit : glyph + digit;
        digits++;
        if (digits % 4 === 0 && glyph === 0) lacking = true;
      } else {
        if (byte === MORE && lacking && digits % 4 === 0 && isShown(bytes, at + 1)) return true;
        digits = -1;
      }
    }
  }
  return false;
}

const [LESS, MORE] = [0x3c, 0x3e];
/** Upper-case digits, as the browser writes them. */
const HEX: Readonly<Record<number, number>> = Object.fromEntries(
  [...'0123456789ABCDEF'].map((sign, value) => [sign.charCodeAt(0), value]),
);

/** ` Tj` stands there. */
const isShown = (bytes: Uint8Array, at: number): boolean =>
  bytes[at] === 0x20 && bytes[at + 1] === 0x54 && bytes[at + 2] === 0x6a;
