import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import Handlebars from 'handlebars';
import { namedPoints, type PointName, pointLabel, pointTyped } from '../compute/pictures/point-names.js';
import type { SolvedPhoto } from '../compute/pictures/solve-photo.js';
import { distance, type Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import type { MarkPageData } from '../page/mark-data.js';
import { openPicture } from '../store/picture.js';
import { pageScript } from './page-script.js';

/** Long side of the picture in the page, px: a loupe of four times still shows more than a screen does. */
const LONGEST_PX = 2400;
const MOST_POINTS = 4000;

/** One file for a browser, without any request: pick points in a photo, get the lines of `seen` back. */
export async function markPage(model: Model, { photo, facts }: SolvedPhoto, bytes: Buffer): Promise<string> {
  const picture = await (await openPicture(bytes))
    .rotate()
    .resize({ width: LONGEST_PX, height: LONGEST_PX, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 82 })
    .toBuffer();
  const data: MarkPageData = {
    photo: photo.id,
    widthPx: facts.widthPx,
    heightPx: facts.heightPx,
    points: namesFor(model, photo.of).map((seen) => ({ label: pointLabel(seen), as: pointTyped(seen) })),
    picked: (photo.seen ?? []).flatMap((seen) =>
      seen.is === undefined ? [] : [{ as: pointTyped({ ...seen, is: seen.is }), px: seen.px }],
    ),
  };
  const folder = new URL('../../templates/', import.meta.url);
  const style = readFileSync(new URL('mark.css', folder), 'utf8');
  const script = (await pageScript('mark')).replaceAll('</script', '<\\/script');
  const template = Handlebars.compile(readFileSync(new URL('mark.hbs', folder), 'utf8'), { strict: true });
  return template({
    ...data,
    shell: model.shell.id,
    caption: photo.caption ?? photo.view ?? '',
    picture: `data:image/jpeg;base64,${picture.toString('base64')}`,
    style,
    script,
    styleHash: hashOf(style),
    scriptHash: hashOf(script),
    // Within a script element nothing may look like its end.
    json: JSON.stringify(data).replaceAll('<', '\\u003c'),
  });
}

const hashOf = (text: string): string => `sha256-${createHash('sha256').update(text).digest('base64')}`;

/** Every point that a record of the shell gives, those nearest to what the photo is of first. */
function namesFor(model: Model, of: readonly string[]): readonly PointName[] {
  const placed = namedPoints(model);
  const subjects = placed.filter(({ named }) => of.includes(named.is)).map(({ at }) => at);
  const away = (at: Vec3): number => Math.min(...subjects.map((one) => distance(at, one)));
  const sorted = subjects.length > 0 ? [...placed].sort((a, b) => away(a.at) - away(b.at)) : placed;
  return sorted.slice(0, MOST_POINTS).map(({ named }) => named);
}
