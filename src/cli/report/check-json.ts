import type { Assessment } from '../../assess.js';
import type { JointCoverage } from '../../compute/structure/types.js';
import { countFindings } from '../../rules/decide.js';
import type { CheckedFindings, CheckedShell } from './checked.js';
import { envelope, findingJson, type Json, mapValues, place3 } from './json.js';
import { photoCoverageJson } from './photos-json.js';

type Body = { readonly [key: string]: Json };

/**
 * One shell: its answer flat, with the findings of shop file and library among its own.
 * Several: all findings and counts together, and each shell's own answer under `shells`.
 */
export function checkJson(library: CheckedFindings, shells: readonly CheckedShell[]): string {
  const findings = [...library.findings, ...shells.flatMap((shell) => shell.findings)];
  const all = { findings: findings.map(findingJson), counts: { ...countFindings(findings) } };
  const [only] = shells;
  if (only && shells.length === 1) {
    return envelope('check', only.shell, only.revision, { ...all, ...figuresJson(only.assessment) });
  }
  return envelope('check', null, library.revision, { ...all, shells: shells.map(shellJson) });
}

function shellJson(checked: CheckedShell): Body {
  const { shell, revision, findings, counts, assessment } = checked;
  return { shell, revision, findings: findings.map(findingJson), counts: { ...counts }, ...figuresJson(assessment) };
}

function figuresJson({ figures }: Assessment): Body {
  const { coverage } = figures.access;
  const { materials, weldTotals } = figures;
  const { found, recorded, missing, withoutJoint, offJoint = [], byStage = {}, byZone = {} } = figures.joints;
  return {
    openings: figures.openings.map((one) => ({
      id: one.id,
      racking_deg: one.rackingDeg,
      diagonal_difference_mm: one.diagonalDifferenceMm,
      sag_mm: one.sagMm,
      gussets: one.gussets,
    })),
    headers: figures.openings.flatMap((one) =>
      one.headerDeflectionMm === undefined
        ? []
        : [
            {
              opening: one.id,
              own_mm: one.headerDeflectionMm,
              panel_kg: one.headerPanelKg,
              with_panel_mm: one.headerWithPanelMm,
              built_in_mm: one.headerBuiltInMm,
            },
          ],
    ),
    access: {
      nodes: coverage.nodes,
      nodes_in_reach: coverage.nodesInReach,
      run_length_mm: coverage.runLengthMm,
      run_length_in_reach_mm: coverage.runLengthInReachMm,
    },
    photos: photoCoverageJson(figures.photos),
    materials: {
      primary_kg: materials.primaryKg,
      traced_kg: materials.tracedKg,
      share: materials.share,
      untraced: materials.untraced,
      heats: materials.heats.map((one) => ({
        heat: one.heat,
        alloys: one.alloys,
        mass_kg: one.massKg,
        certificates: one.certificates.map(({ id }) => id),
      })),
    },
    welds: {
      count: weldTotals.count,
      joints: weldTotals.jointsCount,
      length_mm: weldTotals.lengthMm,
      deposited_kg: weldTotals.depositedKg,
      by_process: mapValues(weldTotals.byProcess, (one) => ({
        count: one.count,
        length_mm: one.lengthMm,
        inspected: one.inspected,
        rejected: one.rejected,
        repair_rate: one.repairRate,
      })),
      schedule: (weldTotals.welds ?? []).map((one) => ({
        id: one.id,
        class: one.jointClass,
        throat_mm: one.throatMm,
        length_mm: one.lengthMm,
        deposited_kg: one.depositedKg,
      })),
      inspection: figures.inspection.map((one) => ({
        class: one.jointClass,
        method: one.method,
        joints: one.joints,
        accepted: one.accepted,
        share: one.share,
        required: one.required,
      })),
    },
    clamps: {
      count: figures.clamps.count,
      torqued: figures.clamps.torqued,
      isolated: figures.clamps.isolated,
      dampers: figures.clamps.dampers,
      spacing: figures.clamps.spacing.map(({ member, clamps, widestMm, between }) => ({
        member,
        clamps,
        widest_mm: widestMm,
        between: [...between],
      })),
      due: figures.clamps.clamps.flatMap(({ id, check, checkAgain }) => (check === 'due' ? [{ id, check: checkAgain }] : [])),
    },
    bonds: figures.bonds.map((one) => ({
      panel: one.panel,
      dew_point_k: one.dewPointK,
      dew_margin_k: one.dewMarginK,
      coupon: one.coupon,
      missing: one.missing,
    })),
    weld_bands: figures.heatAffectedZones.map(({ member, bandsMm, share }) => ({
      member,
      bands_mm: bandsMm.map((band) => [...band]),
      share,
    })),
    spacings: figures.spacings.map((one) => ({
      row: one.row,
      stations: one.stations,
      widest_mm: one.widestMm,
      wide: one.wide.map(({ between, gapMm, at }) => ({ between: [...between], gap_mm: gapMm, at_mm: place3(at) })),
    })),
    joints: {
      found,
      recorded,
      missing: missing.map(([a, b]) => [a, b]),
      without_joint: withoutJoint,
    },
    joint_coverage: {
      by_stage: coverageJson(byStage),
      by_zone: coverageJson(byZone),
      off_joint: offJoint.map(({ weld, distanceMm }) => ({ weld, distance_mm: distanceMm })),
    },
  };
}

const coverageJson = (sums: Readonly<Record<string, JointCoverage>>): Json =>
  mapValues(sums, ({ found, recorded }) => ({ found, recorded }));
