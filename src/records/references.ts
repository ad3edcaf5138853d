import type { AnyField, Fields } from './field.js';
import { kindOf, LIBRARY } from './kinds.js';
import type { KindName, LibraryKind, RecordKind } from './names.js';

/** What a key must name: a record of this shell of one of some kinds, any record of it, or one of the library. */
export type Target = { readonly kinds: readonly RecordKind[] } | { readonly any: true } | { readonly library: LibraryKind };

/** Keys from the record down: `*` each item of a list, `{}` each key of a block, which is then itself the id. */
export interface Reference {
  readonly path: readonly string[];
  readonly target: Target;
  /** It is a place, which hangs on what its phrases name. */
  readonly place?: true;
}

/** A path to a field: keys, `*` for each item of a list, `{}` for each key of a table. */
export type FieldPath = readonly string[];

/** Every field of a record, those within blocks and lists too, each with its way down. */
export function eachField(fields: Fields, visit: (field: AnyField, path: FieldPath, key: string) => void): void {
  const into = (field: AnyField, path: FieldPath, key: string): void => {
    visit(field, path, key);
    const { shape } = field;
    if (shape.is === 'block' || shape.is === 'open')
      for (const [inner, one] of Object.entries(shape.fields)) into(one, [...path, inner], inner);
    else if (shape.is === 'list') into(shape.each, [...path, '*'], key);
    else if (shape.is === 'table') into(shape.value, [...path, '{}'], key);
    else if (shape.is === 'either') for (const one of shape.forms) into(one, path, key);
  };
  for (const [key, field] of Object.entries(fields)) into(field, [key], key);
}

/** What a place may hang on. */
export const PLACE_KINDS: readonly RecordKind[] = [
  ...(['member', 'panel', 'opening', 'zone', 'node', 'axle', 'seat', 'tank', 'bay', 'component'] as const),
];
/** Where the places of a field stand. */
const PLACES_AT: Readonly<Partial<Record<string, readonly (readonly string[])[]>>> = {
  place: [[]],
  places: [['*']],
  outlines: [['*', '*']],
};

function referencesIn(fields: Fields): readonly Reference[] {
  const found: Reference[] = [];
  eachField(fields, ({ shape, traits: { names } }, path) => {
    if (shape.is === 'value')
      for (const step of PLACES_AT[shape.form.as] ?? [])
        found.push({ path: [...path, ...step], target: { kinds: PLACE_KINDS }, place: true });
    if (names === undefined) return;
    const steps = shape.is === 'table' ? ['{}'] : shape.is === 'value' ? shape.idsAt : [''];
    for (const step of steps)
      for (const target of targetsOf(names)) found.push({ path: step === '' ? path : [...path, ...step.split('.')], target });
  });
  return found;
}

function targetsOf(names: readonly KindName[] | 'any'): readonly Target[] {
  if (names === 'any') return [{ any: true }];
  const library = names.filter((name): name is LibraryKind => Object.hasOwn(LIBRARY, name));
  const kinds = names.filter((name): name is RecordKind => !Object.hasOwn(LIBRARY, name));
  return [...library.map((one) => ({ library: one })), ...(kinds.length > 0 ? [{ kinds }] : [])];
}

const KNOWN = new Map<KindName, readonly Reference[]>();

/** Parts of shell.yaml that are read each on their own, and where they stand: the shell's record names what they name. */
const WITHIN_SHELL = [
  ['chassis.bare', 'bare'],
  ['conditions.*', 'loading condition'],
] as const;

/** Every reference that a record of this kind may hold. */
export function referencesOf(kind: KindName): readonly Reference[] {
  const known = KNOWN.get(kind) ?? made(kind);
  KNOWN.set(kind, known);
  return known;
}

function made(kind: KindName): readonly Reference[] {
  const { fields, variants } = kindOf(kind);
  const own = [...referencesIn(fields), ...Object.values(variants?.forms ?? {}).flatMap(referencesIn)];
  if (kind !== 'shell') return own;
  const within = WITHIN_SHELL.flatMap(([path, part]) =>
    referencesIn(kindOf(part).fields).map((one) => ({ ...one, path: [...path.split('.'), ...one.path] })),
  );
  return [...own, ...within];
}

const LEANT_ON = new Map<KindName, readonly Reference[]>();

/** Records of the library that a record of this kind leans on: those that it must name, and those that it may. */
export function leansOn(kind: KindName): readonly Reference[] {
  const known = LEANT_ON.get(kind) ?? [...referencesOf(kind).filter(({ target }) => 'library' in target), ...mayLeanOn(kind)];
  LEANT_ON.set(kind, known);
  return known;
}

function mayLeanOn(kind: KindName): readonly Reference[] {
  const found: Reference[] = [];
  eachField(kindOf(kind).fields, ({ traits }, path) => {
    if (traits.leansOn !== undefined) found.push({ path: [...path, '*'], target: { library: traits.leansOn as LibraryKind } });
  });
  return found;
}
