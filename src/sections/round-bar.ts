import { full } from './ring.js';
import { roundTube } from './round-tube.js';
import type { SectionKind, SectionWall } from './shape.js';

/** One of six rectangles, each turned by 30°, that fill a round bar but for slivers. */
const sixth = (radius: number, turn: number): SectionWall => ({
  depth: 0,
  width: 0,
  halfDepth: radius * Math.cos(Math.PI / 12),
  halfWidth: radius * Math.sin(Math.PI / 12),
  turn,
});

export const ROUND_BAR: SectionKind<'round bar'> = {
  properties: ({ diameterMm }) => roundTube({ shape: 'round tube', diameterMm, wallMm: diameterMm / 2 }),
  envelope: ({ diameterMm }) => [diameterMm, diameterMm],
  rings: ({ diameterMm }) => [full(diameterMm / 2)],
  walls: ({ diameterMm }) => [0, 1, 2, 3, 4, 5].map((step) => sixth(diameterMm / 2, (step * Math.PI) / 6)),
  thinnestMm: ({ diameterMm }) => diameterMm,
  dimensions: () => [],
  fits: () => [],
};
