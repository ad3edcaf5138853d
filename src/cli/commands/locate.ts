import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly photo: string;
  readonly px: readonly [number, number];
  readonly on: string;
}

export function declareLocate(registry: Registry): void {
  registry
    .add('locate <shell> <photo> <u,v>', 'the place on a panel, member or zone that a point in a photo shows', [
      'shellbook locate QF-007 P-0231 1310,402 --on BP-04',
    ])
    .requiredOption('--on <id>', 'the panel, member or zone that the point lies on')
    .action(
      registry.run(
        ([shell, photo, px], { on }) => ({
          shell: shell as string,
          photo: photo as string,
          px: pixelOption(px as string),
          on: on as string,
        }),
        locate,
      ),
    );
}

/** `1310,402`. Throws {@link UserError}. */
export function pixelOption(typed: string): readonly [number, number] {
  const [, u, v] = /^\s*(\d+(?:\.\d+)?)\s*,\s*(\d+(?:\.\d+)?)\s*$/u.exec(typed) ?? [];
  if (u === undefined || v === undefined)
    throw new UserError(`Found \`${typed}\` for the point; should be column and row in the picture, as 1310,402`);
  return [Number(u), Number(v)];
}

async function locate({ shell, photo, px, on }: Options, context: Context): Promise<Status> {
  const [{ openPhoto }, { locateInPhoto }] = await Promise.all([
    import('../solved-photo.js'),
    import('../../compute/pictures/locate.js'),
  ]);
  const { opened, fitted } = await openPhoto(shell, photo, context);
  const solved = await fitted();
  const { model } = opened.assessment;
  if (!model.shell.byId.has(on)) throw new UserError(`No record ${on} in ${shell}: --on takes the id of a panel, member or zone`);
  const { widthPx, heightPx } = solved.facts;
  if (px[0] > widthPx || px[1] > heightPx)
    throw new UserError(`The point ${px.join(',')} is outside photo ${photo}, which is ${widthPx} by ${heightPx} px`);
  const found = locateInPhoto(model, solved, px, on);
  if (!('at' in found) && found.why === 'no surface')
    throw new UserError(`${on} has no recorded surface: --on takes a panel, member or zone`);
  if (context.settings.json) {
    const { locateJson } = await import('../report/overlay-json.js');
    context.print(locateJson(shell, { solved, px, on, found }, opened.revision));
  } else {
    const { locateText } = await import('../report/locate-text.js');
    context.print(locateText(solved, on, found, model.shop.units));
  }
  return 'at' in found ? 0 : 1;
}
