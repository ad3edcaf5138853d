import sharp from 'sharp';

/** What the colours of a book mean, as the output intent names it. */
export const COLOUR_SPACE = 'sRGB IEC61966-2.1';

/** The ICC profile of sRGB (IEC 61966-2-1) that the picture library has built in: a compact one, ICC version 4, in the public domain. */
export async function colourProfile(): Promise<Uint8Array> {
  const dot = sharp({ create: { width: 1, height: 1, channels: 3, background: '#ffffff' } });
  const { icc } = await sharp(await dot.withIccProfile('srgb').png().toBuffer()).metadata();
  if (!icc) throw new Error('The picture library gives no profile for sRGB');
  return icc;
}
