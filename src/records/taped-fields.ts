import type { AnyField, Fields } from './field.js';
import { TapePlace } from './form/tape.js';

type Holder = Record<string | number, unknown>;
/** A place of a form that hangs on something: it stands in `holder[key]`. */
export interface TapedField {
  readonly holder: Holder;
  readonly key: string | number;
  readonly place: TapePlace;
  readonly path: readonly (string | number)[];
}

const HOLDS = new WeakMap<AnyField, boolean>();

/** Is it a place, or is there one within? */
function holdsPlaces(field: AnyField): boolean {
  const known = HOLDS.get(field);
  if (known !== undefined) return known;
  const { shape } = field;
  const holds =
    (shape.is === 'value' && (['place', 'places', 'outlines'].includes(shape.form.as) || shape.idsAt.length > 0)) ||
    ((shape.is === 'block' || shape.is === 'open') && Object.values(shape.fields).some(holdsPlaces)) ||
    (shape.is === 'list' && holdsPlaces(shape.each)) ||
    (shape.is === 'table' && holdsPlaces(shape.value)) ||
    (shape.is === 'either' && shape.forms.some(holdsPlaces));
  HOLDS.set(field, holds);
  return holds;
}

const WITH_PLACES = new WeakMap<Fields, readonly string[]>();

/** Every place within a form that hangs on something. */
export function tapedIn(fields: Fields, form: object): readonly TapedField[] {
  const keys = WITH_PLACES.get(fields) ?? Object.keys(fields).filter((key) => holdsPlaces(fields[key] as AnyField));
  WITH_PLACES.set(fields, keys);
  const found: TapedField[] = [];
  for (const key of keys) within(form as Holder, key, [key], found);
  return found;
}

function within(holder: Holder, key: string | number, path: readonly (string | number)[], found: TapedField[]): void {
  const value = holder[key];
  if (value instanceof TapePlace) found.push({ holder, key, place: value, path });
  else if (Array.isArray(value)) {
    if (typeof value[0] === 'number') return;
    for (let i = 0; i < value.length; i++) within(value as unknown as Holder, i, [...path, i], found);
  } else if (typeof value === 'object' && value !== null)
    for (const inner of Object.keys(value)) within(value as Holder, inner, [...path, inner], found);
}
