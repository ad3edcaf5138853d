import { pounds } from '../inches.js';
import { item, type Rec } from '../yaml.js';

/** A ticket without its readings: those follow from the records (see weigh.ts). */
export interface Weighing {
  readonly id: string;
  readonly date: string;
  readonly stage: string;
  readonly scale: string;
  readonly ticket: string;
  readonly condition: Rec;
  /** Read each end of the steer axle as well. */
  readonly ends?: boolean;
  readonly gross?: boolean;
  /** What stood on the scale at once; a group where it does not say. */
  readonly together?: string;
  readonly note?: string;
}

const scaffold = { name: 'scaffold and trestles', mass: '140 lb', at: ['220 in', '0 in', '20 in'] };
const welder = { name: 'welding set on the floor', mass: '96 lb', at: ['120 in', '10 in', '18 in'] };

export const WEIGHINGS: readonly Weighing[] = [
  {
    id: 'T-1',
    date: '2025-10-03',
    stage: 'subframe',
    scale: 'SC-1',
    ticket: '25-118',
    condition: { fuel: '1/4', def: '1/2', tag: 'down' },
    note: 'first day on the dampers',
  },
  {
    id: 'T-2',
    date: '2025-10-31',
    stage: 'floor',
    scale: 'SC-1',
    ticket: '25-131',
    condition: { fuel: '1/4', def: '1/2', tag: 'down', aboard: [welder] },
  },
  {
    id: 'T-3',
    date: '2025-12-15',
    stage: 'walls',
    scale: 'SC-1',
    ticket: '25-160',
    condition: { fuel: '1/4', def: '1/2', tag: 'down', aboard: [scaffold, welder] },
  },
  {
    id: 'T-4',
    date: '2026-01-26',
    stage: 'roof',
    scale: 'SC-1',
    ticket: '26-009',
    condition: { fuel: '1/4', def: '1/2', tag: 'down', aboard: [scaffold] },
  },
  {
    id: 'T-5',
    date: '2026-02-23',
    stage: 'skin',
    scale: 'SC-1',
    ticket: '26-021',
    condition: { fuel: '1/4', def: '1/2', tag: 'down' },
  },
  {
    id: 'T-6',
    date: '2026-04-20',
    stage: 'services',
    scale: 'SC-1',
    ticket: '26-047',
    condition: { fuel: '1/2', def: '1/2', LPG: 0, fresh: 0, grey: 0, tag: 'down', occupants: [] },
    note: 'lines dry',
  },
  {
    id: 'T-7',
    date: '2026-05-04',
    stage: 'belly',
    scale: 'SC-1',
    ticket: '26-055',
    condition: { fuel: '1/2', def: '1/2', LPG: 0, fresh: 0, grey: 0, tag: 'down' },
  },
  {
    id: 'T-8',
    date: '2026-06-30',
    stage: 'finished',
    scale: 'SC-1',
    ticket: '26-088',
    condition: { fuel: 1, def: 1, LPG: 1, fresh: 0, grey: 0, tag: 'down', occupants: ['driver'] },
    ends: true,
    together: 'vehicle',
    note: 'own pads, every wheel on one',
  },
  {
    id: 'T-9',
    date: '2026-07-01',
    stage: 'finished',
    scale: 'SC-2',
    ticket: 'NG 40417',
    condition: { fuel: 1, def: 1, LPG: 1, fresh: 0, grey: 0, tag: 'down', occupants: [{ seat: 'driver', mass: '82 kg' }] },
    gross: true,
    together: 'vehicle',
    note: 'platform, public ticket',
  },
];

export type Readings = Readonly<Record<string, Readonly<Record<string, number | readonly [number, number]>>>>;

export function ticketRecords(weighings: readonly Weighing[], readings: Readings): readonly Rec[] {
  return weighings.map((one): Rec => {
    const read = Object.entries(readings[one.id] ?? {});
    const gross = read.reduce(
      (sum, [, lb]) => sum + (Array.isArray(lb) ? (lb[0] as number) + (lb[1] as number) : (lb as number)),
      0,
    );
    const typed = (lb: unknown): unknown =>
      Array.isArray(lb) ? { left: pounds(lb[0]), right: pounds(lb[1]) } : pounds(Number(lb));
    return {
      block: true,
      id: one.id,
      date: one.date,
      stage: one.stage,
      scale: one.scale,
      ticket: one.ticket,
      condition: one.condition,
      readings: Object.fromEntries(read.map(([axle, lb]) => [axle, typed(lb)])),
      together: one.together ?? 'group',
      ...(one.gross ? { gross: pounds(gross) } : {}),
      ...(one.note ? { note: one.note } : {}),
    };
  });
}

export const ticketsText = (weighings: readonly Weighing[], readings: Readings): string =>
  `# Scale tickets. What was in it and on it stands on the ticket, or the ticket is worth nothing.\n${ticketRecords(
    weighings,
    readings,
  )
    .map((one) => item(one))
    .join('\n')}`;
