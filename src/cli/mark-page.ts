import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import Handlebars from 'handlebars';
import { isPoint, knownPoint } from '../compute/pictures/known-points.js';
import type { SolvedPhoto } from '../compute/pictures/solve-photo.js';
import { distance, type Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import type { MarkPageData } from '../page/mark-data.js';
import type { SeenPoint } from '../records/photo.js';
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
    points: namesFor(model, photo.of).map((seen) => ({ label: labelOf(seen), as: typedAs(seen) })),
    picked: (photo.seen ?? []).flatMap((seen) => (seen.is === undefined ? [] : [{ as: typedAs(seen), px: seen.px }])),
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

type Named = Omit<SeenPoint, 'px'>;

const labelOf = ({ is, end, corner }: Named): string => `${is}${end ? ` ${end} end` : corner ? ` corner ${corner}` : ''}`;
const typedAs = ({ is, end, corner }: Named): string => `is: ${is}${end ? `, end: ${end}` : corner ? `, corner: ${corner}` : ''}`;

/** Every point that a record of the shell gives, those nearest to what the photo is of first. */
function namesFor(model: Model, of: readonly string[]): readonly Named[] {
  const { shell } = model;
  const all: Named[] = [
    ...shell.nodes.map(({ id }) => ({ is: id })),
    ...shell.members.flatMap(({ id, shape }) =>
      shape.kind === 'plate'
        ? []
        : (Math.abs(shape.to[2] - shape.from[2]) > 1 ? (['low', 'high'] as const) : (['from', 'to'] as const)).map((end) => ({
            is: id,
            end,
          })),
    ),
    ...shell.panels.flatMap(({ id, outline }) => outline.map((_, i) => ({ is: id, corner: i + 1 }))),
    ...shell.openings.flatMap(({ id }) => [1, 2, 3, 4].map((corner) => ({ is: id, corner }))),
  ];
  const placed = all.flatMap((named) => {
    const point = knownPoint(model, { ...named, px: [0, 0] });
    return isPoint(point) ? [{ named, at: point.at }] : [];
  });
  const subjects = placed.filter(({ named }) => named.is !== undefined && of.includes(named.is)).map(({ at }) => at);
  const away = (at: Vec3): number => Math.min(...subjects.map((one) => distance(at, one)));
  const sorted = subjects.length > 0 ? [...placed].sort((a, b) => away(a.at) - away(b.at)) : placed;
  return sorted.slice(0, MOST_POINTS).map(({ named }) => named);
}
