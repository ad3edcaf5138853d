/** What the program itself can look at before a stage is signed off, each by its own phrase in library/stages.yaml. */
export const HOLD_POINT_CHECKS = [
  'welds accepted',
  'clamps torqued',
  'openings square',
  'photos',
  'photos before close-in',
  'tests passed before close-in',
  'bond coupons',
  'bare chassis weighed',
  'weighed',
  'findings decided',
] as const;
export type HoldPointCheck = (typeof HOLD_POINT_CHECKS)[number];

/** A hold point of a stage: a phrase, or a check under words of the shop's own. */
export type HoldPoint = string | { readonly check: HoldPointCheck; readonly words: string };

/** Phrases that earlier starter stores were laid down with. */
const OTHER_PHRASES: ReadonlyMap<string, HoldPointCheck> = new Map([
  ['u-bolts torqued', 'clamps torqued'],
  ['bond log', 'bond coupons'],
  ['tests before close-in', 'tests passed before close-in'],
  ['services tested before cover', 'tests passed before close-in'],
]);

/** As the shop wrote it. */
export const holdPointWords = (point: HoldPoint): string => (typeof point === 'string' ? point : point.words);

/** What is to be looked at; undefined where the words ask for a passed test so named. */
export function checkOf(point: HoldPoint): HoldPointCheck | undefined {
  if (typeof point !== 'string') return point.check;
  const phrase = point.trim().toLowerCase();
  return HOLD_POINT_CHECKS.find((check) => check === phrase) ?? OTHER_PHRASES.get(phrase);
}
