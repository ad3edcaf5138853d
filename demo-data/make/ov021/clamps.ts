import { at, type P } from '../inches.js';
import { list, type Rec } from '../yaml.js';

const STATIONS = [38, 74, 112, 150, 186, 214, 272, 322, 358];

/** U-bolts over the rails, each on its damper; none over a cross member of the chassis. */
export const clampsText = (): string =>
  list(
    [
      'U-bolts and dampers. Torque dry, in two rounds, front to rear and back. Again after the paint oven and after the first run.',
    ],
    STATIONS.flatMap((x, i) =>
      (['L', 'R'] as const).map((side, k): Rec => {
        const n = String(i * 2 + k + 1).padStart(2, '0');
        const place: P = [x, side === 'L' ? -17 : 17, 0.4];
        return {
          id: `UB-${n}`,
          kind: 'U-bolt',
          at: at(place),
          bolt: '5/8 in grade 8',
          torque: `${148 + ((i * 3 + k) % 5)} ft.lb`,
          damper: `D-${n}`,
          isolator: true,
          joins: [`SF-${side}`],
          stage: 'subframe',
          date: i < 5 ? '2025-10-01' : '2025-10-02',
          by: 'R2',
          check_again: { after: '500 mi' },
          checks: [{ date: '2026-10-14', after: '640 mi', by: 'F6' }],
        };
      }),
    ),
  );

const ENGINEER = 'Ysolde Marchmain-Osei, PE 00417';

export const declaredText = (): string =>
  list(
    ['Declared by the engineer, in her words. Where nothing stands here, nothing is declared.'],
    [
      ...[60, 352].flatMap((x, i) =>
        (['L', 'R'] as const).map(
          (side, k): Rec => ({
            id: `LIFT-${i * 2 + k + 1}`,
            kind: 'lift',
            at: at([x, side === 'L' ? -17 : 17, 0.75]),
            rating: '36 kN',
            by: ENGINEER,
            date: '2026-05-22',
            document: 'calculation YM-2026-31, sheet 4',
            note: 'four points together, spreader bar, shell empty of type',
          }),
        ),
      ),
      {
        id: 'ROOF-1',
        kind: 'roof load',
        at: ['208 in', '0 in', '98-3/4 in'],
        rating: '2.5 kN',
        by: ENGINEER,
        date: '2026-05-22',
        document: 'calculation YM-2026-31, sheet 9',
        note: 'one person on two trusses, boards laid',
      },
      {
        id: 'MOUNT-1',
        kind: 'mounting',
        of: ['CMP-31'],
        at: ['144 in', '30 in', '11-1/2 in'],
        rating: '24 kN',
        by: ENGINEER,
        date: '2026-05-11',
        document: 'calculation YM-2026-28',
        note: 'hand press to stringers',
      },
      {
        id: 'MOUNT-2',
        kind: 'mounting',
        of: ['CMP-32'],
        at: ['178 in', '29 in', '11-1/2 in'],
        rating: '30 kN',
        by: ENGINEER,
        date: '2026-05-11',
        document: 'calculation YM-2026-28',
        note: 'platen press to stringers',
      },
      {
        id: 'MOUNT-3',
        kind: 'mounting',
        of: ['CMP-30', 'CMP-33', 'CMP-36'],
        rating: '24 kN',
        by: ENGINEER,
        date: '2026-05-18',
        document: 'calculation YM-2026-30',
        note: 'slide-out on its rails; guillotine and imposing stone to stringers',
      },
      {
        id: 'MOUNT-4',
        kind: 'mounting',
        of: ['CMP-35'],
        rating: '12 kN',
        by: ENGINEER,
        date: '2026-05-18',
        document: 'calculation YM-2026-30, sheet 6',
        note: 'type cases, two stands, to stringers and back to the wall posts',
      },
    ],
  );
