import type { Assessment } from '../../assess.js';
import type { Drawing, DrawingOptions } from '../compose.js';
import { protectionPlaces } from '../protection-places.js';
import type { SheetSize } from '../sheet.js';
import { wordsFor } from '../wording.js';
import { numberedPlan } from './numbered-plan.js';

/** Plan over left side with a letter at every place that holds fuses, breakers or valves of protection. Undefined where none has a place. */
export function protectionPlan(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing | undefined {
  const places = protectionPlaces(a.model.shell);
  if (places.length === 0) return undefined;
  return numberedPlan(
    a,
    sheet,
    {
      id: 'protection',
      title: 'Where the fuses, breakers and other protection are',
      alt: `Plan and left side with ${places.length} lettered places: ${places
        .map(({ letter, circuits }) => `${letter} protects ${circuits.join(', ')}`)
        .join('; ')}.`,
      items: places.map(({ letter, at, id }) => ({ label: letter, id, at })),
      media: [],
      note: `${wordsFor(a.model)('drawn.kerb.plan')} The letters stand in the table.`,
    },
    options,
  );
}
