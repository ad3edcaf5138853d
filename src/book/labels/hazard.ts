import type { BehindItem } from '../../compute/access/types.js';
import type { Medium } from '../../model/services.js';
import type { Shell } from '../../model/shell.js';

/** What is worst behind a panel, in words that stand alone. */
export interface Hazard {
  readonly medium: Medium;
  readonly word: string;
  readonly act: string;
  /** Marked with stripes. */
  readonly grave: boolean;
}

/** Worst first. Common practice, no source. */
const HAZARDS: readonly Hazard[] = [
  { medium: 'gas', word: 'Gas', act: 'No flame. Shut the source first.', grave: true },
  { medium: 'ac', word: 'Mains voltage', act: 'Disconnect all sources, prove dead.', grave: true },
  { medium: 'fuel', word: 'Fuel', act: 'No flame. Shut the source first.', grave: true },
  { medium: 'hydraulic', word: 'Hydraulic pressure', act: 'Let the pressure off first.', grave: true },
  { medium: 'refrigerant', word: 'Refrigerant', act: 'Under pressure: licensed work.', grave: true },
  { medium: 'air', word: 'Compressed air', act: 'Let the pressure off first.', grave: true },
  { medium: 'dc', word: 'Battery current', act: 'Open the battery switch first.', grave: true },
  { medium: 'water', word: 'Water', act: 'Shut and drain first.', grave: false },
  { medium: 'drain', word: 'Waste water', act: 'Drain first.', grave: false },
  { medium: 'data', word: 'Signal wires', act: 'Look before reaching in.', grave: false },
  { medium: 'duct', word: 'Air duct', act: 'Look before reaching in.', grave: false },
];

/** Every hazard behind a panel, worst first; empty where no service is recorded there, which is no proof that none is. */
export function hazardsBehind(shell: Pick<Shell, 'nodes' | 'runs'>, behind: readonly BehindItem[]): readonly Hazard[] {
  const media = new Map([...shell.nodes, ...shell.runs].map((one) => [one.id, one.medium]));
  const found = new Set(behind.map((item) => media.get(item.id)));
  return HAZARDS.filter(({ medium }) => found.has(medium));
}
