import type { Rule } from '../rule.js';

export const movingNotVerified: Rule = {
  name: 'access.moving-not-verified',
  severity: 'note',
  asks: 'missing',
  duty: 'inspector',
  finds: 'Tires and slide-outs whose room cannot be worked out, because travel, size or place is not on record.',
  why: 'Nothing was judged against them.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: CB-1, section: RT4x2, alloy: 6061-T6, from: [1 m, -1 m, 0 m], to: [1 m, 1 m, 0 m]}
`,
    fails: `
# shell.yaml
shell: X-1
title: Example coach
chassis:
  gvwr: 12000 kg
  frame: {rail_top_above_ground: 1 m, rail_spacing: 860 mm}
  axles:
    - {id: steer, x: 0 m, gawr: 5000 kg, track: 2 m}
    - {id: drive, x: 5 m, gawr: 9000 kg, track: 1.8 m}
`,
    passes: `
# shell.yaml
shell: X-1
title: Example coach
chassis:
  gvwr: 12000 kg
  frame: {rail_top_above_ground: 1 m, rail_spacing: 860 mm}
  axles:
    - {id: steer, x: 0 m, gawr: 5000 kg, track: 2 m, travel: {bump: 80 mm, rebound: 80 mm}, steered: yes, steer_angle: 42 deg, tyres: {count: 2, load_index: 152, diameter: 1 m, width: 300 mm}}
    - {id: drive, x: 5 m, gawr: 9000 kg, track: 1.8 m, travel: {bump: 80 mm, rebound: 110 mm}, tyres: {count: 2, load_index: 152, diameter: 1 m, width: 300 mm, size: 295/75R22.5}}
`,
  },
  check({ model: { shell }, figures }) {
    const { unknown } = figures.clearances;
    if (unknown.length === 0 || (shell.runs.length === 0 && shell.members.length === 0)) return [];
    const told = unknown.map(({ id, kind, missing }) => `${kind === 'tyre' ? 'axle' : 'opening'} ${id} (${missing.join(', ')})`);
    return [
      {
        message: `Clear of moving tires and slides is not verified for ${told.join('; ')}: not on record, expected in shell.yaml and openings.yaml`,
        ids: unknown.map(({ id }) => id),
        place: shell.source.place(),
      },
    ];
  },
};
