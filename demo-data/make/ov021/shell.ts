/** Identity, chassis, tanks, seats and bays: typed by hand, as a shop does. The VIN's check digit is worked out by hand too. */
export const shellYaml = (
  vin: string,
): string => `# OV-021 from the chassis label and the incomplete vehicle document, not from the brochure.
shell: OV-021
title: Travelling letterpress and bindery studio
vin: ${vin}
customer:                               # owner's edition only
  name: The Wandering Quoin, Thessaly Umberwood
  place: Lower Pelham Reach
  contact: thessaly@wandering-quoin.example
envelope: {length: 27 ft 3-1/2 in, width: 100-1/4 in, height: 99 in}

chassis:
  description: conventional cab chassis, three axles, incomplete vehicle
  document: incomplete vehicle document 77-20418
  gvwr: 48,000 lb
  gcwr: 80,000 lb
  frame: {rail_top_above_ground: 41 in, rail_spacing: 34 in}
  axles:
    - {id: steer, x: 0 in, gawr: "14,600 lb", suspension: "14,600 lb", track: 83 in, steered: yes, steer_angle: 42 deg,
       travel: {bump: 3-1/2 in, rebound: 3 in},
       tyres: {count: 2, load_index: 152, inflation: 120 psi, inflation_for_index: 120 psi, size: 295/75R22.5}}
    - {id: drive, x: 240 in, gawr: "23,000 lb", suspension: "23,000 lb", track: 73 in, dual: yes,
       travel: {bump: 3 in, rebound: 4-1/2 in}, wheels: "7,400 lb",
       tyres: {count: 4, load_index: [148, 145], inflation: 110 psi, inflation_for_index: 110 psi, size: 295/75R22.5, spacing: 13-1/2 in}}
    - {id: tag, x: 292 in, gawr: "17,000 lb", suspension: "17,000 lb", track: 80 in, lift: yes, mass: "1,150 lb",
       travel: {bump: 3 in, rebound: 4-1/2 in},
       share: {with: drive, fraction: 0.42}, tyres: {count: 2, load_index: 156, inflation: 120 psi, inflation_for_index: 120 psi, size: 315/80R22.5}}
  bare:                                 # as it came off the transporter, on our pads, nobody aboard
    condition: {fuel: 1/4, def: 1/2}
    readings: {steer: "8,420 lb", drive: "5,840 lb", tag: "4,230 lb"}

tanks:
  - {id: FUEL, contents: diesel, capacity: 90 gal, at: [92 in, 38 in, -14 in]}
  - {id: DEF, contents: diesel exhaust fluid, capacity: 10 gal, at: [62 in, 40 in, -12 in]}
  - {id: LPG, contents: propane, capacity: 20 gal, at: [40 in, -40 in, -10 in]}
  - {id: FRESH, contents: water, capacity: 50 gal, at: [88 in, -36 in, 24 in]}
  - {id: GREY, contents: grey, capacity: 50 gal, at: [196 in, -36 in, -9 in]}

seats:
  - {id: driver, at: [14 in, -20 in, 34 in], belted: yes}
  - {id: passenger, at: [14 in, 20 in, 34 in], belted: yes}
  - {id: bench, at: [64 in, 30 in, 34 in], belted: yes}

bays:                                   # limits are the bay floors' own, 15-1/2 in grid
  - {id: B1-R, name: paper locker right front, at: [160 in, 38 in, -12 in], limit: 500 lb}
  - {id: B2-R, name: tool locker right, at: [190 in, 38 in, -12 in], limit: 400 lb}
  - {id: B1-L, name: cord and hose locker left front, at: [140 in, -38 in, -12 in], limit: 300 lb}
  - {id: B3-R, name: rear locker right, at: [340 in, 38 in, -12 in], limit: 350 lb}
  - {id: CASES, name: type cases over the drive axle, at: [236 in, -34 in, 40 in], limit: "1,200 lb"}
`;

export const OPENINGS = `# As measured with the long tape before the skins, and the slide again after.
- id: SO-1
  kind: slide-out
  wall: left
  sill: [[170-1/2 in, -49 in, 13-1/4 in], [291-1/2 in, -49 in, 13-1/4 in]]
  width: 10 ft 1 in
  height: 67-1/2 in
  travel: 24 in                         # floor in, out against its stops
  depth: 26 in
  driven_by: [HY]
  measured: {top: 10 ft 1-1/32 in, bottom: 10 ft 1 in, front: 67-1/2 in, rear: 67-17/32 in,
             diagonals: [138-9/16 in, 138-5/8 in], header_sag: [{at: 30 in, drop: 0 in}, {at: 60-1/2 in, drop: 3/32 in}, {at: 91 in, drop: 1/32 in}]}
  header: HD-SO-1
  gussets: [G-01, G-02, G-03, G-04]
  date: 2025-12-11
  stage: walls
  by: J2
- {id: DR-1, kind: entry door, wall: right, sill: [[108-1/2 in, 49 in, 11-1/4 in], [136-1/2 in, 49 in, 11-1/4 in]], width: 28 in,
   height: 73-1/2 in, measured: {top: 28 in, bottom: 28-1/32 in, front: 73-1/2 in, rear: 73-1/2 in, diagonals: [78-21/32 in, 78-21/32 in],
   header_sag: [{at: 14 in, drop: 0 in}]}, header: HD-DR-1, stage: walls, date: 2025-12-11, by: J2}
- {id: WN-1, kind: window, wall: left, sill: [[77-1/2 in, -49 in, 48 in], [105-1/2 in, -49 in, 48 in]], width: 28 in, height: 28 in,
   measured: {top: 28 in, bottom: 28 in, front: 28 in, rear: 28 in, diagonals: [39-19/32 in, 39-5/8 in]}, header: HD-WN-1, stage: walls, date: 2025-12-11, by: J5}
- {id: WN-2, kind: window, wall: left, sill: [[325-1/2 in, -49 in, 48 in], [353-1/2 in, -49 in, 48 in]], width: 28 in, height: 28 in,
   measured: {top: 28 in, bottom: 28 in, front: 28-1/32 in, rear: 28 in, diagonals: [39-19/32 in, 39-19/32 in]}, header: HD-WN-2, stage: walls, date: 2025-12-11, by: J5}
- {id: WN-3, kind: window, wall: right, sill: [[186 in, 49 in, 48 in], [214 in, 49 in, 48 in]], width: 28 in, height: 28 in,
   measured: {top: 28 in, bottom: 28 in, front: 28 in, rear: 28 in, diagonals: [39-19/32 in, 39-5/8 in]}, header: HD-WN-3, stage: walls, date: 2025-12-12, by: J5}
- {id: WN-4, kind: window, wall: right, sill: [[248 in, 49 in, 48 in], [276 in, 49 in, 48 in]], width: 28 in, height: 28 in,
   measured: {top: 28-1/32 in, bottom: 28 in, front: 28 in, rear: 28 in, diagonals: [39-5/8 in, 39-5/8 in]}, header: HD-WN-4, stage: walls, date: 2025-12-12, by: J5}
- {id: DR-B, kind: loading door, wall: rear, sill: [[370-1/2 in, -14 in, 11-1/4 in], [370-1/2 in, 14 in, 11-1/4 in]], width: 28 in,
   height: 73-1/2 in, measured: {top: 28 in, bottom: 28 in, front: 73-1/2 in, rear: 73-17/32 in, diagonals: [78-21/32 in, 78-21/32 in],
   header_sag: [{at: 14 in, drop: 0 in}]}, header: HD-DR-B, stage: walls, date: 2025-12-12, by: J2}
`;
