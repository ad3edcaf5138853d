import type { BehindItem } from '../../compute/access/types.js';
import type { NearHit } from '../../compute/lookup/types.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { length, position } from '../../quantity/format.js';
import { nameOf } from './name-of.js';
import { table } from './tables.js';
import { paragraph } from './wrap.js';

export function behindText(model: Model, panel: string, contents: readonly BehindItem[]): string {
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
  return table(
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
}

/** `arm, tool, both hands`: how far in, and what one can do there. */
const reachText = ({ reach, tool, twoHands }: BehindItem): string =>
  [reach, tool && 'tool', twoHands && 'both hands'].filter(Boolean).join(', ');

const DRILL = 'Only what is recorded is known, to its recorded tolerance. Open up and look, and set a stop on the drill.';

export function nearText(model: Model, place: Vec3, withinMm: number, hits: readonly NearHit[]): string {
  const { units } = model.shop;
  const head = paragraph(`Within ${length(withinMm, units)} of ${position(place, units)}:`);
  if (hits.length === 0) return `${head}\n\nNothing recorded.\n\n${paragraph(DRILL)}`;
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
  return [head, table(heads, rows), paragraph(DRILL)].join('\n\n');
}
