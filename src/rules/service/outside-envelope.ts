import { isOutside, type PlaceSlip, placesAllowed, probableSlip } from '../../compute/services/envelope.js';
import type { Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import { positionWords } from '../../quantity/format.js';
import type { Shell } from '../../records/index.js';
import type { Rule } from '../rule.js';

const SLIP_WORDS: Readonly<Record<PlaceSlip, string>> = {
  feet: 'it fits when its feet are read as inches, compare the tape',
  inches: 'it fits when its inches are read as millimetres, compare the tape',
  sign: 'it fits when its sign is turned, compare the tape',
};
/** Where no slip explains it, the usual two. */
const NO_SLIP = 'look for feet and inches exchanged or a missing minus sign';

export const outsideEnvelope: Rule = {
  name: 'service.outside-envelope',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A node or way point more than a meter outside the frame and skins of the coach.',
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
    const bounds = placesAllowed(shell);
    if (!bounds) return [];
    const tell = (id: string, at: Vec3, place: ReturnType<Shell['source']['place']>) => {
      const slip = probableSlip(at, bounds);
      return {
        message: `${id} is at ${positionWords(at, shop.units)}, expected within ${positionWords(bounds.min, shop.units)} to ${positionWords(bounds.max, shop.units)}: ${slip === undefined ? NO_SLIP : SLIP_WORDS[slip]}`,
        ids: [id],
        place,
      } as const;
    };
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
