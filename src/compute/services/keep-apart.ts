import type { KeepApart } from '../../records/index.js';

/**
 * Which media keep apart where the shop does not say otherwise. Low voltage and data at least 13 mm (1/2 in) from the conductors of
 * another source, or one of the two in a sheath: NEC 551.10(C), unverified citation. Gas 2 in from AC, and low voltage in
 * cavities of its own: common practice, no source.
 */
const KEEP_APART: readonly KeepApart[] = [
  { media: ['gas', 'ac'], distanceMm: 50.8 },
  { media: ['dc', 'ac'], distanceMm: 12.7, shareZone: false },
  { media: ['data', 'ac'], distanceMm: 12.7 },
];

const samePair = (a: KeepApart, b: KeepApart): boolean => [...a.media].sort().join() === [...b.media].sort().join();

/** The shop's list adds to the defaults; what it says of a pair overrides that pair alone, key by key. */
export function keepApartOf(shops: readonly KeepApart[]): readonly KeepApart[] {
  const kept = KEEP_APART.map((one): KeepApart => {
    const own = shops.find((shop) => samePair(shop, one));
    const { distanceMm = one.distanceMm, shareZone = one.shareZone } = own ?? {};
    return {
      media: one.media,
      ...(distanceMm === undefined ? {} : { distanceMm }),
      ...(shareZone === undefined ? {} : { shareZone }),
    };
  });
  return [...kept, ...shops.filter((own) => !KEEP_APART.some((one) => samePair(own, one)))];
}

/** A sheath stands for the gap between wires; between wires and pipes it does not. */
export const sheathServes = ({ media }: KeepApart): boolean => media.every((one) => ['dc', 'ac', 'data'].includes(one));
