import { anchor } from '../model/anchor.js';
import type { CircleMark, Mark, Point, Scene, ShapeMark, TextMark } from './scene.js';
import { CAPITAL_SHARE, LAYERS, PENS, type Pen, PLANNED_DASH, TEXT_STYLES } from './styles.js';
import { textHeightMm, textWidthMm } from './text-width.js';

export interface SvgOptions {
  /** Whether a record has a home in the book; only then is its mark a link. */
  readonly linkable: (id: string) => boolean;
}

const FACE = "'Atkinson Hyperlegible Next', sans-serif";

/** XML 1.0 production 2 (Char): what cannot stand in XML at all, even escaped. Lone surrogates are among them. */
const allowed = (code: number): boolean =>
  code === 0x9 ||
  code === 0xa ||
  code === 0xd ||
  (code >= 0x20 && code <= 0xd7ff) ||
  (code >= 0xe000 && code <= 0xfffd) ||
  code >= 0x10000;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

export function escapeXml(words: string): string {
  let out = '';
  for (const sign of words) out += allowed(sign.codePointAt(0) as number) ? (ENTITIES[sign] ?? sign) : '\ufffd';
  return out;
}

/** At most two decimals, no trailing zeros, no minus zero. */
export function mm(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}

/** A scene as one SVG element: inline attributes only, sizes in millimetres, no scripts, no references outside. */
export function toSvg(scene: Scene, options: SvgOptions): string {
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" class="sb-drawing" role="img" aria-label="${escapeXml(nameOf(scene))}" width="${mm(scene.widthMm)}mm" height="${mm(scene.heightMm)}mm" viewBox="0 0 ${mm(scene.widthMm)} ${mm(scene.heightMm)}" font-family="${FACE}" fill="none" stroke-linejoin="round" stroke-linecap="butt">`,
    `<title>${escapeXml(scene.title)}</title>`,
  ];
  for (const layer of LAYERS) {
    const marks = scene.marks.filter((mark) => mark.layer === layer);
    if (marks.length > 0) parts.push(`<g class="sb-${layer}">${layerText(marks, options)}</g>`);
  }
  parts.push('</svg>');
  return parts.join('\n');
}

/** What a screen reader says of the drawing: a PDF file has one text for it, so that title and description are one. */
const nameOf = ({ title, alt }: Scene): string => (alt === title || alt.startsWith(title) ? alt : `${title}. ${alt}`);

/** Neighbours with the same pen share a group, which keeps long drawings short. */
function layerText(marks: readonly Mark[], options: SvgOptions): string {
  const parts: string[] = [];
  let open = '';
  for (const mark of marks) {
    const wanted = mark.kind === 'text' ? '' : penAttributes(penOf(mark));
    if (wanted !== open) {
      if (open) parts.push('</g>');
      if (wanted) parts.push(`<g${wanted}>`);
      open = wanted;
    }
    parts.push(linked(mark, markText(mark), options));
  }
  if (open) parts.push('</g>');
  return parts.join('');
}

const penOf = ({ pen, planned }: ShapeMark | CircleMark): Pen => (planned ? { ...PENS[pen], dash: PLANNED_DASH } : PENS[pen]);

function penAttributes(pen: Pen): string {
  const fill = pen.fill ? ` fill="${pen.fill}"` : '';
  const dash = pen.dash ? ` stroke-dasharray="${pen.dash.map(mm).join(' ')}"` : '';
  return ` stroke="${pen.colour}" stroke-width="${mm(pen.widthMm)}"${fill}${dash}`;
}

function linked(mark: Mark, inner: string, options: SvgOptions): string {
  if (mark.id === undefined || !options.linkable(mark.id)) return inner;
  return `<a href="#${anchor(mark.id)}">${inner}</a>`;
}

function markText(mark: Mark): string {
  if (mark.kind === 'text') return textMark(mark);
  if (mark.kind === 'circle') return circleMark(mark);
  return shapeMark(mark);
}

function circleMark(mark: CircleMark): string {
  return `<circle cx="${mm(mark.center[0])}" cy="${mm(mark.center[1])}" r="${mm(mark.radiusMm)}"/>`;
}

const ring = (points: readonly Point[], closed: boolean): string =>
  `M${points.map(([x, y]) => `${mm(x)} ${mm(y)}`).join('L')}${closed ? 'Z' : ''}`;

function shapeMark(mark: ShapeMark): string {
  const d = mark.rings.map((points) => ring(points, mark.closed)).join('');
  const many = mark.closed && mark.rings.length > 1 ? ' fill-rule="evenodd"' : '';
  const open = mark.closed ? '' : ' fill="none"';
  const width = mark.widthMm === undefined ? '' : ` stroke-width="${mm(mark.widthMm)}"`;
  const path = `<path d="${d}"${many}${open}${width}/>`;
  const core = PENS[mark.pen].core;
  return core ? `${path}<path d="${d}" fill="none" stroke="${core.colour}" stroke-width="${mm(core.widthMm)}"/>` : path;
}

const ANCHORS = { start: 0, middle: 0.5, end: 1 } as const;

function textMark(mark: TextMark): string {
  const style = TEXT_STYLES[mark.style];
  const [x, y] = mark.at;
  const width = textWidthMm(mark.text, mark.style);
  const height = textHeightMm(mark.style);
  // The baseline lies half of the capitals' height below their middle.
  const baseline = y + (style.sizeMm * CAPITAL_SHARE) / 2;
  const turn = mark.upright ? ` transform="rotate(-90 ${mm(x)} ${mm(y)})"` : '';
  const back = mark.backed
    ? `<rect x="${mm(x - width * ANCHORS[mark.anchor] - 0.2)}" y="${mm(y - height / 2)}" width="${mm(width + 0.4)}" height="${mm(height)}" fill="#ffffff"${turn}/>`
    : '';
  const weight = style.bold ? ' font-weight="700"' : '';
  const anchored = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`;
  return `${back}<text x="${mm(x)}" y="${mm(baseline)}" font-size="${mm(style.sizeMm)}" fill="${style.colour}"${weight}${anchored}${turn}>${escapeXml(mark.text)}</text>`;
}
