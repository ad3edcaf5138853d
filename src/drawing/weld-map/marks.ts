import type { Model } from '../../model/shell.js';
import type { Member } from '../../records/index.js';
import type { LabelWish } from '../labels.js';
import { memberContext, memberHiddenLines } from '../marks/structure.js';
import { circle, type Mark, type Point, rectangle } from '../scene.js';
import type { Port } from '../sheet.js';
import type { PenName } from '../styles.js';
import { memberWish } from '../views/member-wish.js';
import type { SymbolKind, SymbolKinds } from '../weld-symbol/kinds.js';
import { symbolSizeMm, towards, weldSymbol } from '../weld-symbol/symbol.js';
import { inMillimetres, type SymbolStyle } from '../weld-symbol/words.js';
import type { WeldPoint } from './points.js';

/** Radius of the dot at a weld, mm. */
const DOT_MM = 0.45;

/** Members in light line beneath, nearer ones over farther ones. */
export function mapMembers(members: readonly Member[], joined: readonly Member[], model: Model, port: Port): readonly Mark[] {
  const plates = new Set(members.filter(({ shape }) => shape.kind === 'plate').map(({ id }) => id));
  const all = [...joined, ...members];
  const pen = (member: Member): PenName =>
    joined.includes(member) ? 'weld-joined' : plates.has(member.id) ? 'weld-plate' : 'weld-member';
  const outlines = memberContext(all, model.library, port, pen).map((mark): Mark => ({ ...mark, layer: 'structure' }));
  return [...outlines, ...memberHiddenLines(all, model.library, port)];
}

/** A weld on the sheet: its point and where that lies. */
export interface PlacedPoint {
  readonly point: WeldPoint;
  readonly at: Point;
}

export const weldDots = (placed: readonly PlacedPoint[]): readonly Mark[] =>
  placed.map(({ point, at }) => circle('nodes', 'weld-place', at, DOT_MM, point.weld.id));

/** A number at every joint. */
export const numberWishes = (placed: readonly PlacedPoint[]): readonly LabelWish[] =>
  placed.map(({ point, at }) => ({
    text: point.weld.id,
    anchor: at,
    style: 'id',
    priority: 40,
    id: point.weld.id,
    clearMm: DOT_MM,
  }));

/** Each kind of symbol that the sheet's welds need, once, with its arrow at one of them and the number of like joints in its tail. */
export function symbolWishes(placed: readonly PlacedPoint[], kinds: SymbolKinds, style: SymbolStyle): readonly LabelWish[] {
  const needed = new Map<SymbolKind, PlacedPoint[]>();
  for (const one of placed) {
    const kind = kinds.get(one.point.weld);
    if (kind) needed.set(kind, [...(needed.get(kind) ?? []), one]);
  }
  return [...needed].flatMap(([kind, own]): readonly LabelWish[] => {
    const [first, ...others] = own;
    if (!first) return [];
    const extra = { joints: own.length, key: kind.key };
    return [
      {
        text: `symbol ${kind.key}`,
        anchor: first.at,
        also: others.map(({ at }) => at),
        style: 'dimension',
        priority: 30,
        block: {
          ...symbolSizeMm(kind.weld, style, extra),
          leaderFrom: (box, anchor) => towards(box, anchor)?.joint,
          marks: (box, anchor) => {
            const place = towards(box, anchor);
            if (!place) return [];
            const backing = rectangle('leaders', 'weld-backing', box);
            return [backing, ...weldSymbol(kind.weld, style, { ...place, tips: [anchor] }, extra)];
          },
        },
      },
    ];
  });
}

/** What a reader must know of the symbols on a sheet. */
export const symbolNote = (style: SymbolStyle): string =>
  `Symbols by ${style.standard === 'iso' ? 'ISO 2553, system A' : 'AWS A2.4'}, sizes in ${inMillimetres(style) ? 'mm' : 'inches'}; each stands for the welds of its letter in the schedule.`;

/** Names of the members that welds here join, in soft type, where there is room beside the numbers. */
export function memberNames(
  placed: readonly PlacedPoint[],
  members: readonly Member[],
  model: Model,
  port: Port,
): readonly LabelWish[] {
  const joined = new Set(placed.flatMap(({ point }) => point.pair));
  return members
    .filter(({ id }) => joined.has(id))
    .flatMap((member) => memberWish(member, model, port))
    .map((wish) => ({ ...wish, style: 'note', priority: 10, repeat: true }));
}
