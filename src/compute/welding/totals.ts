import type { Model } from '../../model/shell.js';
import type { Weld } from '../../records/index.js';
import type { WeldFigure, WeldTotals } from '../structure/types.js';
import { baseParts, thinnerMm } from './base.js';
import { depositKg, laidLengthMm } from './deposit.js';
import { jointClass } from './inspection.js';
import { processName } from './process.js';
import { effectiveThroatMm } from './throat.js';

type ByProcess = WeldTotals['byProcess'][string];

/** Lengths, deposited filler, rejects and repairs of all weld records. */
export function weldTotals(model: Model): WeldTotals {
  const { welds } = model.shell;
  const figures = welds.map((weld) => weldFigure(weld, model));
  const byProcess = new Map<string, ByProcess>();
  for (const weld of welds) {
    const process = processName(weld.process);
    const so = byProcess.get(process) ?? NONE;
    const inspected = so.inspected + (weld.inspections.length > 0 ? 1 : 0);
    const rejected = so.rejected + (weld.inspections.some(({ result }) => result === 'reject') ? 1 : 0);
    byProcess.set(process, {
      count: so.count + 1,
      lengthMm: so.lengthMm + lengthOf(weld),
      rejects: so.rejects + weld.inspections.filter(({ result }) => result === 'reject').length,
      repairs: so.repairs + repairsOf(weld),
      inspected,
      rejected,
      ...(inspected > 0 ? { repairRate: rejected / inspected } : {}),
    });
  }
  return {
    count: welds.length,
    jointsCount: welds.reduce((sum, { joins }) => sum + joins.length, 0),
    lengthMm: figures.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    depositedKg: figures.reduce((sum, { depositedKg }) => sum + depositedKg, 0),
    welds: figures,
    byProcess: Object.fromEntries(byProcess),
    assumptions: ASSUMPTIONS,
  };
}

const NONE: ByProcess = { count: 0, lengthMm: 0, rejects: 0, repairs: 0, inspected: 0, rejected: 0 };

const ASSUMPTIONS = [
  'Lengths are laid lengths: a weld on both sides counts twice, a record for several joints counts each.',
  'Deposited filler is taken with flat faces and no cap: fillets leg² / 2; grooves with a 1 mm root gap, bevels of 45°, V grooves of 60°; spatter and stub loss are not counted.',
];

const lengthOf = (weld: Weld): number => laidLengthMm(weld) * weld.joins.length;

function weldFigure(weld: Weld, model: Model): WeldFigure {
  return {
    id: weld.id,
    jointClass: jointClass(weld, model),
    throatMm: effectiveThroatMm(weld),
    lengthMm: lengthOf(weld),
    depositedKg: weld.joins.length * depositKg(weld, thinnerMm(baseParts(weld, model))),
  };
}

/** Repairs carry their number: the highest is how many there were. */
const repairsOf = ({ inspections }: Weld): number => Math.max(0, ...inspections.map(({ repair }) => repair ?? 0));
