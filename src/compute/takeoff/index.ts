import { boundsOf } from '../../geometry/box.js';
import { lerp, type Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';
import type { Shell } from '../../records/index.js';
import { takeOffAssumptions } from './assumptions.js';
import { memberFigures } from './members.js';
import { panelFigures } from './panels.js';
import { sectionTable } from './section-table.js';
import { runFigures } from './services/index.js';
import { massSumOf, sumBy, sumBySide } from './sums.js';
import type { MassItem, MassSum, MemberFigure, PanelFigure, RunFigure, TakeOff } from './types.js';
import { UNCERTAINTY } from './uncertainty.js';

export { runOutsideDiameterMm } from './services/index.js';

/**
 * Lengths, areas, masses and centres of gravity of everything recorded in a shell, with its sums.
 * Lengths in mm, areas in mm², masses in kg, places in the datum. What was assumed stands beside the figures.
 */
export function takeOff(model: Model): TakeOff {
  const members = memberFigures(model);
  const panels = panelFigures(model);
  const runs = runFigures(model);
  const items = massItems(model, members, panels, runs);
  return {
    sections: sectionTable(model),
    members,
    panels,
    runs,
    items,
    total: massSumOf(items),
    byStage: sumBy(items, (item) => item.stage),
    byAlloy: sumBy(
      items.filter((item) => item.alloy !== undefined),
      (item) => item.alloy,
    ),
    bySection: sumBySection(items, members),
    bySide: sumBySide(items),
    assumptions: takeOffAssumptions(model, runs),
  };
}

function massItems(
  { shell }: Model,
  members: readonly MemberFigure[],
  panels: readonly PanelFigure[],
  runs: readonly RunFigure[],
): readonly MassItem[] {
  const weighed = new Set(shell.panels.filter((panel) => panel.massKg !== undefined).map(({ id }) => id));
  return [
    ...members.map((one) => item('member', one, 'calculated')),
    ...panels.map((one) => item('panel', one, weighed.has(one.id) ? 'weighed' : 'calculated')),
    ...runItems(runs, shell),
    ...shell.components.map((one) => item('component', { ...one, centroid: one.at }, one.basis)),
  ];
}

/** A run whose way is not recorded weighs at the middle of the others; how far it may be from there goes with it. */
function runItems(runs: readonly RunFigure[], shell: Shell): readonly MassItem[] {
  const placed = runs.flatMap((one) => (one.centroid ? [item('run', { ...one, centroid: one.centroid }, 'calculated')] : []));
  const lost = runs.filter((one) => one.centroid === undefined && one.massKg > 0);
  if (lost.length === 0) return placed;
  const about = aboutWhere(shell, placed);
  return [
    ...placed,
    ...lost.map((one) => ({ ...item('run', { ...one, centroid: about.at }, 'calculated'), uPositionMm: about.uncertaintyMm })),
  ];
}

/** The middle of what is placed, and the standard uncertainty of anything that may be anywhere along it: length ÷ √12 (GUM 4.3.7). */
function aboutWhere(
  { members, nodes }: Shell,
  placed: readonly MassItem[],
): { readonly at: Vec3; readonly uncertaintyMm: number } {
  const ends = members.flatMap(({ shape }) => (shape.kind === 'line' ? [shape.from, shape.to] : shape.outline));
  const corners = [...ends, ...placedNodes(nodes).map(({ at }) => at)];
  const { min, max } = boundsOf(corners.length > 0 ? corners : [[0, 0, 0]]);
  const middle: Vec3 = placed.length > 0 ? massSumOf(placed).centroid : lerp(min, max, 0.5);
  return { at: middle, uncertaintyMm: (max[0] - min[0]) / Math.sqrt(12) };
}

function item(
  kind: MassItem['kind'],
  one: Pick<MassItem, 'id' | 'massKg' | 'centroid' | 'stage' | 'alloy' | 'section'>,
  basis: MassItem['basis'],
): MassItem {
  const { mass, positionMm } = UNCERTAINTY[basis];
  return {
    id: one.id,
    kind,
    massKg: one.massKg,
    centroid: one.centroid,
    basis,
    stage: one.stage,
    alloy: one.alloy,
    section: one.section,
    uMassKg: one.massKg * mass,
    uPositionMm: positionMm,
  };
}

function sumBySection(items: readonly MassItem[], members: readonly MemberFigure[]): TakeOff['bySection'] {
  const lengths = new Map<string, number>();
  for (const { section, lengthMm } of members) {
    if (section !== undefined) lengths.set(section, (lengths.get(section) ?? 0) + lengthMm);
  }
  const sums: Readonly<Record<string, MassSum>> = sumBy(
    items.filter((one) => one.section !== undefined),
    (one) => one.section,
  );
  return Object.fromEntries(Object.entries(sums).map(([id, sum]) => [id, { ...sum, lengthMm: lengths.get(id) ?? 0 }]));
}
