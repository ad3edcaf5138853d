import type { TaskName } from './tasks.js';

/** What stands on each task’s button: strokes on a field of 48 by 48. */
export const TASK_STROKES: Readonly<Record<TaskName, string>> = {
  // Two plates, the fillet between them, sparks.
  weld: 'M5 41h38M19 41V9M19 41v-12l12 12zM33 16l5-5M36 23h7M28 11V5',
  // A lens over a bead.
  look: 'M20 7a13 13 0 1 0 .1 0zM30 30l13 13M11 22q4-7 8 0t8 0',
  // A line with a splice in it.
  node: 'M3 24h12M33 24h12M15 15h18v18H15zM21 24h6',
  // A wire through two walls.
  run: 'M3 36c12 0 8-24 21-24s9 24 21 24M15 4v12M15 28v16M33 4v12M33 28v16',
  // A bead of adhesive, the panel coming down on it.
  bond: 'M5 42h38M7 34q4-7 8.5 0t8.5 0 8.5 0 8.5 0M8 20h32M24 4v10M19 9l5 5 5-5',
  // A gauge.
  test: 'M8 37a19 19 0 1 1 32 0zM24 30l9-13M14 28h3M31 28h3M24 14v3',
  // A wheel on a scale.
  ticket: 'M24 5a13 13 0 1 0 .1 0zM24 14a4 4 0 1 0 .1 0zM5 35h38v8H5z',
  finding: 'M24 5L45 42H3zM24 18v11M24 34v2',
  // A panel with its screws in.
  closed: 'M7 7h34v34H7zM12 12h1M35 12h1M12 36h1M35 36h1M16 24l6 6 11-13',
  photo: 'M4 14h9l4-6h14l4 6h9v27H4zM24 19a8 8 0 1 0 .1 0z',
};
