import { samples } from '../../compute/access/samples.js';
import { zoneMap } from '../../compute/access/zones.js';
import type { Vec3 } from '../../geometry/vector.js';
import { length, positionWords } from '../../quantity/format.js';
import type { Run } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';

const WIRES = ['dc', 'ac', 'data'];
const WET = ['water', 'drain'];
/** Side by side, seen from above, within this a drip meets the wire, mm. Project default. */
const BESIDE_MM = 150;
/** Heights as measured with a tape, mm. Project default. */
const TAPE_MM = 10;

/** Pipes above one square of a cavity’s floor, the highest first. */
type Above = ReadonlyMap<string, readonly Piece[]>;

/** A piece of a run within a concealed cavity. */
interface Piece {
  readonly run: Run;
  readonly at: Vec3;
  readonly zones: readonly string[];
}

/** More pipes than these above one square tell nothing new. */
const MOST = 8;

const square = (value: number): number => Math.floor(value / BESIDE_MM);

/** Of each pipe its lowest piece in each square: a riser that comes down beside a wire is not above it. */
function pipesAbove(pipes: readonly Piece[]): Above {
  const lowest = new Map<string, Map<Run, Piece>>();
  for (const piece of pipes) {
    for (const zone of piece.zones) {
      const key = `${zone} ${square(piece.at[0])} ${square(piece.at[1])}`;
      const here = lowest.get(key) ?? new Map<Run, Piece>();
      lowest.set(key, here);
      if (piece.at[2] < (here.get(piece.run)?.at[2] ?? Infinity)) here.set(piece.run, piece);
    }
  }
  return new Map(
    [...lowest].map(([key, here]) => [key, [...here.values()].sort((a, b) => b.at[2] - a.at[2]).slice(0, MOST)] as const),
  );
}

interface Lies {
  readonly pipe: Run;
  readonly at: Vec3;
  readonly belowMm: number;
}

/** The piece of a wire that lies most below a pipe beside it in the same cavity. */
function worst(wire: readonly Piece[], above: Above): Lies | undefined {
  let found: Lies | undefined;
  for (const { at, zones } of wire) {
    for (const zone of zones) {
      for (let x = square(at[0]) - 1; x <= square(at[0]) + 1; x++) {
        for (let y = square(at[1]) - 1; y <= square(at[1]) + 1; y++) {
          for (const pipe of above.get(`${zone} ${x} ${y}`) ?? []) {
            const belowMm = pipe.at[2] - at[2];
            if (belowMm <= Math.max(TAPE_MM, found?.belowMm ?? 0)) break;
            if (Math.hypot(pipe.at[0] - at[0], pipe.at[1] - at[1]) <= BESIDE_MM) found = { pipe: pipe.run, at, belowMm };
          }
        }
      }
    }
  }
  return found;
}

export const wireBelowWater: Rule = {
  name: 'service.wire-below-water',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A wire that lies below a water or waste pipe beside it in the same cavity.',
  why: 'The first drip runs onto it.',
  source: 'common practice, no source',
  examples: {
    given: `
# zones.yaml
- {id: TC, box: [[0 m, -0.2 m, 0 m], [3 m, 0.2 m, 0.5 m]]}
# services/water.yaml
service: Water
medium: water
nodes:
  - {id: W1, kind: source, at: [0 m, 0 m, 0.3 m], tolerance: 10 mm}
  - {id: W2, kind: load, at: [3 m, 0 m, 0.3 m], tolerance: 10 mm}
runs:
  - {id: CW/1, from: W1, to: W2, size: 1/2 in PEX, tolerance: 10 mm}
# services/dc.yaml
service: Lights
medium: dc
runs:
  - {id: DC/1, from: N1, to: N2, tolerance: 10 mm}
nodes:
`,
    fails: `
  - {id: N1, kind: source, at: [0 m, 0.02 m, 0.1 m], tolerance: 10 mm}
  - {id: N2, kind: load, at: [3 m, 0.02 m, 0.1 m], tolerance: 10 mm}
`,
    passes: `
  - {id: N1, kind: source, at: [0 m, 0.02 m, 0.45 m], tolerance: 10 mm}
  - {id: N2, kind: load, at: [3 m, 0.02 m, 0.45 m], tolerance: 10 mm}
`,
  },
  check({ model: { shell, shop } }) {
    const zones = zoneMap(shell.zones.filter((zone) => zone.concealed));
    const pieces = (run: Run): readonly Piece[] =>
      samples(run.path).flatMap(({ at }) => {
        const held = zones.holding(at);
        return held.length > 0 ? [{ run, at, zones: held.map((zone) => zone.id) }] : [];
      });
    const pipes = shell.runs.filter((run) => WET.includes(run.medium)).flatMap(pieces);
    if (pipes.length === 0) return [];
    const above = pipesAbove(pipes);
    return shell.runs
      .filter((run) => WIRES.includes(run.medium) && !run.abandoned)
      .flatMap((run): readonly RuleFinding[] => {
        const found = worst(pieces(run), above);
        if (!found) return [];
        const { pipe, at, belowMm } = found;
        return [
          {
            message: `${run.id} lies ${length(belowMm, shop.units)} below ${pipe.id} at ${positionWords(at, shop.units)}, expected wires above water in one cavity: raise it, or move one of the two`,
            ids: [run.id, pipe.id],
            place: run.source.place('via'),
            related: [{ message: `${pipe.id}, the pipe above`, place: pipe.source.place('via') }],
          },
        ];
      });
  },
};
