import { distance, type Vec3 } from '../../geometry/vector.js';
import type { Shell } from '../../records/index.js';
import type { RecordIndex } from '../record-index.js';
import type { DxfShape, DxfShapes } from './expand.js';
import { DRAWN_KINDS, type DrawnKind, type LayerMeaning } from './layers.js';

/** A piece of a drawing as a record: its kind, its id, its corners in the standard datum, mm, and what else is said of it. */
export interface DrawnPiece {
  readonly kind: DrawnKind;
  readonly id: string;
  readonly line: number;
  readonly layer: string;
  readonly points: readonly Vec3[];
  readonly outline: boolean;
  readonly fields: Readonly<Record<string, string>>;
  /** It lies where the record has it: nothing need be said of its place. */
  readonly stays: boolean;
}

export interface Pieces {
  readonly pieces: readonly DrawnPiece[];
  /** Layers with pieces that nobody said anything of → how many. */
  readonly unmapped: ReadonlyMap<string, number>;
  /** What was left out → how many. */
  readonly left: ReadonlyMap<string, number>;
}

/** Two pieces nearer than this are one, mm. */
const SAME_MM = 1;
/** A piece that did not move more than this stays as it was typed, mm. */
const STAYS_MM = 0.1;

export interface PiecesOf {
  readonly drawing: DxfShapes;
  readonly layers: ReadonlyMap<string, LayerMeaning>;
  readonly mmPerUnit: number;
  readonly shell: Shell | undefined;
  readonly known: RecordIndex;
}

/** Gives each piece its kind by its layer and its id by its own words, by a record that lies there, or by its layer’s name and a number. */
export function drawnPieces({ drawing, layers, mmPerUnit, shell, known }: PiecesOf): Pieces {
  const recorded = shell ? new RecordedPieces(shell) : undefined;
  const left = new Map(drawing.left);
  const unmapped = new Map<string, number>();
  const count = (map: Map<string, number>, word: string): void => void map.set(word, (map.get(word) ?? 0) + 1);
  const given = new Set<string>();
  const pieces: DrawnPiece[] = [];
  const said = new Map<string, number>();
  for (const shape of drawing.shapes) if (shape.said.id !== undefined) count(said, shape.said.id);
  for (const shape of drawing.shapes) {
    const meaning = meaningFor(shape, layers, known);
    if (meaning === 'skip') {
      if (shape.said.is === 'length of a member') count(left, 'lengths of bent members: record their bends in members.yaml');
      continue;
    }
    if (meaning === undefined) {
      count(unmapped, shape.layer);
      continue;
    }
    const outline = shape.is === 'outline';
    if (!outline && meaning.kind !== 'member') {
      count(left, `lines on layer ${shape.layer}, whose ${meaning.kind}s are closed outlines`);
      continue;
    }
    const points = shape.points.map((point): Vec3 => [point[0] * mmPerUnit, point[1] * mmPerUnit, point[2] * mmPerUnit]);
    if (!outline && distance(points[0] as Vec3, points[1] as Vec3) < SAME_MM) {
      count(left, 'lines shorter than 1 mm');
      continue;
    }
    const own = shape.said.id !== undefined && said.get(shape.said.id) === 1 ? shape.said.id : undefined;
    const found = own ?? recorded?.at(meaning.kind, points, given);
    const id = found ?? nextId(shape.layer, known, given);
    given.add(id);
    const stays = recorded?.isAt(id, points) === true;
    const fields = { ...meaning.fields, ...(own === undefined ? {} : fieldsSaid(shape)) };
    pieces.push({ kind: meaning.kind, id, line: shape.line, layer: shape.layer, points, outline, fields, stays });
  }
  return { pieces, unmapped, left };
}

/** What this program writes beside a piece. */
const SAID: Readonly<Record<DrawnKind, readonly string[]>> = {
  member: ['part', 'section', 'alloy', 'stage', 'roll', 'plate.thickness'],
  panel: ['kind', 'alloy', 'thickness', 'stage', 'of'],
  opening: ['kind', 'wall', 'width', 'height'],
};

const fieldsSaid = ({ said }: DxfShape): Readonly<Record<string, string>> => {
  const kind = DRAWN_KINDS.find((one) => one === said.is);
  return kind
    ? Object.fromEntries(SAID[kind].flatMap((key) => (said[key] === undefined ? [] : [[key, said[key] as string]])))
    : {};
};

