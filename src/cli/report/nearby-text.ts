import type { BehindItem } from '../../compute/access/types.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { length, lengthDown, positionWords, type UnitSystem } from '../../quantity/format.js';
import type { Hazard } from '../../query/hazards.js';
import type { ScrewAt } from '../../query/lookup/index.js';
import type { NearHit } from '../../query/lookup/types.js';
import { reachWords } from '../../query/reach-words.js';
import { nameOf } from './name-of.js';
import { notPlacedNote } from './not-placed.js';
import { textTable } from './tables.js';
import { bullets, paragraph } from './wrap.js';

/** Nearest things listed unless all are asked for. */
const NEAREST = 10;

/** What can hurt a hand there first, then the nearest things, or all of them. */
export function behindText(
  model: Model,
  panel: string,
  contents: readonly BehindItem[],
  { hazards, all }: { readonly hazards: readonly Hazard[]; readonly all: boolean },
): string {
  const notes = notPlacedNote(model).map((note) => paragraph(note));
  if (contents.length === 0) return [`Nothing recorded is within an arm's length behind ${panel}.`, ...notes].join('\n\n');
  const { units } = model.shop;
  const shown = all ? contents : contents.slice(0, NEAREST);
  const rows = shown.map((one) => [
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
      { head: 'located to' },
      { head: '', wrap: true },
    ],
    rows,
  );
  const rest = contents.length - shown.length;
  return [
    hazards.length > 0
      ? bullets(hazards.map(({ word, act, ids }) => `${word}: ${namedIds(ids, all)}. ${act}`))
      : 'No hazard is recorded in reach of a hand.',
    listed,
    ...(rest > 0 ? [`and ${rest} farther off (--all lists them)`] : []),
    ...notes,
  ].join('\n\n');
}

/** Of a hazard, ids listed unless all are asked for. */
const HAZARD_IDS = 6;

const namedIds = (ids: readonly string[], all: boolean): string =>
  all || ids.length <= HAZARD_IDS ? ids.join(', ') : `${ids.slice(0, HAZARD_IDS).join(', ')} and ${ids.length - HAZARD_IDS} more`;

/** `arm, tool, both hands`: how far in, and what one can do there. */
const reachText = ({ reach, tool, twoHands }: BehindItem): string =>
  [reachWords(reach), tool && 'tool', twoHands && 'both hands'].filter(Boolean).join(', ');

const DRILL =
  'Only recorded things are known, to their recorded tolerance. Take the panel off and look, and set a stop on the drill.';

const NO_FACE =
  'No face is recorded within 1 in (25 mm) of that place, so how deep a screw may go there is not known. Ask at a place on a skin, lining, floor or ceiling.';

export function nearText(model: Model, place: Vec3, withinMm: number, hits: readonly NearHit[], screw?: ScrewAt): string {
  const { units } = model.shop;
  const head = paragraph(`Within ${length(withinMm, units)} of ${positionWords(place, units)}:`);
  const last = [
    screw ? screwText(screw, units) : paragraph(NO_FACE),
    paragraph(DRILL),
    ...notPlacedNote(model).map((note) => paragraph(note)),
  ];
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
    { head: 'located to' },
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
    : `${deep} under its head; nothing deeper was checked`;
  const behind = metal.map(({ id, fromMm, toMm }) => `${id} from ${length(fromMm, units)} to ${length(toMm, units)}`).join(', ');
  return paragraph(
    `Deepest screw into ${panel} at ${positionWords(at, units)}: ${most}. ${behind ? `Metal behind it: ${behind}.` : 'No member behind it to screw into.'} Recorded tolerances are taken off, 1 in where none is recorded.`,
  );
}
