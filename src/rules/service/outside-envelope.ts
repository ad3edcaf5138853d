import { type Bounds, boundsOf, grow } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Shell } from '../../model/shell.js';
import { position } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

/** Nothing of a coach is further than this outside its frame and skins, mm. House rule. */
const BEYOND_MM = 1000;

/** Where the members and panels are; without any, what the envelope allows about the datum. */
function extent(shell: Shell): Bounds | undefined {
  const corners = [
    ...shell.members.flatMap(({ shape }) => (shape.kind === 'line' ? [shape.from, shape.to] : shape.outline)),
    ...shell.panels.flatMap((panel) => panel.outline),
  ];
  if (corners.length > 0) return grow(boundsOf(corners), BEYOND_MM);
  if (!shell.envelope) return undefined;
  const { lengthMm, widthMm, heightMm } = shell.envelope;
  const about: readonly Vec3[] = [
    [-lengthMm, -widthMm / 2, -heightMm / 2],
    [lengthMm, widthMm / 2, heightMm],
  ];
  return grow(boundsOf(about), BEYOND_MM);
}

const isOutside = (at: Vec3, { min, max }: Bounds): boolean =>
  at.some((value, k) => value < (min[k] as number) || value > (max[k] as number));

export const outsideEnvelope: Rule = {
  name: 'service.outside-envelope',
  severity: 'warning',
  finds: 'A node or way point more than a metre outside the frame and skins of the coach.',
  why: 'It is most likely feet typed as inches, a lost minus sign, or left for right: the map of that run is wrong.',
  source: 'common practice, no source',
  check({ model: { shell, shop } }) {
    const bounds = extent(shell);
    if (!bounds) return [];
    const tell = (id: string, at: Vec3, place: ReturnType<Shell['source']['place']>) =>
      ({
        rule: 'service.outside-envelope',
        severity: 'warning',
        message: `${id} is at ${position(at, shop.units)}, expected within ${position(bounds.min, shop.units)} to ${position(bounds.max, shop.units)}: look for feet typed as inches or a missing minus sign`,
        ids: [id],
        place,
      }) as const;
    return [
      ...shell.nodes.filter((node) => isOutside(node.at, bounds)).map((node) => tell(node.id, node.at, node.source.place('at'))),
      ...shell.runs.flatMap((run) =>
        run.via.flatMap((at, i) => (isOutside(at, bounds) ? [tell(run.id, at, run.source.place('via', i))] : [])),
      ),
    ];
  },
};
