import type { Component, Member, Shell } from '../../records/index.js';

/** A member so near under the roof sheets is one of the roof, mm. Project default. */
const UNDER_ROOF_MM = 250;
/** Shorter lines across are blocking, mm. Project default. */
const LEAST_ACROSS_MM = 1000;

/** The least height of the roof sheets; undefined where none is recorded. */
function roofHeight({ panels }: Pick<Shell, 'panels'>): number | undefined {
  const heights = panels
    .filter(({ panelKind }) => panelKind === 'roof')
    .flatMap(({ outline }) => outline.map((corner) => corner[2]));
  return heights.length > 0 ? heights.reduce((low, one) => Math.min(low, one), Infinity) : undefined;
}

/** Members that lie across the coach right under the roof sheets: the lines that carry them. By place, whatever they are called. */
export function roofLinesOf(shell: Pick<Shell, 'members' | 'panels'>): readonly Member[] {
  const roof = roofHeight(shell);
  if (roof === undefined) return [];
  return shell.members.filter(({ shape }) => {
    if (shape.kind !== 'line') return false;
    const [along, across, up] = [0, 1, 2].map((k) => Math.abs((shape.to[k] as number) - (shape.from[k] as number)));
    const isAcross = (across as number) >= LEAST_ACROSS_MM && (along as number) < 1 && (up as number) < 1;
    return isAcross && Math.abs(roof - shape.from[2]) <= UNDER_ROOF_MM;
  });
}

/** Components whose place is above the roof sheets. */
export function onRoof(shell: Pick<Shell, 'components' | 'panels'>): readonly Component[] {
  const roof = roofHeight(shell);
  return roof === undefined ? [] : shell.components.filter((one) => (one.middle ?? one.at)[2] > roof);
}
