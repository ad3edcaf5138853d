import { distance, type Vec3 } from '../../geometry/vector.js';
import { parseQuantity } from '../../quantity/parse.js';
import { matchHeads } from '../headers.js';
import { planImport } from '../plan.js';
import type { RecordIndex } from '../record-index.js';
import type { SheetFault } from '../rows.js';
import type { SheetTable } from '../sheet.js';
import type { SheetPlan } from '../sheet-changes.js';
import { textsOf } from '../texts.js';
import { flow, isData } from '../yaml-text.js';
import { DRAWN_KINDS } from './layers.js';
import type { DrawnPiece } from './pieces.js';

export interface DrawingPlan {
  readonly plan: SheetPlan;
  readonly texts: ReadonlyMap<string, string>;
}

export interface DrawingOf {
  readonly name: string;
  readonly pieces: readonly DrawnPiece[];
  readonly known: RecordIndex;
  /** Unit that lengths are written in. */
  readonly unit: 'in' | 'mm';
  readonly ahead: boolean;
  readonly mostBytes: number;
}

/** What the pieces of a drawing add and change, by the same plan that sheets have: a piece is a row, its line in the drawing the row’s number. */
export function planPieces({ name, pieces, known, unit, ahead, mostBytes }: DrawingOf): DrawingPlan {
  const origin = originOf(known);
  const plan = { added: [], changed: [], unchanged: [], faults: [], ahead: [] } as {
    [K in keyof SheetPlan]: SheetPlan[K][number][];
  };
  const texts = new Map<string, string>();
  for (const kind of DRAWN_KINDS) {
    const drawn = pieces.filter((piece) => piece.kind === kind);
    if (drawn.length === 0) continue;
    const sheet = tableOfPieces(name, drawn, origin, unit);
    const heads = matchHeads(kind, sheet.heads, { said: new Map(), own: new Map() });
    const own = planImport({ kind, sheet, heads, known, habits: {}, ahead });
    plan.added.push(...own.added);
    plan.changed.push(...own.changed);
    plan.unchanged.push(...own.unchanged);
    plan.faults.push(...own.faults.map(({ row, message }): SheetFault => ({ row, message })));
    plan.ahead.push(...own.ahead);
    if (own.faults.length === 0)
      for (const [file, text] of textsOf(kind, own, known, undefined, mostBytes)) texts.set(file, text);
  }
  return { plan, texts: plan.faults.length > 0 ? new Map() : texts };
}

/** Where the shell’s typed origin lies in the standard datum, mm. */
function originOf(known: RecordIndex): Vec3 {
  const data = known.files.get(`shells/${known.shell}/shell.yaml`)?.open?.document.data;
  const typed: unknown = isData(data) && isData(data.datum) ? data.datum.origin : undefined;
  const units = known.unitsOf(`shells/${known.shell}/shell.yaml`);
  const read = (Array.isArray(typed) ? typed : []).map((one) => parseQuantity(one, 'length', units));
  const [x, y, z] = read.map((one) => (one.ok ? one.value : 0));
  return [x ?? 0, y ?? 0, z ?? 0];
}

function tableOfPieces(name: string, pieces: readonly DrawnPiece[], origin: Vec3, unit: 'in' | 'mm'): SheetTable {
  const rows = pieces.map((piece) => ({ piece, cells: cellsOf(piece, origin, unit) }));
  const heads = ['id', ...new Set(rows.flatMap(({ cells }) => Object.keys(cells)))];
  return {
    name,
    delimiter: '',
    heads,
    rows: rows.map(({ piece, cells }) => ({
      number: piece.line,
      cells: heads.map((head) => (head === 'id' ? piece.id : (cells[head] ?? ''))),
    })),
  };
}

function cellsOf(
  { kind, points, outline, fields, stays }: DrawnPiece,
  origin: Vec3,
  unit: 'in' | 'mm',
): Readonly<Record<string, string>> {
  const length = (mm: number): string => `${Number((unit === 'in' ? mm / 25.4 : mm).toFixed(unit === 'in' ? 4 : 2))} ${unit}`;
  const place = (point: Vec3): readonly string[] => point.map((one, i) => length(one - (origin[i] as number)));
  if (stays) return fields;
  if (kind === 'opening') {
    const [low, high] = byHeight(points);
    const sill = low ?? points.slice(0, 2);
    const height = (high?.[0]?.[2] ?? 0) - (sill[0]?.[2] ?? 0);
    return {
      width: length(distance(sill[0] as Vec3, sill[1] as Vec3)),
      height: length(height),
      ...fields,
      sill: flow(sill.map(place)),
    };
  }
  if (kind === 'panel') return { ...fields, outline: flow(points.map(place)) };
  if (outline) return { ...fields, 'plate.outline': flow(points.map(place)) };
  return { ...fields, from: flow(place(points[0] as Vec3)), to: flow(place(points[1] as Vec3)) };
}

/** The two lower corners and the two upper ones of an opening in a wall. */
function byHeight(points: readonly Vec3[]): readonly (readonly Vec3[])[] {
  const sorted = [...points].sort((a, b) => a[2] - b[2]);
  const along = (pair: readonly Vec3[]): readonly Vec3[] => [...pair].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return points.length === 4 ? [along(sorted.slice(0, 2)), along(sorted.slice(2))] : [];
}
