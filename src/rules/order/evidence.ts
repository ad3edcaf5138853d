import { stillCounts } from '../../compute/record/changed-on.js';
import { judgeTest } from '../../compute/verdicts/verdict.js';
import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { Concealed } from '../../query/concealment.js';
import type { Photo, Run, Test } from '../../records/index.js';

/** What shows that a run or joint is right, as it is now. */
export interface Evidence {
  readonly photos: readonly Photo[];
  /** Those whose values pass. */
  readonly tests: readonly Test[];
  /** Of before its last change of substance: they show what is no longer there. */
  readonly stale: { readonly photos: readonly Photo[]; readonly tests: readonly Test[] };
  /** An air duct has nothing to test; a spare or abandoned run is dead. */
  readonly needsTest: boolean;
}

/** A run or joint, closed in or not. */
export type Line = Pick<Concealed, 'kind' | 'record'> & { readonly zones: readonly string[] };

export function evidenceOf(item: Line, model: Model): Evidence {
  const { shell } = model;
  const { record, kind } = item as Concealed;
  const circuit = record.circuit;
  const shows = new Set([record.id, ...item.zones, ...(kind === 'run' && circuit ? [circuit] : [])]);
  const tested = new Set(kind === 'run' ? [record.id, circuit] : testedThrough(record.id, circuit, model));
  const dead = kind === 'run' && ((record as Run).spare === true || (record as Run).abandoned === true);
  const photos = shell.photos.filter((photo) => record.photos.includes(photo.id) || photo.of.some((id) => shows.has(id)));
  const tests = shell.tests.filter((test) => test.of.some((id) => tested.has(id)) && judgeTest(test, model).verdict === 'passed');
  const counts = (day: string | undefined): boolean => stillCounts(model, record.id, day);
  return {
    photos: photos.filter((photo) => counts(photoDay(photo))),
    tests: tests.filter((test) => counts(testDay(test))),
    stale: {
      photos: photos.filter((photo) => !counts(photoDay(photo))),
      tests: tests.filter((test) => !counts(testDay(test))),
    },
    needsTest: record.medium !== 'duct' && !dead,
  };
}

/** A joint is tested with the runs that end at it and with their circuits. */
function testedThrough(node: string, circuit: string | undefined, { shell }: Model): readonly (string | undefined)[] {
  const runs = shell.runs.filter((run) => run.from === node || run.to === node);
  return [node, circuit, ...runs.flatMap((run) => [run.id, run.circuit])];
}

export const photoDay = (photo: Photo): string | undefined => dayOf(photo.taken ?? photo.date);
export const testDay = (test: Test): string | undefined => dayOf(test.date);

/** The earliest day known, where every one is later than `day`; undefined where one is not, or where none is known. */
export function firstTooLate(days: readonly (string | undefined)[], day: string): string | undefined {
  const known = days.filter((one) => one !== undefined).sort();
  return known[0] !== undefined && known[0] > dayOf(day) ? known[0] : undefined;
}

/** `Run DC-12/1` or `Splice DC-12/S1`. */
export function lineName(item: Concealed): string {
  const word = item.kind === 'run' ? 'run' : item.record.nodeKind;
  return `${word.charAt(0).toUpperCase()}${word.slice(1)} ${item.record.id}`;
}
