import { day } from '../../dates.js';
import type { Rec } from '../../yaml.js';
import { change, type Plant } from './plant.js';

const weld = (id: string, rule: string, what: string, file: string, with_: Rec): Plant => ({
  rule,
  id,
  file,
  what,
  spoil: change(id, with_),
});

/** Ids of the welds to spoil. */
export interface WeldChoice {
  readonly subframe: readonly string[];
  readonly floor: readonly string[];
  readonly walls: readonly string[];
  readonly roof: readonly string[];
  /** First knee weld, first joint of cross beam 3 with the left sill. */
  readonly knee: string;
  readonly apart: string;
  readonly gusset: string;
}

/** Changes the looks at one weld. */
const looks =
  (id: string, with_: (looks: readonly Rec[]) => readonly Rec[]): Plant['spoil'] =>
  (records) =>
    records.map((one) => (one.id === id ? { ...one, inspections: with_(one.inspections as readonly Rec[]) } : one));

/** Welders, procedures, looks and joints. */
export const welds = (w: WeldChoice): readonly Plant[] => [
  weld(w.subframe[2] as string, 'weld.continuity-lapsed', 'R2 had not welded since the last shell', 'welds-subframe.yaml', {
    welder: 'R2',
  }),
  weld(w.knee, 'weld.fillet-small', '1/8 in on plate of 5/16 in', 'welds-floor.yaml', { size: '1/8 in' }),
  weld(w.apart, 'weld.members-apart', 'joins a beam to a post it never meets', 'welds-floor.yaml', {
    joins: ['CB-03', 'P-L-09'],
  }),
  {
    rule: 'weld.joint-unrecorded',
    id: 'CB-09',
    file: 'welds-floor.yaml',
    what: 'no card for the beam at the right sill',
    spoil: (records) => records.filter((one) => String(one.joins) !== 'SI-R,CB-09'),
  },
  weld(w.walls[4] as string, 'weld.welder-unqualified', 'D4 welded three weeks before her papers', 'welds-walls.yaml', {
    welder: 'D4',
  }),
  weld(w.walls[9] as string, 'weld.own-inspection', 'looked at by the welder', 'welds-walls.yaml', {}),
  weld(w.walls[14] as string, 'weld.not-inspected', 'no look on record', 'welds-walls.yaml', { inspections: undefined }),
  weld(w.roof[5] as string, 'weld.procedure-does-not-cover', 'ER4043 under a procedure for ER5356', 'welds-roof.yaml', {
    filler: 'ER4043',
  }),
  weld(w.gusset, 'weld.filler-unsuited', 'silicon rod on a 5083 gusset', 'welds-walls.yaml', {
    process: 'GTAW',
    procedure: 'WPS-14',
    filler: 'ER4043',
    welder: 'K7',
  }),
  {
    rule: 'weld.inspector-unqualified',
    id: w.walls[19] as string,
    file: 'welds-walls.yaml',
    what: 'dye test by J5, who holds VT alone',
    spoil: looks(w.walls[19] as string, (all) => [...all, { ...all[0], method: 'PT', by: 'J5' }]),
  },
  {
    rule: 'weld.inspection-order',
    id: w.walls[24] as string,
    file: 'welds-walls.yaml',
    what: 'looked at a month before it was made',
    spoil: looks(w.walls[24] as string, (all) => all.map((look) => ({ ...look, date: day(String(look.date), -30) }))),
  },
  weld(w.floor[12] as string, 'weld.off-joint', 'place typed a bay too far aft', 'welds-floor.yaml', {
    at: ['169 in', '-17 in', '6-3/4 in'],
  }),
  weld(w.roof[11] as string, 'weld.rejected-open', 'turned down, nothing after it', 'welds-roof.yaml', {}),
];
