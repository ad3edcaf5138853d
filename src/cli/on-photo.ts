import { locateInPhoto } from '../compute/pictures/locate.js';
import { typedOrigin } from '../model/typed-origin.js';
import { UserError } from '../user-error.js';
import { pixelOption } from './commands/locate.js';
import type { Context } from './context.js';
import { locateText } from './report/locate-text.js';
import { openPhoto } from './solved-photo.js';

/**
 * The options of `add` that a point of a photo stands for: `--at` in the shell's own datum and `--tolerance`, both rounded to whole
 * millimetres, the second up. Throws {@link UserError} where the photo or the surface gives no place.
 */
export async function fieldsOnPhoto(
  shell: string,
  typed: readonly string[],
  on: string | undefined,
  context: Context,
): Promise<readonly string[]> {
  const [photo, point] = typed;
  if (photo === undefined || point === undefined || typed.length > 2)
    throw new UserError(`Found \`${typed.join(' ')}\` for --on-photo; should be a photo and a point, as P-0231 1310,402`);
  if (on === undefined) throw new UserError('On what does the point lie? Name the panel, member or zone, as --on BP-04');
  const px = pixelOption(point);
  const { opened, fitted } = await openPhoto(shell, photo, context);
  const solved = await fitted();
  const { model } = opened.assessment;
  const found = locateInPhoto(model, solved, px, on);
  if (!('at' in found)) throw new UserError(locateText(solved, on, found, model.shop.units));
  const origin = typedOrigin(model.shell);
  const at = found.at.map((value, i) => `${Math.round(value - (origin[i] as number))} mm`).join(', ');
  return ['--at', at, '--tolerance', `${Math.ceil(found.uncertaintyMm)} mm`];
}
