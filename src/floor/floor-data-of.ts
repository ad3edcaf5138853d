import type { Assessment } from '../assess.js';
import { DEFAULT_HEADS } from '../entry/numbering.js';
import type { Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import type { CoachView } from '../pocket/views.js';
import { concealed } from '../query/concealment.js';
import type { KindName } from '../records/index.js';
import { evidenceOf } from '../rules/order/evidence.js';
import { FLOOR_CHOICES, FLOOR_FIELDS, FLOOR_TAPPED, type Reader, say, type WordKey } from '../words/index.js';
import { floorCoach, middleOfPoints } from './floor-coach.js';
import type { FloorData, FloorRef } from './floor-data.js';
import { TASKS } from './tasks.js';

/** What the page for the floor knows of a shell: names and places to choose from, what has no weld, what nobody has photographed. */
export function floorData(
  { model, figures }: Assessment,
  reader: Reader,
  fingerprint: string,
  heads: FloorData['heads'],
  views: readonly CoachView[],
): FloorData {
  const { shell } = model;
  return {
    shell: shell.id,
    fingerprint,
    language: reader.language,
    words: wordsFor(reader),
    refs: refsOf(model),
    joints: figures.joints.joints.map(({ members: [a, b], welds, clamps, bounds }) => {
      const open = welds.length === 0 && (clamps?.length ?? 0) === 0;
      return bounds ? [a, b, open, middleOfPoints([bounds.min, bounds.max]) as Vec3] : [a, b, open];
    }),
    heads: { ...DEFAULT_HEADS, ...heads },
    coach: floorCoach({ model, figures }),
    views: views.map(({ tap }) => tap),
    hides: hiddenBy(model),
    typed: Object.fromEntries(shell.panels.map(({ id, typed }) => [id, typedFields(typed)])),
  };
}

/** Blocks whose fields are set one by one. */
const BLOCKS: readonly string[] = ['fixing', 'bond'];
const SET_HERE: readonly string[] = ['date', 'by', 'stage', 'note', ...BLOCKS];

/** What a panel says already of what is set here, each field by its own key. */
function typedFields(typed: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    SET_HERE.filter((key) => typed[key] !== undefined).flatMap((key) => {
      const value = typed[key];
      if (!BLOCKS.includes(key) || typeof value !== 'object' || value === null) return [[key, value]];
      return Object.entries(value).map(([inner, one]) => [`${key}.${inner}`, one]);
    }),
  );
}

function wordsFor(reader: Reader): Readonly<Record<string, string>> {
  const unfilled = say as (of: Reader, key: WordKey) => string;
  const keys = [...Object.keys(FLOOR_TAPPED), ...TASKS.map((name) => `floor.task.${name}`), 'floor.more'] as WordKey[];
  const fields = Object.entries(FLOOR_FIELDS).map(([key, { us, es }]) => [`field.${key}`, reader.language === 'es' ? es : us]);
  const choices = reader.language === 'es' ? Object.entries(FLOOR_CHOICES).map(([value, es]) => [`choice.${value}`, es]) : [];
  return {
    ...Object.fromEntries(keys.map((key) => [key, unfilled(reader, key)])),
    ...Object.fromEntries([...fields, ...choices]),
  };
}

/** As far as a record says where it is. */
interface Placed {
  readonly at?: Vec3;
  readonly outline?: readonly Vec3[];
  readonly shape?: { readonly from?: Vec3; readonly to?: Vec3; readonly outline?: readonly Vec3[] };
}

function refsOf({ shell, library }: Model): FloorData['refs'] {
  const refs: Partial<Record<KindName, FloorRef[]>> = {};
  const add = (kind: KindName, record: { readonly id: string }): void => {
    const { name, part } = record as { readonly name?: string; readonly part?: string };
    const { at, outline, shape } = record as Placed;
    const points = at ? [at] : (outline ?? shape?.outline ?? (shape?.from && shape.to ? [shape.from, shape.to] : []));
    const middle = middleOfPoints(points);
    const list = refs[kind] ?? [];
    list.push([record.id, name ?? part ?? '', ...(middle ? [middle] : [])] as unknown as FloorRef);
    refs[kind] = list;
  };
  for (const { kind, record } of shell.byId.values()) if (!LEFT_OUT.has(kind)) add(kind, record as { readonly id: string });
  for (const one of library.people.values()) add('person', one);
  for (const one of library.instruments.values()) add('instrument', one);
  for (const one of library.procedures.values()) add('procedure', one);
  return refs;
}

/** Nothing that is entered here names them, and there are many. */
const LEFT_OUT: ReadonlySet<KindName> = new Set(['photo', 'amendment']);

/** Of every panel what it closes in without a photo or a passed test; abandoned and spare runs need no test. */
function hiddenBy(model: Model): FloorData['hides'] {
  const found: Record<string, [string, 'photo' | 'test' | 'both'][]> = {};
  for (const item of concealed(model)) {
    const { photos, tests, needsTest } = evidenceOf(item, model);
    const [noPhoto, noTest] = [photos.length === 0, needsTest && tests.length === 0];
    if (!noPhoto && !noTest) continue;
    for (const { id } of item.panels) {
      const list = found[id] ?? [];
      list.push([item.record.id, noPhoto && noTest ? 'both' : noPhoto ? 'photo' : 'test']);
      found[id] = list;
    }
  }
  return found;
}
