import { linePath } from '../../compute/solids.js';
import { type Bounds, boundsOf, grow } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import { positionWords } from '../../quantity/format.js';
import type { Shell } from '../../records/index.js';
import type { Rule } from '../rule.js';

/** Nothing of a coach is further than this outside its frame and skins, mm. House rule. */
const BEYOND_MM = 1000;

/** Where the members and panels are; without any, what the envelope allows about the datum. */
function extent(shell: Shell): Bounds | undefined {
  const corners = [
    ...shell.members.flatMap(({ shape }) => (shape.kind === 'line' ? linePath(shape) : shape.outline)),
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

/** What a place that lies far off would be if it had been mistyped in one of the usual ways. */
const SLIPS: readonly (readonly [said: string, mend: (value: number) => number])[] = [
  ['its feet are read as inches', (value) => value / 12],
  ['its inches are read as millimetres', (value) => value / 25.4],
  ['its sign is turned', (value) => -value],
];

/** The slip that brings every coordinate that lies outside back in; the usual two where none does. */
function probableSlip(at: Vec3, bounds: Bounds): string {
  for (const [said, mend] of SLIPS) {
    const mended = at.map((value, k) => (isBeyond(value, k, bounds) ? mend(value) : value)) as unknown as Vec3;
    if (isOutside(mended, bounds)) continue;
    return `it fits when ${said}, compare the tape`;
  }
  return 'look for feet and inches exchanged or a missing minus sign';
}

const isBeyond = (value: number, k: number, { min, max }: Bounds): boolean =>
  value < (min[k] as number) || value > (max[k] as number);

const isOutside = (at: Vec3, bounds: Bounds): boolean => at.some((value, k) => isBeyond(value, k, bounds));

export const outsideEnvelope: Rule = {
  name: 'service.outside-envelope',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A node or way point more than a metre outside the frame and skins of the coach.',
  why: 'It is most likely feet and inches exchanged, a lost minus sign, or left for right: the map of that run is wrong.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: SF-L, section: RT4x2, alloy: 6061-T6, from: [0 m, -1 m, 0 m], to: [6 m, -1 m, 0 m]}
- {id: SF-R, section: RT4x2, alloy: 6061-T6, from: [0 m, 1 m, 2 m], to: [6 m, 1 m, 2 m]}
# services/dc.yaml
service: dc
medium: dc
circuits:
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
nodes:
  - {id: N1, kind: source, name: battery, at: [0 m, 0 m, 1 m]}
  - {id: N2, kind: load, name: lamp, at: [3 m, 0 m, 1 m]}
runs:
`,
    fails: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, via: [[18 m, 0 m, 1 m]]}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, via: [[1.8 m, 0 m, 1 m]]}
`,
  },
  check({ model: { shell, shop } }) {
    const bounds = extent(shell);
    if (!bounds) return [];
    const tell = (id: string, at: Vec3, place: ReturnType<Shell['source']['place']>) =>
      ({
        message: `${id} is at ${positionWords(at, shop.units)}, expected within ${positionWords(bounds.min, shop.units)} to ${positionWords(bounds.max, shop.units)}: ${probableSlip(at, bounds)}`,
        ids: [id],
        place,
      }) as const;
    return [
      ...placedNodes(shell.nodes)
        .filter((node) => isOutside(node.at, bounds))
        .map((node) => tell(node.id, node.at, node.source.place('at'))),
      ...shell.runs.flatMap((run) =>
        run.via.flatMap((at, i) => (isOutside(at, bounds) ? [tell(run.id, at, run.source.place('via', i))] : [])),
      ),
    ];
  },
};
