import { stateName } from '../../closeout/state.js';
import { envelope, findingJson, place3 } from './json.js';
import type { HandOver } from './release.js';
import { budgetJson } from './weights-json.js';

/** `printed`: where the sheet was printed to, and how many pages it has. */
export function releaseJson(
  sheet: HandOver,
  revision: string | null,
  printed?: { readonly file: string; readonly pages: number },
): string {
  const { model, weights, closed } = sheet;
  return envelope('release', model.shell.id, revision, {
    state: stateName(sheet.progress, closed),
    closed: closed ? { tag: closed.tag, revision_letter: closed.revision } : null,
    basis: weights.basis,
    basis_ticket: weights.basisTicket,
    reserve: weights.reserve,
    gvwr_left_kg: sheet.leftOfGvwrKg,
    budget: weights.budget.map(budgetJson),
    stations: sheet.stations.map((one) => ({
      x_mm: one.xMm,
      adds_kg: one.addsKg,
      most_kg: one.mostKg,
      limited_by: one.limitedBy,
    })),
    faces: sheet.faces.map((face) => ({
      face: face.name,
      panels: face.panels,
      runs: face.runs.map((run) => ({
        id: run.id,
        medium: run.medium,
        panel: run.panel,
        depth_mm: run.depthMm,
        at_mm: place3(run.at),
        tolerance_mm: run.toleranceMm,
      })),
    })),
    do_not_paint: sheet.keepClean.map(({ what, why, items }) => ({
      what,
      why,
      items: items.map(({ id, name, at }) => ({ id, name, position_mm: place3(at) })),
    })),
    open: sheet.open.map(({ zone, findings }) => ({
      zone: zone?.id,
      zone_name: zone?.name,
      findings: findings.map(findingJson),
    })),
    problems: weights.problems,
    assumptions: weights.assumptions,
    cautions: sheet.cautions,
    ...(printed ? { file: printed.file, pages: printed.pages } : {}),
  });
}
