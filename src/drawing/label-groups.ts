import type { LabelWish } from './label-wish.js';

/** Anchors nearer than this to each other may share one list, mm. */
const TOGETHER_MM = 5;
const MOST_LINES = 14;

const apart = (a: LabelWish, b: LabelWish): number => Math.hypot(a.anchor[0] - b.anchor[0], a.anchor[1] - b.anchor[1]);

/**
 * The same wishes with those that found no room, and their near neighbours, drawn together into lists: one place on the sheet
 * with one leader for several ids, as at a distribution panel. Wishes that stand alone stay as they are.
 */
export function grouped(wishes: readonly LabelWish[], leftOut: readonly LabelWish[]): readonly LabelWish[] {
  const taken = new Set<LabelWish>();
  const lists = new Map<LabelWish, LabelWish>();
  for (const first of leftOut) {
    if (taken.has(first) || first.lines || first.block) continue;
    const near = wishes
      .filter(
        (wish) =>
          !taken.has(wish) && !wish.repeat && !wish.lines && !wish.block && !wish.centred && apart(first, wish) <= TOGETHER_MM,
      )
      .sort((a, b) => Number(leftOut.includes(b)) - Number(leftOut.includes(a)) || apart(first, a) - apart(first, b))
      .slice(0, MOST_LINES);
    if (near.length < 2) continue;
    for (const wish of near) taken.add(wish);
    lists.set(
      first,
      listOf(
        first,
        wishes.filter((wish) => near.includes(wish)),
      ),
    );
  }
  return wishes.flatMap((wish) => lists.get(wish) ?? (taken.has(wish) ? [] : [wish]));
}

function listOf(first: LabelWish, found: readonly LabelWish[]): LabelWish {
  const members = [...found].sort((a, b) => a.text.localeCompare(b.text, 'en', { numeric: true }));
  const { also: _also, id: _id, disc, ...rest } = first;
  const together = { ...rest, text: members.map(({ text }) => text).join(', ') };
  const priority = Math.max(...members.map((one) => one.priority)) + 1;
  // A disc holds one number: several stand beside each other without it.
  if (disc) return { ...together, priority };
  return {
    ...together,
    lines: members.map(({ text, id }) => ({ text, ...(id === undefined ? {} : { id }) })),
    priority,
  };
}