/** By its own words where this program wrote it, else by its layer; what is in the records already needs neither. */
function meaningFor(shape: DxfShape, layers: ReadonlyMap<string, LayerMeaning>, known: RecordIndex): LayerMeaning | undefined {
  const mapped = layers.get(shape.layer);
  if (mapped !== undefined) return mapped;
  const told = DRAWN_KINDS.find((one) => one === shape.said.is);
  if (told) return { kind: told, fields: {} };
  if (shape.said.is !== undefined) return 'skip';
  const kind = shape.said.id === undefined ? undefined : DRAWN_KINDS.find((one) => known.find(one, shape.said.id as string));
  return kind && { kind, fields: {} };
}

function nextId(layer: string, known: RecordIndex, given: ReadonlySet<string>): string {
  const stem =
    layer
      .replace(/[^\p{L}\p{N}./_-]+/gu, '-')
      .replace(/^-+|-+$/gu, '')
      .slice(0, 60) || 'L';
  for (let n = 1; ; n++) {
    const id = `${stem}-${String(n).padStart(3, '0')}`;
    if (!given.has(id) && known.taken('member', id) === undefined) return id;
  }
}

/** Where the records of a shell lie. */
class RecordedPieces {
  private readonly byId = new Map<string, readonly Vec3[]>();
  private readonly byPlace = new Map<
    string,
    { readonly id: string; readonly kind: DrawnKind; readonly points: readonly Vec3[] }[]
  >();

  constructor(shell: Shell) {
    for (const { id, shape } of shell.members) {
      const isBent = shape.kind === 'line' && (shape.bends?.length ?? 0) > 0;
      if (!isBent) this.put('member', id, shape.kind === 'line' ? [shape.from, shape.to] : shape.outline);
    }
    for (const { id, outline } of shell.panels) this.put('panel', id, outline);
    for (const opening of shell.openings) {
      const corners = cornersOfOpening(opening);
      if (corners) this.put('opening', opening.id, corners);
    }
  }

  private put(kind: DrawnKind, id: string, points: readonly Vec3[]): void {
    this.byId.set(id, points);
    const key = keyOf(points);
    this.byPlace.set(key, [...(this.byPlace.get(key) ?? []), { id, kind, points }]);
  }

  isAt(id: string, points: readonly Vec3[]): boolean {
    const own = this.byId.get(id);
    return own !== undefined && alike(own, points, STAYS_MM);
  }

  /** The record of this kind that lies there. */
  at(kind: DrawnKind, points: readonly Vec3[], given: ReadonlySet<string>): string | undefined {
    for (const key of keysNear(points))
      for (const one of this.byPlace.get(key) ?? [])
        if (one.kind === kind && !given.has(one.id) && alike(one.points, points, SAME_MM)) return one.id;
    return undefined;
  }
}

const CELL_MM = 50;
const middle = (points: readonly Vec3[]): Vec3 => {
  const sum = points.reduce<Vec3>((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]], [0, 0, 0]);
  return [sum[0] / points.length, sum[1] / points.length, sum[2] / points.length];
};
const keyOf = (points: readonly Vec3[]): string =>
  middle(points)
    .map((one) => Math.floor(one / CELL_MM))
    .join(' ');

function keysNear(points: readonly Vec3[]): readonly string[] {
  const at = middle(points);
  const steps = [-SAME_MM, SAME_MM];
  const keys = steps.flatMap((x) =>
    steps.flatMap((y) => steps.map((z) => [at[0] + x, at[1] + y, at[2] + z].map((one) => Math.floor(one / CELL_MM)).join(' '))),
  );
  return [...new Set(keys)];
}

/** The same corners, wherever the outline begins and whichever way it runs. */
function alike(a: readonly Vec3[], b: readonly Vec3[], within: number): boolean {
  if (a.length !== b.length) return false;
  const n = a.length;
  const from = (start: number, step: number): boolean =>
    a.every((point, i) => distance(point, b[(start + step * i + n * n) % n] as Vec3) <= within);
  return b.some((_, start) => from(start, 1) || from(start, -1));
}

/** Sill, and its height above: the four corners as they are drawn. */
export function cornersOfOpening({
  sill,
  heightMm,
}: {
  readonly sill: readonly Vec3[];
  readonly heightMm: number;
}): readonly Vec3[] | undefined {
  const [a, b] = sill;
  if (!a || !b) return undefined;
  return [a, b, [b[0], b[1], b[2] + heightMm], [a[0], a[1], a[2] + heightMm]];
}
