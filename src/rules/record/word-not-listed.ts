import { methodName } from '../../compute/welding/inspection.js';
import type { Place } from '../../finding.js';
import type { Model } from '../../model/shell.js';
import { CLOSED_LISTS, type ClosedList, isListed } from '../../records/closed-lists.js';
import type { Material, RecordBase } from '../../records/index.js';
import type { KindName } from '../../records/names.js';
import { pipeMaterialOf } from '../../records/pipe-material.js';
import { isListedContents } from '../../records/tank-contents.js';
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
  method: 'weld',
  contents: 'tank',
  pipe: 'run',
};

interface Word {
  readonly list: ClosedList;
  readonly record: Pick<RecordBase, 'id'> & { readonly source?: { place(...path: readonly (string | number)[]): Place } };
  readonly word: string | undefined;
  readonly path: readonly (string | number)[];
  /** What is typed before the word, where it is not the whole value. */
  readonly before?: string;
  /** Of what kind the record is, where a list serves several. */
  readonly kind?: KindName;
}

export const wordNotListed: Rule = {
  name: 'record.word-not-listed',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'A word that answers rely on but that is not in its list: kind of protection, opening, clamp, material, declaration or test, method of fixing or inspection, wall, what a tank holds, what a pipe is made of. A note on a shell whose stages are all signed off.',
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
      ...methods(model),
      ...contents(model),
      ...pipes(model),
    ];
    const severity = isSignedOff(model) ? 'note' : 'warning';
    return words.flatMap(({ list, record, word, path, before = '', kind = KIND_OF[list] }) => {
      if (word === undefined || isListed(list, word)) return [];
      const found = proposed(list, word);
      const meant = found === undefined ? undefined : `${before}${found}`;
      return [
        {
          severity,
          message: `${record.id} has the ${path.join(' ')} \`${word}\`, which is not in the list, expected one of ${CLOSED_LISTS[list].join(', ')}: ${meant === undefined ? 'type the one that fits' : `type \`${meant}\` if that is what it is`}, and put the rest into \`note\``,
          ids: [record.id],
          place: record.source?.place(...path) ?? shell.source.place('tanks'),
          ...(meant === undefined || !path.every((one) => typeof one === 'string')
            ? {}
            : { proposes: [{ kind, id: record.id, path, value: meant }] }),
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

const methods = ({ shell }: Model): readonly Word[] =>
  shell.welds.flatMap((record) =>
    record.inspections.map(({ method }, i) => ({
      list: 'method',
      record,
      word: methodName(method),
      path: ['inspections', i, 'method'],
    })),
  );

const contents = ({ shell }: Model): readonly Word[] =>
  shell.tanks.flatMap((record) =>
    isListedContents(record.contents) || (record.use !== undefined && !record.isDensityTaken)
      ? []
      : [{ list: 'contents', record, word: record.contents, path: ['contents'] }],
  );

/** Sizes of pipes that neither the list nor the library knows. */
const pipes = ({ shell, library }: Model): readonly Word[] =>
  [
    ...shell.circuits.map((record) => ({ record, size: record.size, kind: 'circuit' as const, path: ['size'] })),
    ...shell.runs.map((record) => ({ record, size: record.size, kind: 'run' as const, path: ['size'] })),
    ...shell.zones.map((record) => ({ record, size: record.conduit, kind: 'zone' as const, path: ['conduit'] })),
  ].flatMap(({ record, size, kind, path }): readonly Word[] => {
    if (!size || pipeMaterialOf(size.material) || library.conductors.has(size.text) || library.conductors.has(size.material))
      return [];
    return [{ list: 'pipe', record, word: size.material, path, before: size.text.slice(0, -size.material.length), kind }];
  });

/** `mineral oil` has the word `oil`, `boiled` has not. */
const hasWords = (text: string, words: string): boolean => ` ${text} `.replace(/[^\p{L}\p{N}-]+/gu, ' ').includes(` ${words} `);

/** A name may propose: the listed word that stands in it, else the nearest. */
function proposed(list: ClosedList, word: string): string | undefined {
  const listed: readonly string[] = CLOSED_LISTS[list];
  const lower = word.toLowerCase();
  const inside = [...listed].sort((a, b) => b.length - a.length).find((one) => hasWords(lower, one.toLowerCase()));
  return inside ?? nearest(lower, listed, 1)[0];
}
