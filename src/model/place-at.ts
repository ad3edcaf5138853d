import type { Vec3 } from '../geometry/vector.js';
import { readTaped, TapePlace } from '../records/form/tape.js';
import { UnitReader } from '../records/form/unit-reader.js';
import type { Axle, Tank } from '../records/index.js';
import { PLACE_KINDS } from '../records/references.js';
import { didYouMean } from '../source/nearest.js';
import type { Model } from './shell.js';
import { TAPE_MM } from './tape.js';
import { tapeEnd } from './tape-end.js';
import { tapeSolid } from './tape-solid.js';

export interface PlaceAt {
  readonly at: Vec3;
  /** Of the tape and of what it is held to, by the root of the sum of squares on the worst axis; 0 where no tape was held. */
  readonly uncertaintyMm: number;
  readonly said: readonly string[];
}

/** A place as somebody asks for it, `24 in aft of P-L-06, on SK-L-03, 14 in above FB-L`, in a shell as recorded; or what is wrong. */
export function placeAt(typed: string, model: Model): PlaceAt | string {
  const units = new UnitReader();
  let wrong = '';
  const read = readTaped(
    typed,
    (one, least, say) => units.quantity(one, 'length', least, say),
    [0, 0, 0],
    ({ found, expected }) => {
      wrong ||= `Found ${found}, expected ${expected}`;
    },
  );
  if (read === undefined) return wrong;
  return read instanceof TapePlace ? taped(read, model) : { at: read, uncertaintyMm: 0, said: [] };
}

function taped({ axes }: TapePlace, model: Model): PlaceAt | string {
  const at = axes.map((one) => (typeof one === 'number' ? one : 0)) as [number, number, number];
  let squares = [0, 0, 0];
  let said: readonly string[] = [];
  // Once by the boxes, to know where the lines run; then by what the lines meet.
  for (const byLines of [false, true]) {
    squares = [0, 0, 0];
    said = [];
    for (const axis of [0, 1, 2] as const) {
      const phrase = axes[axis];
      if (typeof phrase === 'number') continue;
      const held = heldTo(phrase.id, axis, model);
      if (typeof held === 'string') return held;
      const end = tapeEnd(phrase, axis, held, byLines ? [...at] : undefined);
      if (typeof end === 'string') return end;
      at[axis] = end.value;
      squares[axis] = (model.shop.limits.tapeMm ?? TAPE_MM) ** 2 + held.uncertaintyMm ** 2 + end.doubtMm ** 2;
      if (end.said !== undefined) said = [...said, end.said];
    }
  }
  return { at, uncertaintyMm: Math.sqrt(Math.max(...squares)), said };
}

function heldTo(id: string, axis: 0 | 1 | 2, { shell, library }: Model) {
  const entry = shell.byId.get(id);
  if (!entry || !PLACE_KINDS.includes(entry.kind)) {
    const known = [...shell.byId.values()].filter(({ kind }) => PLACE_KINDS.includes(kind)).map((one) => one.id);
    return `Found \`${id}\`, expected the id of something that a tape can be held to${didYouMean(id, known)}`;
  }
  const tolerance = (entry.record as { readonly toleranceMm?: number }).toleranceMm ?? 0;
  const uncertaintyMm = Math.max(tolerance, shell.taped?.get(id)?.uncertaintyMm ?? 0);
  if (entry.kind === 'axle') {
    if (axis !== 0) return `Axle \`${id}\` has a place on x only, expected a length or something else for ${'xyz'[axis]}`;
    return { solid: undefined, xMm: (entry.record as Axle).xMm, uncertaintyMm };
  }
  const of = entry.kind === 'tank' ? (entry.record as Tank).of : undefined;
  const { kind, record } = (of === undefined ? undefined : shell.byId.get(of)) ?? entry;
  const solid = tapeSolid(kind, record, library);
  return solid
    ? { solid, uncertaintyMm }
    : `\`${id}\` has no place that a tape could be held to, expected a length or another id`;
}
