/**
 * The thirty questions that a stranger to the coach asks of the printed book, each with the way through the contents or the index and with
 * what the records say: worked out from the YAML by {@link plainShell} alone.
 */

import { alloyPairs, joints, roofLines, sourcesOf } from './pencil.js';
import { day, figure, grouped, mm, type Plain, type PlainShell } from './plain-records.js';

export interface Asked {
  readonly ask: string;
  /** Words of the links to follow, from the contents or the index. */
  readonly steps: readonly RegExp[];
  /** Pages from the last link on that an answer may take. */
  readonly pages?: number;
  /** The owner’s book answers it by the same way and in the same figures. */
  readonly owner?: boolean;
  /** All that must stand there, in the records’ own figures. */
  readonly says: (d: PlainShell) => readonly string[];
}

const ids = (all: readonly Plain[]): readonly string[] => all.map(({ id }) => id);
const by = (all: readonly Plain[], id: string): Plain => all.find((one) => one.id === id);

export const THIRTY: readonly Asked[] = [
  {
    ask: '1 Where does this wire go?',
    steps: [/^DC-25$/u, /^DC-25\/1$/u],
    says: ({ runs }) => {
      const run = by(runs, 'DC-25/1');
      return [run.from, run.to, ...run.zones, ...ids(runs.filter(({ circuit }) => circuit === 'DC-25'))];
    },
  },
  {
    ask: '2 Which panel do I open for splice DC-25/S1?',
    steps: [/^DC-25\/S1$/u, /^AP-03$/u],
    says: ({ nodes, panels }) => {
      const { id, fixing, of } = by(panels, by(nodes, 'DC-25/S1').panel);
      return [
        id,
        `${fixing.count} ${fixing.method}`,
        fixing.driver,
        fixing.torque.replace('.', '·'),
        fixing.order,
        fixing.sealant,
        of,
      ];
    },
  },
  {
    ask: '3 What fuse feeds it?',
    steps: [/^DC-25$/u],
    says: ({ circuits }) => {
      const { name, protection, voltage } = by(circuits, 'DC-25');
      return [name, `${protection.kind} ${protection.rating}`, protection.at, String(figure(voltage))];
    },
  },
  {
    ask: '4 What is live when I open the main?',
    steps: [/^What is still live/u],
    pages: 3,
    says: (d) => ['ACP', 'DCP', 'CH/BUS'].flatMap((panel) => [panel, ...sourcesOf(d, panel)]),
  },
  {
    ask: '5 Where are all fuses, in-line ones included?',
    steps: [/^Where are all fuses/u],
    pages: 4,
    says: ({ circuits }) =>
      circuits.flatMap(({ id, protection }) =>
        protection ? [`${protection.kind}${protection.rating ? ` ${protection.rating}` : ''}`, protection.at, id] : [],
      ),
  },
  {
    ask: '6 Where is the valve?',
    steps: [/^WV-1$/u],
    says: ({ nodes }) => {
      const { id, name, position } = by(nodes, 'WV-1');
      return [id, name, position];
    },
  },
  {
    ask: '7 How do I drain it against frost?',
    steps: [/^How do I winterize/u],
    pages: 3,
    says: ({ nodes, head }) => [
      ...ids(nodes.filter(({ medium, kind }) => medium === 'water' && kind === 'drain')),
      ...ids(nodes.filter(({ medium, role }) => medium === 'water' && ['tap', 'heater', 'pump'].includes(role))),
      // 1 gal is 3.785411784 L, exactly.
      (figure(by(head.tanks, 'FRESH').capacity) * 3.785411784).toFixed(1),
    ],
  },
  {
    ask: '8 Where may I drill, and how deep?',
    steps: [/^how deep$/u],
    pages: 2,
    says: ({ panels }) => [
      'Longest safe screw',
      'its tolerance taken off (1 in where none is recorded)',
      ...ids(panels.filter(({ id, kind }) => kind === 'interior' && /^(?:IP-L|CL)/u.test(id))),
    ],
  },
  {
    ask: '9 What is behind this panel?',
    steps: [/^AP-08$/u],
    pages: 2,
    says: (d) => [...ids(d.nodes.filter((node) => node.panel === 'AP-08')), ...ids(joints(d, 'AP-08', 4))],
  },
  {
    ask: '10 Where may I jack, lift, tie down or tow?',
    owner: true,
    steps: [/^Where may I jack/u],
    says: ({ declared }) => {
      const lifts = declared.filter(({ kind }) => kind === 'lift');
      const [{ unbolt_first: first, rating, by: author }] = lifts;
      const none = ['jack', 'tow', 'tie down'].filter((kind) => !declared.some((one: Plain) => one.kind === kind));
      return [
        ...ids(lifts),
        `${rating} `,
        // Force of 1 lbf: 4.4482216152605 N, exactly; rounded to the safe side.
        `${grouped(Math.floor((lifts.length * figure(rating) * 1000) / 4.4482216152605))} lbf`,
        ...first,
        author.split(',')[0],
        ...(none.length > 0 ? ['not declared: do not do it here'] : []),
      ];
    },
  },
  {
    ask: '11 What may I hang here?',
    owner: true,
    steps: [/^What may I hang/u],
    says: ({ declared, components }) =>
      declared
        .filter(({ kind }) => kind === 'mounting')
        .flatMap(({ id, rating, of }) => [
          id,
          rating,
          `${grouped(of.reduce((sum: number, one: string) => sum + figure(by(components, one).mass), 0))} lb`,
        ]),
  },
  {
    ask: '12 May I walk on the roof?',
    steps: [/^May I walk/u],
    pages: 2,
    says: (d) => {
      const roof = d.declared.find(({ kind }) => kind === 'roof load');
      return [
        roof.id,
        roof.rating,
        roof.note,
        roofLines(d)
          .map((x) => (x / 25.4).toFixed(1))
          .join(', '),
      ];
    },
  },
  {
    ask: '13 What alloy and filler is this, may I weld here?',
    steps: [/^What alloy and filler/u],
    pages: 2,
    says: (d) => {
      const [first] = alloyPairs(d);
      if (!first) return ['a joint'];
      return [
        first.alloys,
        first.fillers.join(', '),
        String(first.joints),
        ...ids(d.nodes.filter(({ role }) => role === 'battery')),
      ];
    },
  },
  {
    ask: '14 What is the torque?',
    steps: [/^What is the torque/u],
    pages: 2,
    says: ({ clamps, tests, panels, nodes }) => {
      const specified = tests.find(({ kind }) => kind === 'torque');
      const read = clamps.map(({ torque }) => figure(torque));
      const nm = (one: Plain): string => one.replace('N.m', 'N·m');
      return [
        specified.id,
        `at least ${figure(specified.limit)} ft·lb`,
        specified.note,
        `${Math.min(...read)} ft·lb`,
        `${Math.max(...read)} ft·lb`,
        ...new Set<string>(panels.flatMap(({ fixing }) => (fixing?.torque ? [nm(fixing.torque)] : []))),
        ...new Set<string>(nodes.flatMap(({ torque }) => (torque ? [nm(torque)] : []))),
        'Wheel nuts',
        'not recorded',
      ];
    },
  },
  {
    ask: '15 What was it tested to?',
    steps: [/^What pressure or voltage/u],
    pages: 3,
    says: ({ tests }) => tests.flatMap(({ id, kind, duration }) => [id, kind, ...(duration ? [duration] : [])]),
  },
  {
    ask: '16 What does each axle owe?',
    owner: true,
    steps: [/^t[iy]re pressure$/u],
    says: ({ head }) =>
      head.chassis.axles.flatMap(({ id, gawr, tyres }: Plain) => [id, gawr.replace(' lb', ''), String(figure(tyres.inflation))]),
  },
  {
    ask: '17 Was it repaired before?',
    steps: [/^Was this repaired/u],
    pages: 3,
    says: ({ findings, amendments, welds }) => [
      ...findings.flatMap(({ id, closed }) => [id, ...(closed ? [day(closed)] : [])]),
      ...amendments.flatMap(({ id, changes }) => [id, changes[0]]),
      ...welds.flatMap(({ id, inspections = [], joins }) => {
        const reject = inspections.find(({ result }: Plain) => result === 'reject');
        if (!reject) return [];
        const told = findings.some(({ of }) => of.includes(id));
        return told ? [id] : [id, reject.reason, joins.flat()[0]];
      }),
    ],
  },
  {
    ask: '18 Where will a leak show?',
    steps: [/^A stain or a leak/u],
    pages: 3,
    says: (d) => [
      ...d.panels.filter(({ id }) => /^BP-L-/u.test(id)).flatMap(({ id }) => [id, ...ids(joints(d, id))]),
      ...ids(d.zones.filter(({ drains }) => drains?.length > 0)),
    ],
  },
  {
    ask: '19 Is there a spare way, a pull cord, a spare breaker space?',
    steps: [/^Is there a spare conduit/u],
    pages: 3,
    says: ({ zones, nodes }) => [
      ...zones.filter(({ spare, pull_cord: cord }) => spare || cord).flatMap(({ id, spare = '' }) => [id, spare]),
      ...zones.flatMap(({ cord_ends: ends = [] }) => ends),
      ...nodes.flatMap(({ id, spaces = [] }) =>
        spaces
          .filter(({ spare }: Plain) => spare === 'yes' || spare === true)
          .flatMap(({ number }: Plain) => [id, String(number)]),
      ),
    ],
  },
  {
    ask: '20 Where are the earths and bonding studs?',
    steps: [/^Where are the grounds/u],
    says: ({ runs, nodes }) => {
      const ends = new Set(runs.filter(({ circuit }) => circuit === 'DC-E').flatMap(({ from, to }) => [from, to]));
      const studs = nodes.filter(({ id, kind }) => ends.has(id) && kind === 'terminal');
      return studs.flatMap(({ id, panel, torque, isolator, insulator }) => [
        id,
        ...(panel ? [panel] : []),
        torque.replace('N.m', 'N·m'),
        ...(isolator || insulator ? ['insulator fitted'] : []),
      ]);
    },
  },
  {
    ask: '21 Which wires are spare or abandoned?',
    steps: [/^Which wires are spare/u],
    says: ({ runs }) =>
      runs
        .filter(({ spare, abandoned }) => spare || abandoned)
        .flatMap(({ id, from, to, spare }) => [id, from, to, spare ? 'spare' : 'abandoned']),
  },
  {
    ask: '22 What changed since the book?',
    owner: true,
    steps: [/^What was changed after/u],
    says: ({ amendments }) => amendments.flatMap(({ id, date, reason, changes }) => [id, day(date), reason, ...changes]),
  },
  {
    ask: '23 In an emergency: gas, battery, where not to cut?',
    owner: true,
    steps: [/^In an emergency/u],
    says: ({ nodes, head }) => [
      ...ids(nodes.filter(({ medium, role }) => medium === 'gas' && role === 'shut-off')),
      ...ids(nodes.filter(({ role }) => ['battery', 'shore inlet', 'generator'].includes(role))),
      ...ids(head.tanks.filter(({ use }: Plain) => use === 'fuel')),
      'BAT/MD',
      'Do not cut',
    ],
  },
  {
    ask: '24 Whom do I call, and what warranty is there?',
    steps: [/^Who do I call/u],
    pages: 2,
    says: ({ shop, head, components }) => [
      shop.name,
      shop.telephone,
      shop.contact,
      head.vin,
      head.chassis.document,
      ...head.warranty.flatMap(({ of, until, terms }: Plain) => [of, terms, ...(until ? [day(until)] : [])]),
      ...components.flatMap(({ id, serial }) => (serial ? [id, serial] : [])),
    ],
  },
  {
    ask: '25 Is this the right book?',
    owner: true,
    steps: [/^Is this the right book/u],
    says: ({ head }) => [head.shell, head.vin, 'Fingerprint (SHA-256)', 'Revision'],
  },
  {
    ask: '26 What is this wire without a tag: red and black?',
    steps: [/^What is this wire/u],
    pages: 3,
    says: ({ circuits, runs }) =>
      circuits
        .filter(({ colour }) => colour === 'red/black')
        .flatMap(({ id, name, protection }) => {
          const zones = new Set<string>(runs.filter(({ circuit }) => circuit === id).flatMap((run: Plain) => run.zones ?? []));
          return ['red/black', id, name, `${protection.kind} ${protection.rating}`, ...zones];
        }),
  },
  {
    ask: '27 A stain under the ceiling: where from?',
    steps: [/^A stain or a leak/u],
    pages: 2,
    says: ({ openings, panels, tests }) => {
      const rain = tests.filter(({ kind }) => kind === 'rain').at(-1);
      return [
        ...ids(openings),
        ...panels
          .filter(({ kind }) => kind === 'roof')
          .flatMap(({ id, outline, fixing }) => [id, grouped(Math.min(...outline.map(([x]: Plain) => mm(x)))), fixing.adhesive]),
        rain.id,
        day(rain.date),
        'No recorded water',
      ];
    },
  },
  {
    ask: '28 May I plug in a heater of 1,500 W here?',
    owner: true,
    steps: [/^May I plug this in/u],
    pages: 2,
    says: ({ circuits, nodes }) => {
      const { id, protection, voltage } = by(circuits, 'AC-01');
      const watts = figure(protection.rating) * figure(voltage);
      // 1,500 W fits for hours: four fifths of the breaker, the rule of thumb for what runs three hours or more (NEC 210.20(A), from memory).
      return [
        id,
        ...ids(nodes.filter(({ circuit, role }) => circuit === id && role === 'outlet')),
        `${grouped(watts)} W`,
        `${grouped(watts * 0.8)} W`,
      ];
    },
  },
  {
    ask: '29 How is a cracked skin replaced?',
    steps: [/^How do I replace a cracked skin/u],
    pages: 2,
    says: ({ panels }) => {
      const { alloy, thickness, fixing, bond } = by(panels, 'SK-L-03');
      return [alloy, thickness, fixing.method, fixing.adhesive, bond.open_time_limit, bond.cure];
    },
  },
  {
    ask: '30 The slide-out sticks: how is it moved?',
    owner: true,
    steps: [/^The slide-out sticks/u],
    pages: 2,
    says: ({ openings, circuits }) => {
      const { id, by_hand: steps, fluid } = openings.find(({ kind }) => kind === 'slide-out');
      const { protection } = by(circuits, 'HY');
      return [id, ...steps, fluid, `${protection.kind} at ${protection.at}`, `fuse ${by(circuits, 'DC-26').protection.rating}`];
    },
  },
];
