/** Records that several rules’ examples begin with, as they stand in RULES.md. */

/** A cable in a trough that a belly panel of a known day closes in. */
export const CONCEALED_RUN = `# zones.yaml
- {id: TC, name: belly trough, box: [[0 m, -0.5 m, 0 m], [4 m, 0.5 m, 0.3 m]], closed_by: [BP-1], drains: [[2.9 m, 0 m, 0 m]]}
# panels.yaml
- {id: BP-1, kind: belly, thickness: 2 mm, date: 2026-04-20, outline: [[0 m, -0.5 m, 0 m], [4 m, -0.5 m, 0 m], [4 m, 0.5 m, 0 m], [0 m, 0.5 m, 0 m]]}
# services/dc.yaml
service: Lights
medium: dc
circuits: [{id: DC-1, voltage: 12 V, protection: {kind: fuse, rating: 5 A, at: N1}, conductor: {awg: 14}}]
nodes:
  - {id: N1, kind: source, at: [-1 m, 0 m, 0.15 m], tolerance: 10 mm}
  - {id: N2, kind: load, at: [5 m, 0 m, 0.15 m], tolerance: 10 mm}
runs:
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, zones: [TC], tolerance: 10 mm}`;

/** A rail, and a post that stands on it. */
export const TWO_MEMBERS = `# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m], stage: floor}
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m], stage: floor}`;

/** A battery and a lamp with a fused circuit, and no run yet. */
export const LAMP_NODES = `# services/dc.yaml
service: dc
medium: dc
circuits:
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
nodes:
  - {id: N1, kind: source, name: battery, at: [0 m, 0 m, 1 m]}
  - {id: N2, kind: load, name: lamp, at: [3 m, 0 m, 1 m]}`;

/** A battery and a lamp with the run between them; the list of circuits comes next. */
export const LAMP_RUN = `# services/dc.yaml
service: Lights
medium: dc
nodes:
  - {id: N1, kind: source, name: battery, at: [0 m, 0 m, 1 m]}
  - {id: N2, kind: load, name: lamp, at: [3 m, 0 m, 1 m]}
runs:
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2}
circuits:`;
