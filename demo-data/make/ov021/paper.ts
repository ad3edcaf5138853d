import { list, type Rec } from '../yaml.js';
import { STAGE_DAYS } from './plan.js';
import { WELDS } from './structure.js';

const FINDINGS: readonly Rec[] = [
  ...fromRejects(),
  {
    block: true,
    id: 'NC-04',
    raised: '2025-12-11',
    of: ['SO-1'],
    description:
      'diagonals of the slide-out opening differed by 5/32 in before the upper gussets were run out, expected 1/8 in or less',
    decision: 'rework',
    reason: 'rear upper gusset let go, jamb pulled 3/32 in, welded again and measured',
    approved_by: 'J2',
    closed: '2025-12-12',
  },
  {
    block: true,
    id: 'NC-05',
    raised: '2026-02-12',
    of: ['SK-L-05'],
    description: 'squeeze-out missing over 4 in of the lower edge',
    decision: 'repair',
    reason: 'edge injected, tap test even, photo kept',
    approved_by: 'J5',
    closed: '2026-02-13',
  },
  {
    block: true,
    id: 'NC-06',
    raised: '2026-03-30',
    of: ['WC'],
    description: 'cold water lost 9 psi in 15 min at the pump tee, expected 1 psi or less',
    decision: 'rework',
    reason: 'ring cut off and crimped again with the gauge',
    approved_by: 'J5',
    closed: '2026-04-01',
  },
  {
    block: true,
    id: 'NC-07',
    raised: '2026-05-07',
    of: ['SO-1'],
    description: 'two drips at the slide top seal in the rain test',
    decision: 'rework',
    reason: 'seal corner mitred again, rain test repeated',
    approved_by: 'J5',
    closed: '2026-05-14',
  },
  {
    block: true,
    id: 'NC-08',
    raised: '2026-06-16',
    of: ['CMP-36'],
    description: 'imposing stone stands 2 in ahead of where the drawing has it',
    decision: 'use as is',
    reason: 'legs find the beam better there; weighed as it stands',
    approved_by: 'A1',
    closed: '2026-06-16',
    tell_owner: true,
  },
  {
    block: true,
    id: 'NC-09',
    raised: '2026-07-01',
    of: ['tag'],
    description:
      'with the tag axle up the drive axle is over its rating, expected the tag down whenever the type cases are aboard',
    decision: 'use as is',
    reason: 'switch labelled: lift only with the shell empty of type and machines',
    approved_by: 'J2',
    closed: '2026-07-02',
    tell_owner: true,
  },
  {
    block: true,
    id: 'NC-11',
    raised: '2026-03-20',
    of: ['TP-L', 'TP-R'],
    rules: ['weld.drilled-near'],
    description: 'four cables pass the top plates beside the seam of the roof corner, expected 1 in clear of it',
    decision: 'use as is',
    reason: 'seam carries the ceiling edge only; holes 5/8 in, sleeved; engineer looked at it',
    approved_by: 'J2',
    closed: '2026-03-20',
  },
  {
    block: true,
    id: 'NC-10',
    raised: '2025-12-12',
    of: ['SO-1'],
    rules: ['opening.sag'],
    description: 'slide-out header sags 3/32 in at the middle, expected 1/16 in or less',
    decision: 'use as is',
    reason: 'seal takes 3/16 in; measured again with the slide in, no change; engineer told',
    approved_by: 'J2',
    closed: '2026-05-15',
  },
];

/** The beads worth a finding: raised on the day of the reject, closed on the day of the accepted look. */
function fromRejects(): readonly Rec[] {
  const worth = ['W-0009', 'W-0037', 'W-0177'];
  return worth.map((id, i): Rec => {
    const weld = WELDS.find((one) => one.id === id) as Rec;
    const looks = weld.inspections as readonly Rec[];
    const first = looks[0] as Rec;
    const again = looks.length > 2;
    return {
      block: true,
      id: `NC-0${i + 1}`,
      raised: first.date,
      of: [id],
      description: `${String(first.reason)}, expected none that the procedure does not allow`,
      decision: 'repair',
      reason: again
        ? 'second repair by another welder, cold start ground right out'
        : 'ground out and run again, looked at the day after',
      approved_by: 'J2',
      closed: looks.at(-1)?.date,
    };
  });
}

export const findingsText = (): string =>
  `# What was not right, and what was decided. Nothing is rubbed out.\n${FINDINGS.map((one) => list([], [one])).join('\n')}`;

const LAST: Readonly<Record<string, string>> = {
  walls: '2025-12-15',
  roof: '2026-01-26',
  skin: '2026-02-23',
  services: '2026-04-20',
  belly: '2026-05-04',
  fitout: '2026-06-22',
  finished: '2026-07-06',
};

/** What an amendment changed is looked at again, and its stage signed again. */
const AGAIN: readonly Rec[] = [
  { '#': 'After delivery: looked at again and signed again', stage: 'services', role: 'inspector', by: 'J2', date: '2026-07-28' },
  { stage: 'services', role: 'administrator', by: 'A1', date: '2026-07-28' },
  { stage: 'subframe', role: 'inspector', by: 'J2', date: '2026-10-15' },
];

export const signoffsText = (): string =>
  list(
    ['Signed when the hold points were met, not before. The digest is of what was signed for.'],
    [
      ...Object.entries(STAGE_DAYS).flatMap(([stage, [, end]]): Rec[] => [
        { stage, role: 'inspector', by: 'J2', date: LAST[stage] ?? end },
        ...(stage === 'finished' || stage === 'services'
          ? [{ stage, role: 'administrator', by: 'A1', date: LAST[stage] ?? end }]
          : []),
      ]),
      ...AGAIN,
    ],
  );

export const amendmentsText = (): string =>
  list(
    ['After delivery on 10 July 2026'],
    [
      {
        id: 'AM-01',
        date: '2026-07-28',
        by: 'E1',
        reason: 'bench light fuse came down from 10 A to 7.5 A after the lamps were changed',
        changes: ['DC-23'],
      },
      {
        id: 'AM-02',
        date: '2026-08-19',
        by: 'E1',
        reason: 'second solar regulator in the front cabinet',
        changes: ['CMP-52', 'DC-S'],
      },
      {
        id: 'AM-03',
        date: '2026-09-22',
        by: 'S8',
        reason: 'lamp rail over the ink slab, screwed to the ceiling panel, short screws',
        changes: ['CMP-53'],
      },
      {
        id: 'AM-04',
        date: '2026-10-14',
        by: 'F6',
        reason: 'U-bolts checked after 640 mi; two took a quarter turn',
        changes: ['UB-03', 'UB-04'],
      },
    ],
  );
