import { encode } from 'uqr';

/** Free modules around a code that a reader wants: ISO/IEC 18004 asks for four. */
const QUIET_MODULES = 4;

/** A QR code as an inline SVG of black squares, quiet zone included. Its text is plain words: no network is asked for anything. */
export function qrCode(text: string, sideMm: number): string {
  // Medium correction: a scratch or a drop of paint over a seventh of it does no harm.
  const { data, size } = encode(text, { ecc: 'M', border: QUIET_MODULES });
  let path = '';
  for (const [y, row] of data.entries()) {
    for (let x = 0; x < size; x++) {
      const from = x;
      while (x < size && row[x]) x++;
      if (x > from) path += `M${from} ${y}h${x - from}v1h-${x - from}z`;
    }
  }
  return `<svg xmlns="http://www.w3.org/2000/svg" class="code" role="img" width="${sideMm}mm" height="${sideMm}mm" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges"><path d="${path}" fill="#000"/></svg>`;
}
