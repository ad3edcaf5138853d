import sharp, { type Sharp, type SharpOptions } from 'sharp';

/** Above this a picture is not opened at all: a small file may unpack to gigabytes. */
export const MOST_PIXELS = 120e6;

/** Why such a picture is refused; to follow its name. */
export const TOO_MANY_PIXELS = `has more than ${MOST_PIXELS / 1e6} million pixels`;

/** What cameras and phones write. The library reads drawings too, and a drawing takes other files of this machine into itself. */
const KINDS = ['Jpeg', 'Png', 'Webp', 'Tiff', 'Heif', 'Nsgif'];
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({ operation: KINDS.map((kind) => `VipsForeignLoad${kind}`) });

/** A picture of anybody's, whatever its name says that it is. Reading it fails where it is damaged, too large, or of another kind. */
export const openPicture = (given: Buffer | string, failOn: SharpOptions['failOn'] = 'truncated'): Sharp =>
  sharp(given, { limitInputPixels: MOST_PIXELS, failOn });

export const hasTooManyPixels = (error: unknown): boolean => error instanceof Error && /pixel limit/iu.test(error.message);
