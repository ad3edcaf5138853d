import type { OpenItem } from '../../closeout/items.js';
import type { Json } from './json.js';
import type { TerminalPaint } from './paint.js';
import { counted, paragraph } from './wrap.js';

const LISTS = [
  ['completion', 'Completion list: work not done, or not on record'],
  ['punch', 'Punch list: work done and not acceptable'],
] as const;

const GRADES = 'A blocks sign-off and close-out; B blocks close-out until it is put right or decided; C is accepted.';

/** The two lists, each by who must do it and where. */
export function openItemsText(items: readonly OpenItem[], paint: TerminalPaint, all: boolean): string {
  const texts = LISTS.flatMap(([list, heading]) => {
    const own = items.filter((item) => item.list === list);
    return own.length === 0 ? [] : [[paint.strong(`${heading} (${own.length})`), ...byWho(own, paint, all)].join('\n')];
  });
  return [...texts, paint.faint(GRADES)].join('\n\n');
}

/** More of the same in one place are counted, not listed. */
const LISTED = 4;

function byWho(items: readonly OpenItem[], paint: TerminalPaint, all: boolean): readonly string[] {
  return grouped(items, ({ who }) => who).flatMap(([who, his]) => [
    paint.strong(`  ${who}`),
    ...grouped(his, ({ where }) => where).flatMap(([where, here]) => [
      `    ${where}`,
      ...grouped(here, ({ grade, because }) => `${grade} ${because}`).flatMap(([, alike]) => {
        const shown = all ? alike : alike.slice(0, LISTED);
        const more = alike.length - shown.length;
        return [
          ...shown.map((item) => paragraph(item.message, `      ${item.grade}  `)),
          ...(more > 0 ? [paint.faint(`         and ${more} more alike (--all shows them)`)] : []),
        ];
      }),
    ]),
  ]);
}

function grouped<T>(items: readonly T[], keyOf: (item: T) => string): readonly (readonly [string, readonly T[]])[] {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return [...groups];
}

export const openItemJson = ({ list, grade, message, ids, who, where, because, stage, place }: OpenItem): Json => ({
  list,
  grade,
  message,
  ids,
  who,
  where,
  because,
  stage: stage ?? null,
  file: place?.file ?? null,
  line: place?.line ?? null,
});

/** `3 items on the completion list, 1 on the punch list`. */
export function openCounts(items: readonly OpenItem[]): string {
  const [completion, punch] = ['completion', 'punch'].map((list) => items.filter((item) => item.list === list).length);
  return `${counted(completion ?? 0, 'item')} on the completion list, ${punch} on the punch list`;
}
