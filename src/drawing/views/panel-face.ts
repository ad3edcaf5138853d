import type { Assessment } from '../../assess.js';
import { type Surface, surfaceWords } from '../../compute/access/surfaces.js';
import type { BehindItem } from '../../compute/access/types.js';
import { planarPolygon } from '../../geometry/polygon.js';
import { length } from '../../quantity/format.js';
import type { Member, Panel, ServiceNode } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { usedBounds } from '../crop.js';
import { acrossDimension, uprightDimension } from '../dimensions.js';
import type { LabelWish } from '../labels.js';
import { spreadLines } from '../lanes.js';
import { legendMarks } from '../legend.js';
import { surfaceOf } from '../marks/panels.js';
import { RunLetters } from '../marks/run-letters.js';
import type { MEDIUM_STYLES } from '../media.js';
import { alongLine, clipLine, clipRing, lineLengthMm } from '../outline.js';
import { project, type View, viewOfSurface } from '../projection.js';
import { growRect, line, type Mark, type Point, type Rect, rectAbout, rectArea, rectangle } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { NODE_SYMBOL_MM, nodeMarks, symbolsOf } from '../symbols.js';
import { farthestFirst, silhouette } from '../visibility.js';
import { surfaceNote } from './panels.js';

/** How much is shown around the panel's outline, as a share of its larger side. */
const AROUND = 0.12;
const NEAR_MM = 150;
/** Where along a run its letter may stand. */
const LETTER_AT = [0.15, 0.85, 0.32, 0.68, 0.5, 0.24, 0.76, 0.41, 0.59] as const;
/** A letter hides no other run that comes so near, mm. */
const LETTER_CLEAR_MM = 1.4;
const ALONG = [0.35, 0.65, 0.2, 0.8, 0.08, 0.92] as const;

interface Window {
  readonly a: Assessment;
  readonly port: Port;
  /** What is seen, on the sheet. */
  readonly frame: Rect;
  readonly items: readonly BehindItem[];
}

/** One access panel as seen from outside, with what is behind it drawn through it. */
export function panelFace(a: Assessment, panelId: string, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { model } = a;
  const panel = model.shell.panels.find(({ id }) => id === panelId);
  if (!panel) return missing(a, panelId, sheet, options);
  const surface = surfaceOf(panel, model);
  const view = viewOfSurface(surface);
  const flat = rectAbout(panel.outline.map((corner) => project(view, corner))) as Rect;
  const around = AROUND * Math.max(flat.x1 - flat.x0, flat.y1 - flat.y0);
  const layout = layOut([{ view, bounds: growRect(flat, around) }], sheet, { sideMm: 15, aboveMm: 8, belowMm: 8, mostMm: 20 });
  const port = layout.ports[0] as Port;
  const items = a.figures.access.behind[panelId] ?? [];
  const scene: Window = { a, port, frame: port.frame, items };
  const members = membersBehind(scene, view);
  const services = servicesBehind(scene);
  const outline = panel.outline.map(port.place);
  const inner = openingRect(panel, view, port);
  const media = [...new Set(services.media)];
  const named = services.wishes.length + members.wishes.length;
  const legend = legendMarks(media, symbolsOf(services.nodes), [2, 3], sheet.widthMm - 4);
  const legendMm = (usedBounds(legend)?.y1 ?? 4) + 1;
  return compose(
    {
      id: `face-${panelId}`,
      title: `Behind ${panelId}`,
      alt: faceAlt(panel, surface, items),
      ...layout,
      room: { ...layout.room, y0: layout.room.y0 + legendMm },
      front: view.front,
      units: model.shop.units,
      marks: [
        ...members.marks,
        ...services.marks,
        rectArea('dimensions', 'edge', outline, panelId),
        ...(inner ? [rectangle('dimensions', 'nominal', inner), ...openingDimensions(panel, inner, port, a)] : []),
        rectangle('dimensions', 'centre', port.frame),
      ],
      legend,
      wishes: nearestFirst([...services.wishes, ...members.wishes]),
      notes: [
        named > MOST_NAMES ? `${named - MOST_NAMES} more names in the list.` : '',
        items.length === 0 ? 'Nothing on record within reach behind this panel.' : surfaceNote(surface, model),
        `Heavy: panel.${inner ? ' Dashed: clear opening.' : ''}`,
      ].filter(Boolean),
      rest: 'in the list beside',
    },
    options,
  );
}

/** More names than this on so small a sheet help nobody: the list beside has them all. */
const MOST_NAMES = 12;
const nearestFirst = (wishes: readonly LabelWish[]): readonly LabelWish[] =>
  [...wishes].sort((a, b) => b.priority - a.priority).slice(0, MOST_NAMES);

const faceAlt = (panel: Panel, surface: Surface, items: readonly BehindItem[]): string =>
  `Access panel ${panel.id} on the ${surfaceWords(surface)}, seen from ${surface.seenFrom}, with ${items.length} things behind it${
    items.length > 0
      ? `: ${items
          .slice(0, 8)
          .map((item) => item.id)
          .join(', ')}${items.length > 8 ? ' and more' : ''}`
      : ''
  }.`;

function membersBehind({ a, port, frame, items }: Window, view: View): { marks: readonly Mark[]; wishes: readonly LabelWish[] } {
  const found = items.flatMap((item) =>
    item.kind === 'member' ? (a.model.shell.members.find(({ id }) => id === item.id) ?? []) : [],
  );
  const solids = farthestFirst(
    found.flatMap((member: Member) => silhouette(member, a.model.library, view) ?? []),
    view,
  );
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  for (const solid of solids) {
    const ring = clipRing(solid.ring.map(port.placeFlat), frame);
    if (ring.length < 3) continue;
    marks.push(rectArea('structure', 'chassis', ring, solid.member.id));
    wishes.push({ text: solid.member.id, anchor: middle(ring), style: 'id', priority: 15, id: solid.member.id });
  }
  return { marks, wishes };
}

