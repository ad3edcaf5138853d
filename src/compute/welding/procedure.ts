import type { Model } from '../../model/shell.js';
import type { Procedure, Weld } from '../../records/index.js';
import { baseParts, thinnerMm } from './base.js';
import { coversPosition } from './positions.js';
import { processName } from './process.js';
import { inRange } from './qualification.js';

/** One thing that a weld has and its procedure does not allow. */
export interface Uncovered {
  /** Field of the weld record. */
  readonly field: 'process' | 'type' | 'filler' | 'position' | 'joins';
  readonly has: string;
  readonly allowed: string;
}

/** What of a weld lies outside its procedure; a list that the procedure leaves empty is not judged. `mm` writes a thickness. */
export function uncovered(
  weld: Weld,
  procedure: Procedure,
  model: Model,
  mm: (thicknessMm: number) => string,
): readonly Uncovered[] {
  const out: Uncovered[] = [];
  if (processName(weld.process) !== processName(procedure.process)) {
    out.push({ field: 'process', has: weld.process, allowed: procedure.process });
  }
  if (procedure.types.length > 0 && !procedure.types.includes(weld.type)) {
    out.push({ field: 'type', has: weld.type, allowed: procedure.types.join(', ') });
  }
  if (weld.filler !== undefined && procedure.filler.length > 0 && !procedure.filler.includes(weld.filler)) {
    out.push({ field: 'filler', has: weld.filler, allowed: procedure.filler.join(', ') });
  }
  if (weld.position !== undefined && procedure.positions.length > 0 && !coversPosition(procedure.positions, weld.position)) {
    out.push({ field: 'position', has: weld.position, allowed: procedure.positions.join(', ') });
  }
  const parts = baseParts(weld, model);
  const alloys = new Set(parts.flatMap(({ alloy }) => alloy ?? []));
  for (const alloy of alloys) {
    if (procedure.base.length > 0 && !procedure.base.includes(alloy)) {
      out.push({ field: 'joins', has: `base metal ${alloy}`, allowed: procedure.base.join(', ') });
    }
  }
  const thin = thinnerMm(parts);
  if (thin !== undefined && procedure.thicknessMm && !inRange(thin, procedure.thicknessMm)) {
    const [low, high] = procedure.thicknessMm;
    out.push({ field: 'joins', has: `thinner part ${mm(thin)}`, allowed: `${mm(low)} to ${mm(high)}` });
  }
  return out;
}
