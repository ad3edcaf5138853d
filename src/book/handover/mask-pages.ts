import { maskPlan } from '../../drawing/index.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import { isPlanned } from '../../model/planned.js';
import { placesOf } from '../../query/place.js';
import { type KeepClean, keepClean } from '../../query/release/index.js';
import type { Book, Chapter } from '../book.js';
import { showIn } from '../show.js';
import { table } from '../table.js';
import { PLACE_NOT_RECORDED } from '../where.js';

/** One page a group of things that paint, primer and sealer stay off: a plan with numbers, and the list of them. */
export function maskPages(book: Book): readonly Chapter[] {
  const groups = keepClean(book.assessment.model);
  if (groups.length === 0) return [maskPage(book, 0)];
  return groups.map((group, at) => maskPage(book, at, group));
}

/** What is masked together, since it sits together: the fuses of one panel. */
interface Spot {
  readonly number: string;
  readonly items: readonly Item[];
  readonly at?: Vec3;
}
type Item = KeepClean['items'][number];

/** Nearer to each other than this, two things are one place to mask. mm */
const TOGETHER_MM = 200;

function spotsOf(items: readonly Item[]): readonly Spot[] {
  const spots: { items: Item[]; at?: Vec3 }[] = [];
  for (const item of items) {
    const { at } = item;
    const near = at && spots.find((one) => one.at && distance(one.at, at) < TOGETHER_MM);
    if (near) near.items.push(item);
    else spots.push({ items: [item], ...(at ? { at } : {}) });
  }
  return spots.map((one, i) => ({ ...one, number: String(i + 1) }));
}

function maskPage(book: Book, at: number, group?: KeepClean): Chapter {
  const { shell } = book.assessment.model;
  const spots = spotsOf((group?.items ?? []).filter(({ id }) => !isPlanned(shell, id)));
  const placed = spots.flatMap(({ number, items: [first], at: place }) =>
    place && first ? [{ number, id: first.id, at: place }] : [],
  );
  // A long list leaves less of the page to its plan.
  const room = { widthMm: book.availableSize('portrait').widthMm, heightMm: spots.length > LONG ? 78 : 105 };
  const title = group ? `Mask: ${group.what}` : 'Mask';
  return {
    key: `handover-mask-${at}`,
    title,
    template: 'handover-mask',
    data: {
      heading: title,
      at: `c-handover-mask-${at}`,
      why: group?.why,
      first: at === 0,
      vin: shell.vin,
      plan: group && maskPlan(book.assessment, group.what, placed, room),
      items: table(book.show, {
        look: 'dense tight',
        rows: spots,
        columns: (c) => [
          c.text('No.', ({ number }) => number),
          c.text('Id', ({ items }) => items.map(({ id }) => id).join(', ')),
          c.text('What', ({ items }) => namesOf(items)),
          c.text('Where', (spot) => placeOf(book, spot)),
        ],
        empty: 'Nothing else is recorded that must be masked.',
      }),
    },
  };
}

const LONG = 20;
const NAMES = 3;

function namesOf(items: readonly Item[]): string {
  const names = [...new Set(items.flatMap(({ name }) => name ?? []))];
  return names.length > NAMES ? `${names.slice(0, NAMES).join(', ')} and ${names.length - NAMES} more` : names.join(', ');
}

/** In words where there are some, else by the tape in one unit. */
function placeOf(book: Book, { items: [first], at }: Spot): string {
  const words = first && placesOf(book.assessment.model)(first.id);
  const { system } = book.show;
  return words ?? (at ? showIn(system === 'both' ? 'us' : system).position(at) : PLACE_NOT_RECORDED);
}
