import type { Assessment } from '../assess.js';
import { DEFAULT_HEADS } from '../entry/numbering.js';
import { boundsOf } from '../geometry/box.js';
import { lerp, type Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import { concealed } from '../query/concealment.js';
import type { KindName } from '../records/index.js';
import { evidenceOf } from '../rules/order/evidence.js';
import { FLOOR_FIELDS, FLOOR_TAPPED, type Reader, say, type WordKey } from '../words/index.js';
import type { FloorData, FloorRef } from './floor-data.js';
import { TASKS } from './tasks.js';

/** What the page for the floor knows of a shell: names and places to choose from, what has no weld, what nobody has photographed. */
export function floorData(
  { model, figures }: Assessment,
  reader: Reader,
  fingerprint: string,
  heads: FloorData['heads'],
): FloorData {
  const { shell, library } = model;
  return {
    shell: shell.id,
    fingerprint,
    language: reader.language,
    words: wordsFor(reader),
    refs: refsOf(model),
    joints: figures.joints.joints
      .filter(({ welds, clamps }) => welds.length === 0 && (clamps?.length ?? 0) === 0)
      .map(({ members: [a, b] }) => [a, b] as const),
    heads: { ...DEFAULT_HEADS, ...heads },
    qualified: Object.fromEntries([...library.people.values()].map(({ id, qualified }) => [id, qualified])),
    gauges: [...library.instruments.values()].map(({ id, calibrated, due }) => ({
      id,
      ...(calibrated === undefined ? {} : { calibrated }),
      ...(due === undefined ? {} : { due }),
    })),
    hides: hiddenBy(model),
    typed: Object.fromEntries(shell.panels.map((panel) => [panel.id, panel.date === undefined ? {} : { date: panel.date }])),
  };
}

function wordsFor(reader: Reader): Readonly<Record<string, string>> {
  const unfilled = say as (of: Reader, key: WordKey) => string;
  const keys = [...Object.keys(FLOOR_TAPPED), ...TASKS.map((name) => `floor.task.${name}`), 'floor.more'] as WordKey[];
  const fields = Object.entries(FLOOR_FIELDS).map(([key, { us, es }]) => [`field.${key}`, reader.language === 'es' ? es : us]);
  return { ...Object.fromEntries(keys.map((key) => [key, unfilled(reader, key)])), ...Object.fromEntries(fields) };
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
    const { min, max } = points.length > 0 ? boundsOf(points) : {};
    const middle = min && max ? (lerp(min, max, 0.5).map(Math.round) as unknown as Vec3) : undefined;
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
