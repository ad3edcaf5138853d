import type { Model } from '../../model/shell.js';

/** What on record bounds how warm the coach may be made, as in a paint oven. */
export interface HeatLimits {
  /** Insulation ratings of wires, the lowest first: the wires of each, by their circuits. °C */
  readonly wires: readonly { readonly celsius: number; readonly circuits: readonly string[] }[];
  /** Circuits whose wires have no rating on record. */
  readonly unrated: readonly string[];
  /** Adhesives on record, with the panels that they hold. */
  readonly adhesives: readonly { readonly name: string; readonly panels: readonly string[] }[];
}

/** Nothing of it is a limit for baking by itself: makers of adhesive, foam, batteries, tanks and tyres give theirs. */
export function heatLimits({ shell }: Model): HeatLimits {
  const wires = new Map<number, string[]>();
  const wired = shell.circuits.filter(({ conductor }) => conductor !== undefined);
  for (const { id, conductor } of wired) {
    const celsius = conductor?.ratingC;
    if (celsius !== undefined) wires.set(celsius, [...(wires.get(celsius) ?? []), id]);
  }
  const adhesives = new Map<string, string[]>();
  for (const { id, fixing } of shell.panels) {
    if (fixing?.adhesive !== undefined) adhesives.set(fixing.adhesive, [...(adhesives.get(fixing.adhesive) ?? []), id]);
  }
  return {
    wires: [...wires].sort(([a], [b]) => a - b).map(([celsius, circuits]) => ({ celsius, circuits })),
    unrated: wired.filter(({ conductor }) => conductor?.ratingC === undefined).map(({ id }) => id),
    adhesives: [...adhesives].map(([name, panels]) => ({ name, panels })),
  };
}
