import type { Assessment } from '../../assess.js';
import type { Medium } from '../../model/services.js';
import type { Drawing, DrawingOptions } from '../compose.js';
import { rescueItems } from '../rescue.js';
import type { SheetSize } from '../sheet.js';
import { numberedPlan } from './numbered-plan.js';

/** What must not be cut into: drawn as lines. */
const DANGEROUS_MEDIA: readonly Medium[] = ['gas', 'ac'];

/** Plan over left side: the bare shell, what a rescuer shuts or keeps away from by its number in the list, gas and mains lines. */
export function emergencyPlan(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { items } = rescueItems(a.model.shell);
  return numberedPlan(
    a,
    sheet,
    {
      id: 'emergency',
      title: 'Where it is',
      alt: `Plan and left side with ${items.length} numbered things to shut, to switch off or to keep away from: ${items
        .map(({ number, name }) => `${number} ${name}`)
        .join(', ')}; and the way of gas and mains lines.`,
      items: items.map((item) => ({ ...item, label: String(item.number) })),
      media: DANGEROUS_MEDIA,
      note: 'Above: plan, right (kerb) side up. Below: from the left. Lines: gas and mains as recorded; other wiring is not shown. No place is proven safe to cut.',
    },
    options,
  );
}
