import type { Day } from '../quantity/day.js';

/** The day here, as a calendar on the wall has it. */
export const localDay = (now: Date): Day =>
  `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}` as Day;
