import type { BehindItem } from '../../compute/access/types.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { length, lengthDown, positionWords, type UnitSystem } from '../../quantity/format.js';
import type { Hazard } from '../../query/hazards.js';
import type { ScrewAt } from '../../query/lookup/index.js';
import type { NearHit } from '../../query/lookup/types.js';
import { reachWords } from '../../query/reach-words.js';
import { nameOf } from './name-of.js';
import { textTable } from './tables.js';
import { bullets, paragraph } from './wrap.js';

/** What can hurt a hand there first, then everything, nearest first. */
export function behindText(model: Model, panel: string, contents: readonly BehindItem[], hazards: readonly Hazard[]): string {
  if (contents.length === 0) return `Nothing recorded is within an arm's length behind ${panel}.`;
  const { units } = model.shop;
  const rows = contents.map((one) => [
    one.id,
    one.kind,
    nameOf(one.id, model),
    length(one.distanceMm, units),
    reachText(one),
    one.toleranceMm === undefined ? '' : `±${length(one.toleranceMm, units)}`,
    one.blockedBy.length > 0 ? `blocked by ${one.blockedBy.join(', ')}` : '',
  ]);
  const listed = textTable(
    [
      { head: 'id' },
      { head: 'kind' },
      { head: 'what' },
      { head: 'distance', align: 'right' },
      { head: 'reach' },
      { head: 'known to' },
      { head: '', wrap: true },
    ],
    rows,
  );
  if (hazards.length === 0) return listed;
  return `${bullets(hazards.map(({ word, act, ids }) => `${word}: ${ids.join(', ')}. ${act}`))}\n\n${listed}`;
}

/** `arm, tool, both hands`: how far in, and what one can do there. */
const reachText = ({ reach, tool, twoHands }: BehindItem): string =>
  [reachWords(reach), tool && 'tool', twoHands && 'both hands'].filter(Boolean).join(', ');

const DRILL = 'Only what is recorded is known, to its recorded tolerance. Open up and look, and set a stop on the drill.';

const NO_FACE =
  'No face is recorded within 1 in (25 mm) of that place, so how deep a screw may go there is not known. Ask at a place on a skin, lining, floor or ceiling.';

export function nearText(model: Model, place: Vec3, withinMm: number, hits: readonly NearHit[], screw?: ScrewAt): string {
  const { units } = model.shop;
  const head = paragraph(`Within ${length(withinMm, units)} of ${positionWords(place, units)}:`);
  const last = [screw ? screwText(screw, units) : paragraph(NO_FACE), paragraph(DRILL)];
  if (hits.length === 0) return [head, 'Nothing recorded.', ...last].join('\n\n');
  const rows = hits.map((one) => [
    one.id,
    one.kind,
    nameOf(one.id, model),
    one.distanceMm === 0 ? 'here' : length(one.distanceMm, units),
    one.toleranceMm === undefined ? '' : `±${length(one.toleranceMm, units)}`,
  ]);
  const heads = [
    { head: 'id' },
    { head: 'kind' },
    { head: 'what', wrap: true },
    { head: 'distance', align: 'right' as const },
    { head: 'known to' },
  ];
  return [head, textTable(heads, rows), ...last].join('\n\n');
}

/** The longest screw through the nearest face, what ends it, and the metal behind. */
function screwText({ panel, at, depthMm, meets, metal }: ScrewAt, units: UnitSystem): string {
  const deep = lengthDown(depthMm, units);
  const most = meets
    ? depthMm === 0
      ? `none: ${meets.kind} ${meets.id} begins at the face`
      : `${deep} under its head; then ${meets.kind === 'weld' ? 'the soft metal about weld' : meets.kind} ${meets.id}`
    : `${deep} under its head, as deep as is looked`;
  const behind = metal.map(({ id, fromMm, toMm }) => `${id} from ${length(fromMm, units)} to ${length(toMm, units)}`).join(', ');
  return paragraph(
    `Deepest screw into ${panel} at ${positionWords(at, units)}: ${most}. ${behind ? `Metal behind it: ${behind}.` : 'No member behind it to screw into.'} Recorded tolerances are taken off, 1 in where none is recorded.`,
  );
}
