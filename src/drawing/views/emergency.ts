import type { Assessment } from '../../assess.js';
import { BADGE_HALF_MM, type Badge, badgeMarks } from '../badges.js';
import type { Drawing, DrawingOptions } from '../compose.js';
import { dangerousParts, type RescueGroup, rescueItems } from '../rescue.js';
import type { SheetSize } from '../sheet.js';
import { toSvg } from '../svg.js';
import { phraseFor, wordsFor } from '../wording.js';
import { numberedPlan } from './numbered-plan.js';

/** What must not be cut into: drawn as lines. */
const DANGEROUS_MEDIA = ['gas', 'ac'] as const;

const RESCUE_BADGES: Readonly<Record<RescueGroup, Badge>> = {
  Gas: 'gas',
  Fuel: 'fuel',
  'AC power': 'mains',
  'Batteries and direct current': 'battery',
};

/** Number of an item in the shape of its group, as an inline picture for the list; `name`: the group in the reader's words. */
export function rescueBadge(group: RescueGroup, number: number, name: string = group): string {
  const badge = RESCUE_BADGES[group];
  const side = 2 * BADGE_HALF_MM[badge] + 1;
  const marks = badgeMarks(badge, String(number), [side / 2, side / 2]);
  return toSvg(
    { widthMm: side, heightMm: side, title: `${number}`, alt: `${number}, ${name}`, marks },
    { linkable: () => false },
  );
}

/** Plan over left side: the bare shell, what a rescuer shuts or keeps away from by its number in the list, gas and mains lines. */
export function emergencyPlan(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const [w, phrase] = [wordsFor(a.model), phraseFor(a.model)];
  const items = rescueItems(a.model.shell).items.flatMap(({ at, ...item }) => (at ? [{ ...item, at }] : []));
  return numberedPlan(
    a,
    sheet,
    {
      id: 'emergency',
      title: w('drawn.emergency'),
      alt: w('drawn.emergency.alt', {
        count: items.length,
        list: items.map(({ number, name, node }) => `${number} ${node ? name : phrase(name)}`).join(', '),
      }),
      items: items.map((item) => ({ ...item, label: String(item.number), badge: RESCUE_BADGES[item.group] })),
      media: DANGEROUS_MEDIA,
      parts: dangerousParts(a.model.shell),
      note: w('drawn.emergency.note'),
    },
    options,
  );
}
