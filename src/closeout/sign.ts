import type { Model } from '../model/shell.js';
import type { Weld } from '../records/index.js';
import { mayNotSign, newestCovered, signers } from './bound.js';
import { coverageOf, digestOf, ownRecords, plannedRecords } from './coverage.js';
import { dutyOf } from './duty.js';
import { holdPointItems, type Judged, type OpenItem, openItems } from './items.js';

/** A stage about to be signed. */
export interface Signing {
  readonly stage: string;
  /** Id in library/people.yaml. */
  readonly by: string;
  /** ISO 8601 day. */
  readonly date: string;
}

/** What keeps a stage from being signed off: errors in what the signature would cover, hold points that are not met, the signer’s own welds. */
export function missingFor(judged: Judged, { stage, by, date }: Signing): readonly OpenItem[] {
  const { model } = judged;
  const covered = new Set([...coverageOf(model, stage, date).keys()].map((name) => name.slice(name.lastIndexOf(' ') + 1)));
  // What only the sign-off itself would clear is no reason against it.
  const blamed = openItems(judged).filter(
    (item) =>
      item.grade === 'A' && item.place !== undefined && !item.because.startsWith('signoff.') && covered.has(item.ids[0] ?? ''),
  );
  return [
    ...notBound(model, { stage, by, date }),
    ...blamed,
    ...planned(model, stage),
    ...holdPointItems(judged, stage),
    ...ownWelds(model, stage, by),
  ];
}

/** A signature says that the stage is built. */
function planned(model: Model, stage: string): readonly OpenItem[] {
  const ids = plannedRecords(model, stage).map(({ record }) => record.id);
  if (ids.length === 0) return [];
  const more = ids.length > 6 ? ` and ${ids.length - 6} more` : '';
  return [
    {
      list: 'completion',
      grade: 'A',
      message: `${ids.slice(0, 6).join(', ')}${more}: planned, not built, expected nothing of a stage to be planned when it is signed`,
      ids,
      who: dutyOf('trade', ids, model),
      where: `stage ${stage}`,
      because: 'planned',
      stage,
    },
  ];
}

/** Who may sign, and never before what they sign for, once the shop has said who signs. */
function notBound(model: Model, { stage, by, date }: Signing): readonly OpenItem[] {
  if (signers(model).length === 0) return [];
  const item = (message: string, ids: readonly string[]): OpenItem => ({
    list: 'completion',
    grade: 'A',
    message,
    ids,
    who: dutyOf('inspector', [], model),
    where: `stage ${stage}`,
    because: 'signoff',
    stage,
  });
  const refused = mayNotSign(model, by, stage);
  const newest = newestCovered(model, stage, date);
  return [
    ...(refused ? [item(refused, [by])] : []),
    ...(newest && newest.day > date
      ? [
          item(
            `${newest.id} is dated ${newest.day}, expected nothing newer than the sign-off of ${date}: sign on the day you look`,
            [newest.id],
          ),
        ]
      : []),
  ];
}

function ownWelds(model: Model, stage: string, by: string): readonly OpenItem[] {
  const own = ownRecords(model, stage).filter(({ kind, record }) => kind === 'weld' && (record as Weld).welder === by);
  const [first] = own;
  if (first === undefined) return [];
  return [
    {
      list: 'completion',
      grade: 'A',
      message: `${by} welded ${own.length === 1 ? first.record.id : `${own.length} welds`} of this stage, expected somebody else to sign it`,
      ids: own.map(({ record }) => record.id),
      who: dutyOf('inspector', [], model),
      where: `stage ${stage}`,
      because: 'signoff',
      stage,
    },
  ];
}

/** The digest that a signature given now would carry. */
export const digestFor = (model: Model, { stage, date }: Signing): string => digestOf(coverageOf(model, stage, date));

/** Stages before this one, in build order, that nobody has signed: told, for the shop to judge. */
export function unsignedBefore({ shell, library }: Model, stage: string): readonly string[] {
  const at = library.stages.findIndex(({ id }) => id === stage);
  return library.stages
    .slice(0, Math.max(0, at))
    .flatMap(({ id }) => (shell.signoffs.some((one) => one.stage === id) ? [] : [id]));
}
