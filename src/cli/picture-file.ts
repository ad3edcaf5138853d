import { readFileSync } from 'node:fs';
import path from 'node:path';
import { create, type Font } from 'fontkit';
import { packageFolder } from '../book/print/packaged.js';
import { line, type Mark, type Point, rectArea, type Scene, type TextMark } from '../drawing/scene.js';
import { CAPITAL_SHARE, TEXT_STYLES } from '../drawing/styles.js';
import { toSvg } from '../drawing/svg.js';
import { textHeightMm, textWidthMm } from '../drawing/text-width.js';
import { openPicture } from '../store/picture.js';

/** Long side of a picture that is written with an overlay, px. */
const LONGEST_PX = 2400;
const QUALITY = 88;

/**
 * A photo, upright and without what its file says of itself, with a scene laid over it: a JPEG. The words of the scene become outlines,
 * since the library that paints drawings knows only the typefaces of the machine.
 */
export async function pictureWith(bytes: Buffer, scene: Scene): Promise<Buffer> {
  const picture = (await openPicture(bytes))
    .rotate()
    .resize({ width: LONGEST_PX, height: LONGEST_PX, fit: 'inside', withoutEnlargement: true });
  const { data, info } = await picture.jpeg({ quality: 95 }).toBuffer({ resolveWithObject: true });
  const outlined = { ...scene, marks: scene.marks.flatMap((mark) => (mark.kind === 'text' ? outlinesOf(mark) : [mark])) };
  const svg = toSvg(outlined, { linkable: () => false }).replace(
    / width="[\d.]+mm" height="[\d.]+mm"/u,
    ` width="${info.width}" height="${info.height}"`,
  );
  const { default: sharp } = await import('sharp');
  return sharp(data)
    .composite([{ input: Buffer.from(svg), top: 0, left: 0 }])
    .jpeg({ quality: QUALITY })
    .toBuffer();
}

const FONTS = new Map<string, Font>();

function fontOf(bold: boolean): Font {
  const name = 'atkinson-hyperlegible-next';
  const file = `${name}-latin-${bold ? 700 : 400}-normal.woff`;
  const found =
    FONTS.get(file) ?? (create(readFileSync(path.join(packageFolder(`@fontsource/${name}`) as string, 'files', file))) as Font);
  FONTS.set(file, found);
  return found;
}

/** A line of text as filled shapes, with the white behind it. */
function outlinesOf(mark: TextMark): readonly Mark[] {
  const style = TEXT_STYLES[mark.style];
  const font = fontOf(style.bold);
  const perUnit = style.sizeMm / font.unitsPerEm;
  const width = textWidthMm(mark.text, mark.style);
  const start = mark.at[0] - (mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? width / 2 : width);
  const baseline = mark.at[1] + (style.sizeMm * CAPITAL_SHARE) / 2;
  const marks: Mark[] = [];
  if (mark.backed) {
    const half = textHeightMm(mark.style) / 2;
    const [x0, x1, y0, y1] = [start - 0.3, start + width + 0.3, mark.at[1] - half, mark.at[1] + half];
    marks.push(
      rectArea(mark.layer, 'weld-backing', [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ]),
    );
  }
  const { glyphs, positions } = font.layout(mark.text);
  let x = start;
  glyphs.forEach((glyph, i) => {
    const rings = ringsOf(glyph.path.commands).map((ring) =>
      ring.map(([a, b]): Point => [x + a * perUnit, baseline - b * perUnit]),
    );
    if (rings.length > 0) marks.push({ ...line(mark.layer, 'glyph', []), rings, closed: true, widthMm: 0 });
    x += (positions[i]?.xAdvance ?? 0) * perUnit;
  });
  return marks;
}

/** Pieces that a curve of a letter is made of: enough for letters a few millimetres high. */
const PIECES = 6;

interface PathCommand {
  readonly command: string;
  readonly args: readonly number[];
}

function ringsOf(commands: readonly PathCommand[]): readonly (readonly Point[])[] {
  const rings: Point[][] = [];
  for (const { command, args } of commands) {
    const ring = rings.at(-1);
    const from = ring?.at(-1);
    if (command === 'moveTo') rings.push([[args[0] as number, args[1] as number]]);
    else if (command === 'lineTo') ring?.push([args[0] as number, args[1] as number]);
    else if (from && command !== 'closePath') {
      const points = [from, ...pairs(args)];
      for (let k = 1; k <= PIECES; k++) ring?.push(onCurve(points, k / PIECES));
    }
  }
  return rings;
}

const pairs = (args: readonly number[]): readonly Point[] =>
  Array.from({ length: args.length / 2 }, (_, i) => [args[2 * i] as number, args[2 * i + 1] as number]);

/** De Casteljau’s construction. */
function onCurve(points: readonly Point[], t: number): Point {
  if (points.length === 1) return points[0] as Point;
  return onCurve(
    points.slice(1).map(([x, y], i) => {
      const [a, b] = points[i] as Point;
      return [a + (x - a) * t, b + (y - b) * t];
    }),
    t,
  );
}
