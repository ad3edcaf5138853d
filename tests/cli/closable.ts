/** What the small test shell lacks to be closed: people, procedures, hold points, a weld with its look, pictures. Invented. */
export const SEEN = 'inspections: [{method: VT, by: J2, date: 2026-03-02, result: accept}]';

export const wholeWeld = (id: string, more: string): string =>
  `- {id: ${id}, joins: [[FL-3, FL-1], [FL-3, FL-2]], type: fillet, size: 1/8 in, length: 2 in, sides: both, process: GMAW, procedure: WPS-1,
   filler: ER5356, position: 2F, welder: K7, date: 2026-03-01, ${more}}
`;

export const PHOTOS = `- {id: P-1, file: p-1.jpg, of: [FL-1], taken: 2026-03-01}
- {id: P-2, file: p-2.jpg, of: [TROUGH], taken: 2026-04-08}
`;

export const CLOSABLE: Readonly<Record<string, string>> = {
  'library/people.yaml': `- {id: K7, name: Corvina Thessel, role: welder, qualified: [{process: GMAW, positions: [2F], from: 2025-12-01, until: 2027-06-01}]}
- {id: J2, name: Perpetua Vannock, role: inspector, qualified: [{method: VT, from: 2024-01-01, until: 2027-01-01}]}
- {id: A1, name: K. Marrow, role: shop administrator}
`,
  'library/procedures.yaml':
    '- {id: WPS-1, process: GMAW, types: [fillet], base: [6061-T6], thickness: [1/16 in, 1/2 in], filler: [ER5356], positions: [2F]}\n',
  'library/stages.yaml': `- {id: floor, name: Floor frame, hold_points: [welds accepted, photos]}
- {id: belly, name: Belly panels, hold_points: [photos before close-in, tests passed before close-in]}
`,
  'shells/T-1/members-cross.yaml':
    '- {id: FL-3, part: cross rail, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, from: [100 in, -29 in, 4 in], to: [100 in, 29 in, 4 in]}\n',
  'shells/T-1/welds.yaml': wholeWeld('W-1', SEEN),
  'shells/T-1/photos/photos.yaml': PHOTOS,
  'shells/T-1/photos/p-1.jpg': 'one',
  'shells/T-1/photos/p-2.jpg': 'two',
};