function servicesBehind({ a, port, frame, items }: Window): {
  marks: readonly Mark[];
  wishes: readonly LabelWish[];
  media: readonly (keyof typeof MEDIUM_STYLES)[];
  nodes: readonly ServiceNode[];
} {
  const { runs, nodes } = a.model.shell;
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  const media: (keyof typeof MEDIUM_STYLES)[] = [];
  const shown: ServiceNode[] = [];
  const letters = new RunLetters(
    items.flatMap((item) => {
      const at = item.kind === 'node' ? nodes.find(({ id }) => id === item.id)?.at : undefined;
      return at ? [port.place(at)] : [];
    }),
  );
  const behind = items.flatMap((item) => {
    const run = item.kind === 'run' ? runs.find(({ id }) => id === item.id) : undefined;
    return run && run.path.length >= 2 ? [{ item, run }] : [];
  });
  const lines = spreadLines(behind.map(({ run }) => run.path.map(port.place)));
  behind.forEach(({ item, run }, index) => {
    const pieces = clipLine(lines[index] as readonly Point[], frame);
    if (pieces.length === 0) return;
    media.push(run.medium);
    for (const piece of pieces) {
      const mark = line('runs', `run-${run.medium}`, piece, run.id);
      // What is nearest is drawn heaviest: it is what a hand meets first.
      marks.push(item.distanceMm <= NEAR_MM ? { ...mark, widthMm: 0.5 } : { ...mark, widthMm: 0.25 });
    }
    const longest = [...pieces].sort((p, q) => lineLengthMm(q) - lineLengthMm(p))[0] as readonly Point[];
    const anchor = middle([
      longest[Math.floor((longest.length - 1) / 2)] as Point,
      longest[Math.floor(longest.length / 2)] as Point,
    ]);
    const spots = LETTER_AT.map((share) => alongLine(longest, lineLengthMm(longest) * share).at);
    marks.push(
      ...letters.at(
        run.medium,
        spots.filter((spot) => alone(spot, lines, index)),
      ),
    );
    wishes.push({
      text: item.id,
      anchor,
      style: 'id-large',
      priority: 60 - item.distanceMm / 100,
      id: run.id,
      clearMm: 0.6,
      also: ALONG.map((share) => alongLine(longest, lineLengthMm(longest) * share).at),
    });
  });
  for (const item of items) {
    const node = item.kind === 'node' ? nodes.find(({ id }) => id === item.id) : undefined;
    if (!node?.at) continue;
    const at = port.place(node.at);
    if (at[0] < frame.x0 || at[0] > frame.x1 || at[1] < frame.y0 || at[1] > frame.y1) continue;
    media.push(node.medium);
    shown.push(node);
    marks.push(...nodeMarks(node, at));
    wishes.push({
      text: item.id,
      anchor: at,
      style: 'id-large',
      priority: 80 - item.distanceMm / 100,
      id: node.id,
      clearMm: NODE_SYMBOL_MM,
    });
  }
  return { marks, wishes, media, nodes: shown };
}

/** Whether no other line comes near a letter's place. */
const alone = ([x, y]: Point, lines: readonly (readonly Point[])[], own: number): boolean => {
  const about = growRect({ x0: x, y0: y, x1: x, y1: y }, LETTER_CLEAR_MM);
  return lines.every((points, index) => index === own || clipLine(points, about).length === 0);
};

const middle = (points: readonly Point[]): Point => [
  points.reduce((sum, point) => sum + point[0], 0) / points.length,
  points.reduce((sum, point) => sum + point[1], 0) / points.length,
];

/** The clear opening about the panel's middle: its larger dimension along the longer side of the outline. */
function openingRect(panel: Panel, view: View, port: Port): Rect | undefined {
  if (!panel.openingMm) return undefined;
  const flat = rectAbout(panel.outline.map((corner) => project(view, corner))) as Rect;
  const [x, y] = project(view, planarPolygon(panel.outline).centroid);
  const large = Math.max(...panel.openingMm);
  const small = Math.min(...panel.openingMm);
  const [w, h] = flat.x1 - flat.x0 >= flat.y1 - flat.y0 ? [large, small] : [small, large];
  return rectAbout([port.placeFlat([x - w / 2, y - h / 2]), port.placeFlat([x + w / 2, y + h / 2])]);
}

function openingDimensions(panel: Panel, inner: Rect, port: Port, a: Assessment): readonly Mark[] {
  if (!panel.openingMm) return [];
  const units = a.model.shop.units;
  const across = inner.x1 - inner.x0 >= inner.y1 - inner.y0;
  const [large, small] = [Math.max(...panel.openingMm), Math.min(...panel.openingMm)];
  return [
    ...acrossDimension(inner.x0, inner.x1, port.frame.y1 + 5, port.frame.y1, length(across ? large : small, units)),
    ...uprightDimension(inner.y0, inner.y1, port.frame.x0 - 5, port.frame.x0, length(across ? small : large, units)),
  ];
}

function missing(a: Assessment, panelId: string, sheet: SheetSize, options: DrawingOptions): Drawing {
  return compose(
    {
      id: `face-${panelId}`,
      title: `Behind ${panelId}`,
      alt: `Panel ${panelId} is not on record.`,
      widthMm: sheet.widthMm,
      heightMm: Math.min(sheet.heightMm, 20),
      units: a.model.shop.units,
      room: { x0: 1, y0: 1, x1: sheet.widthMm - 1, y1: 10 },
      marks: [],
      wishes: [],
      notes: [`Panel ${panelId} is not on record.`],
    },
    options,
  );
}
