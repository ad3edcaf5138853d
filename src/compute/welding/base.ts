import type { Model } from '../../model/shell.js';
import type { Member, Panel, Weld } from '../../records/index.js';
import { thinnestWallMm } from '../../sections/index.js';

/** What a weld joins: alloy and wall of each part that says them. */
export interface BasePart {
  readonly id: string;
  readonly alloy?: string;
  readonly thicknessMm?: number;
}

/** The members and panels that a weld joins, each once. Ids that are neither are left out. */
export function baseParts(weld: Weld, { shell, library }: Model): readonly BasePart[] {
  const ids = [...new Set(weld.joins.flat())];
  return ids.flatMap((id): readonly BasePart[] => {
    const entry = shell.byId.get(id);
    if (entry?.kind === 'member') {
      const member = entry.record as Member;
      return [{ id, alloy: member.alloy, thicknessMm: wallMm(member, library) }];
    }
    if (entry?.kind !== 'panel') return [];
    const panel = entry.record as Panel;
    return [{ id, alloy: panel.alloy, thicknessMm: panel.thicknessMm }];
  });
}

/** Of two parts the thinner counts, in a butt and in a fillet: EN 288-4 as read in a textbook. Undefined where no wall is known. */
export function thinnerMm(parts: readonly BasePart[]): number | undefined {
  const walls = parts.flatMap(({ thicknessMm }) => thicknessMm ?? []);
  return walls.length > 0 ? Math.min(...walls) : undefined;
}

/** The thinnest wall of a member: where a weld may burn through. */
export function wallMm({ shape }: Member, { sections }: Model['library']): number | undefined {
  if (shape.kind === 'plate') return shape.thicknessMm;
  const sizes = sections.get(shape.section)?.dimensions;
  return sizes && thinnestWallMm(sizes);
}
