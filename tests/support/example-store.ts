/** The files that stand in an example where it does not show its own: each after a line with its name. */
export const EXAMPLE_STORE = `
# shop.yaml
shop: {name: Example shop}
units: both
limits:
  keep_apart:
    - {media: [gas, ac], distance: 50 mm}
    - {media: [dc, ac], share_zone: no}
# library/materials.yaml
- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3, group: 23}
- {id: 5052-H32, kind: aluminium, density: 2680 kg/m3, group: 22}
- {id: S355, kind: steel, density: 7850 kg/m3}
# library/sections.yaml
- {id: RT4x2, shape: rectangular tube, depth: 4 in, width: 2 in, wall: 1/4 in, corner_radius: 0 in}
# library/procedures.yaml
- {id: WPS-1, process: GMAW, types: [fillet], base: [6061-T6], thickness: [1/8 in, 3/4 in], filler: [ER5356], positions: [1F, 2F]}
# library/people.yaml
- {id: K7, name: A welder, role: welder, qualified: [{process: GMAW, positions: [1F, 2F], thickness: [1/8 in, 3/4 in], groups: [23], from: 2026-01-01, until: 2028-01-01}]}
- {id: J2, name: An inspector, role: inspector, qualified: [{method: VT, from: 2025-01-01, until: 2028-01-01}]}
# library/instruments.yaml
- {id: SC-1, kind: axle scale, resolution: 10 kg, tolerance: 0.2 %, calibrated: 2026-01-01, due: 2027-01-01}
- {id: PG-1, kind: pressure gauge, resolution: 0.5 psi, tolerance: 0.5 psi, calibrated: 2026-01-01, due: 2027-01-01}
- {id: IR-1, kind: insulation tester, resolution: 0.1 Mohm, tolerance: 3 %, calibrated: 2026-01-01, due: 2027-01-01}
# library/stages.yaml
- {id: floor, name: Floor}
- {id: finished, name: Finished}
# shell.yaml
shell: X-1
title: Example coach
tanks: [{id: FUEL, contents: diesel, capacity: 200 L, at: [2 m, 0.9 m, 0 m]}]
chassis:
  gvwr: 12000 kg
  frame: {rail_top_above_ground: 1 m, rail_spacing: 860 mm}
  axles:
    - {id: steer, x: 0 m, gawr: 5000 kg, track: 2 m, steered: yes}
    - {id: drive, x: 5 m, gawr: 9000 kg, track: 1.8 m, dual: yes}
`;

/** The files of such a text by their path in a store; what is no store's file (\`git\`, \`pictures\`) by its own name. */
export function exampleFiles(text: string): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  let name = '';
  for (const line of text.trim().split('\n')) {
    const head = /^# (\S+\.ya?ml|git|pictures)$/u.exec(line)?.[1];
    if (head !== undefined) name = pathOf(head);
    else files.set(name, `${files.get(name) ?? ''}${line}\n`);
  }
  return files;
}

const pathOf = (name: string): string =>
  /^(?:shop\.yaml|library\/.*|shells\/.*|git|pictures)$/u.test(name) ? name : `shells/X-1/${name}`;
