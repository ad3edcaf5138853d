import { progressOf } from '../closeout/state.js';
import type { Computed, Figures } from '../compute/figures.js';
import { keptOr } from '../compute/lazy.js';
import { heatAffectedMetal } from '../compute/welding/weld-bands.js';
import { faces } from './release/faces.js';

/** What answers take time over, by name; kept with the figures of the same records. Plain data of the model and its figures alone. */
export const DERIVED = {
  faces: ({ model, figures }: Computed) => faces(model, figures.takeOff),
  heatAffected: ({ figures }: { readonly figures: Pick<Figures, 'joints'> }) => heatAffectedMetal(figures.joints.joints),
  progress: ({ model }: Computed) => progressOf(model),
};

export type DerivedName = keyof typeof DERIVED;

/** One of them, computed once a state of the records. */
export const derived = <Name extends DerivedName>(
  of: Parameters<(typeof DERIVED)[Name]>[0] & Pick<Computed, 'kept'>,
  name: Name,
): ReturnType<(typeof DERIVED)[Name]> =>
  keptOr(of.kept, name, () => (DERIVED[name] as (from: typeof of) => ReturnType<(typeof DERIVED)[Name]>)(of));
