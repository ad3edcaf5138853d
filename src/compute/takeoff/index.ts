import type { Model } from '../../model/shell.js';
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
    ...runs.map((one) => item('run', one, 'calculated')),
    ...shell.components.map((one) => item('component', { ...one, centroid: one.at }, one.basis)),
  ];
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
