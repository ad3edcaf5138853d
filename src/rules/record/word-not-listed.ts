import type { Model } from '../../model/shell.js';
import { CLOSED_LISTS, type ClosedList, isListed } from '../../records/closed-lists.js';
import type { Material, RecordBase } from '../../records/index.js';
import type { KindName } from '../../records/names.js';
import { nearest } from '../../source/nearest.js';
import type { Rule } from '../rule.js';
import { isSignedOff } from '../signed-off.js';

/** Whose word it is. */
const KIND_OF: Readonly<Record<ClosedList, KindName>> = {
  protection: 'circuit',
  wall: 'opening',
  declared: 'declared',
  fixing: 'panel',
  opening: 'opening',
  clamp: 'clamp',
  material: 'material',
  test: 'test',
};

interface Word {
  readonly list: ClosedList;
  readonly record: RecordBase;
  readonly word: string | undefined;
  readonly path: readonly string[];
}

export const wordNotListed: Rule = {
  name: 'record.word-not-listed',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'A word that answers rely on but that is not in its list: kind of protection, opening, clamp, material, declaration or test, method of fixing, wall. A note on a shell whose stages are all signed off.',
  why: 'The word then decides nothing: the program does not know that a `class T fuse` is a fuse, and no isolation relies on it.',
  source: 'common practice, no source',
  examples: {
    given: `
# openings.yaml
`,
    fails: `
- {id: DR-1, kind: door, wall: rihgt, sill: [[1 m, 1 m, 0 m], [1.7 m, 1 m, 0 m]], width: 700 mm, height: 1900 mm}
`,
    passes: `
- {id: DR-1, kind: door, wall: right, sill: [[1 m, 1 m, 0 m], [1.7 m, 1 m, 0 m]], width: 700 mm, height: 1900 mm}
`,
  },
  check({ model }) {
    const { shell } = model;
    const words: readonly Word[] = [
      ...shell.circuits.map((record) => ({
        list: 'protection' as const,
        record,
        word: record.protection?.kind,
        path: ['protection', 'kind'],
      })),
      ...shell.openings.map((record) => ({ list: 'wall' as const, record, word: record.wall, path: ['wall'] })),
      ...shell.openings.map((record) => ({ list: 'opening' as const, record, word: record.openingKind, path: ['kind'] })),
      ...shell.clamps.map((record) => ({ list: 'clamp' as const, record, word: record.clampKind, path: ['kind'] })),
      ...usedMaterials(model).map((record) => ({
        list: 'material' as const,
        record,
        word: record.materialKind.toLowerCase(),
        path: ['kind'],
      })),
      ...shell.declared.map((record) => ({ list: 'declared' as const, record, word: record.declaredKind, path: ['kind'] })),
      ...shell.panels.map((record) => ({
        list: 'fixing' as const,
        record,
        word: record.fixing?.method,
        path: ['fixing', 'method'],
      })),
      ...shell.tests.map((record) => ({ list: 'test' as const, record, word: record.testKind, path: ['kind'] })),
    ];
    const severity = isSignedOff(model) ? 'note' : 'warning';
    return words.flatMap(({ list, record, word, path }) => {
      if (word === undefined || isListed(list, word)) return [];
      const meant = proposed(list, word);
      return [
        {
          severity,
          message: `${record.id} has the ${path.join(' ')} \`${word}\`, which is not in the list, expected one of ${CLOSED_LISTS[list].join(', ')}: ${meant === undefined ? 'type the one that fits' : `type \`${meant}\` if that is what it is`}, and put the rest into \`note\``,
          ids: [record.id],
          place: record.source.place(...path),
          ...(meant === undefined ? {} : { proposes: [{ kind: KIND_OF[list], id: record.id, path, value: meant }] }),
        },
      ];
    });
  },
};

/** Materials of the library that this shell's members and panels are of. */
function usedMaterials({ shell, library }: Model): readonly Material[] {
  const used = new Set([...shell.members, ...shell.panels].flatMap(({ alloy }) => alloy ?? []));
  return [...used].flatMap((alloy) => library.materials.get(alloy) ?? []);
}

/** A name may propose: the listed word that stands in it, else the nearest. */
function proposed(list: ClosedList, word: string): string | undefined {
  const listed: readonly string[] = CLOSED_LISTS[list];
  const lower = word.toLowerCase();
  const inside = [...listed].sort((a, b) => b.length - a.length).find((one) => lower.includes(one));
  return inside ?? nearest(lower, listed, 1)[0];
}
