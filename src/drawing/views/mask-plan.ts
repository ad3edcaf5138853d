import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Drawing, DrawingOptions } from '../compose.js';
import type { SheetSize } from '../sheet.js';
import { wordsFor } from '../wording.js';
import { numberedPlan } from './numbered-plan.js';

/** Something that is masked, with its number in the list beside the plan. */
export interface Masked {
  readonly number: string;
  readonly id: string;
  readonly at: Vec3;
}

/** Plan over left side with a number at every place that is kept clear of paint for one reason. Undefined where none has a place. */
export function maskPlan(
  a: Assessment,
  what: string,
  masked: readonly Masked[],
  sheet: SheetSize,
  options: DrawingOptions = {},
): Drawing | undefined {
  if (masked.length === 0) return undefined;
  return numberedPlan(
    a,
    sheet,
    {
      id: `mask-${what.replace(/[^a-z]+/giu, '-')}`,
      title: `Where they are: ${what}`,
      alt: `Plan and left side with ${masked.length} numbered places: ${masked.map(({ number, id }) => `${number} is ${id}`).join('; ')}.`,
      items: masked.map(({ number, id, at }) => ({ label: number, id, at })),
      media: [],
      note: `${wordsFor(a.model)('drawn.kerb.plan')} The numbers stand in the table.`,
    },
    options,
  );
}
