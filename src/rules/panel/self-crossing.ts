import { facet } from '../../geometry/facet.js';
import { crossingSides } from '../../geometry/planar.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Rule } from '../rule.js';

export const selfCrossing: Rule = {
  name: 'panel.self-crossing',
  severity: 'error',
  finds: 'A panel whose outline crosses itself, or whose corners enclose no area.',
  why: 'Two corners are exchanged: its area and mass come out wrong.',
  source: 'geometry',
  check({ model }) {
    return model.shell.panels.flatMap(({ id, outline, source }) => {
      const what = wrong(outline);
      if (what === undefined) return [];
      return [
        {
          rule: 'panel.self-crossing',
          severity: 'error',
          message: `The outline of panel ${id} ${what}: list its corners in order around the edge`,
          ids: [id],
          place: source.place('outline'),
        } as const,
      ];
    });
  },
};

function wrong(outline: readonly Vec3[]): string | undefined {
  const flat = facet(outline);
  if (!flat) return 'encloses no area, expected at least three corners that are not on one line';
  const sides = crossingSides(flat.outline);
  if (!sides) return undefined;
  const side = (i: number): string => `${i + 1}–${((i + 1) % outline.length) + 1}`;
  return `crosses itself where the side between corners ${side(sides[0])} meets the side between corners ${side(sides[1])}, expected sides that meet at corners only`;
}
