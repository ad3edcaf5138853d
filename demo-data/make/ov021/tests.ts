import type { Service } from '../coach/service.js';
import { list, type Rec } from '../yaml.js';

const ids = (records: readonly Rec[], keep: (id: string) => boolean = () => true): readonly string[] => records.map((one) => String(one.id)).filter(keep);
const halves = <T>(all: readonly T[], size: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / size) }, (_, i) => all.slice(i * size, (i + 1) * size));

/** Tests before close-in, then of the whole; what failed first stays. */
export function tests(services: readonly Service[]): readonly Rec[] {
  const of = (file: string): Service => services.find((one) => one.file === file) as Service;
  let n = 0;
  const id = (): string => `TS-${String((n += 1)).padStart(3, '0')}`;
  const electric = (file: string, by: string, date: string): readonly Rec[] =>
    halves(ids(of(file).circuits), 6).flatMap((some, i): Rec[] => [
      { id: id(), kind: 'insulation', of: some, limit: '1 Mohm', measured: `${42 - 3 * i} Mohm`, instrument: 'IR-1', by, date, stage: 'services' },
      { id: id(), kind: 'continuity', of: some, limit: '0.8 ohm', measured: `0.${31 + i} ohm`, instrument: 'DM-1', by, date, stage: 'services' },
    ]);
  const earthRuns = ids(of('dc-house').runs, (run) => run.startsWith('DC-E'));
  return [
    { '#': 'Water: the first one dripped at the pump tee, see NC-06', id: id(), kind: 'drop', of: ['WC', 'WH'], limit: '1 psi', start: '100 psi', end: '91 psi', duration: '15 min', instrument: 'PG-2', by: 'F6', date: '2026-03-30', stage: 'services' },
    { id: id(), kind: 'drop', of: ['WC', 'WH', 'WS'], limit: '1 psi', start: '100 psi', end: '100 psi', duration: '15 min', instrument: 'PG-2', by: 'F6', date: '2026-04-01', witness: 'J5', stage: 'services' },
    { id: id(), kind: 'drop, water head', of: ['DR'], limit: '0.1 psi', start: '5.00 psi', end: '5.00 psi', duration: '15 min', instrument: 'PG-1', by: 'F6', date: '2026-04-01', stage: 'services' },
    { '#': ['', 'Gas: source isolated, two hours to settle'], id: id(), kind: 'drop', of: ['GA'], limit: '0 psi', start: '3.00 psi', end: '3.00 psi', start_temperature: '14 C', end_temperature: '14 C', duration: '15 min', instrument: 'PG-1', by: 'F6', witness: 'J2', date: '2026-04-02', stage: 'services' },
    { id: id(), kind: 'drop', of: ['AI'], limit: '2 psi', start: '110 psi', end: '109 psi', start_temperature: '15 C', end_temperature: '15 C', duration: '30 min', instrument: 'PG-2', by: 'F6', date: '2026-04-03', stage: 'services' },
    { id: id(), kind: 'pressure hold', of: ['HY'], limit: '50 psi', start: '2,500 psi', end: '2,475 psi', duration: '10 min', instrument: 'PG-3', by: 'F6', date: '2026-04-03', stage: 'services' },
    { '#': ['', 'Electrical, all before the ceiling and the belly went on'], id: id(), kind: 'continuity', of: earthRuns, limit: '0.1 ohm', measured: '0.03 ohm', instrument: 'DM-1', by: 'E1', date: '2026-04-06', stage: 'services' },
    ...electric('dc-house', 'E1', '2026-04-06'),
    ...electric('ac-mains', 'E1', '2026-04-07'),
    { id: id(), kind: 'continuity', of: ids(of('data').circuits), limit: '12 ohm', measured: '4.2 ohm', instrument: 'CT-1', by: 'E1', date: '2026-04-08', stage: 'services' },
    { '#': ['', 'Whole shell'], id: id(), kind: 'rain', of: ['SO-1', 'DR-1', 'DR-B', 'WN-1', 'WN-2', 'WN-3', 'WN-4'], limit: 0, measured: 2, duration: '30 min', by: 'S8', date: '2026-05-07', stage: 'fitout', note: 'two drips at the slide top seal' },
    { id: id(), kind: 'rain', of: ['SO-1', 'DR-1', 'DR-B', 'WN-1', 'WN-2', 'WN-3', 'WN-4'], limit: 0, measured: 0, duration: '30 min', by: 'S8', date: '2026-05-14', witness: 'J5', stage: 'fitout' },
    { id: id(), kind: 'function, slide-out travel', of: ['SO-1'], limit: '40 s', measured: '31 s', by: 'E1', date: '2026-06-17', stage: 'fitout' },
    { id: id(), kind: 'gas, appliances connected', of: ['GA'], limit: '0.5 in w.c.', start: '11.2 in w.c.', end: '11.1 in w.c.', start_temperature: '19 C', end_temperature: '19 C', duration: '5 min', instrument: 'PG-4', by: 'F6', date: '2026-06-17', stage: 'fitout' },
    { '#': ['', 'Bond coupons, one a lot'], id: 'TS-101', kind: 'coupon pull', of: ['SK-L-01'], limit: '250 lbf', measured: '410 lbf', instrument: 'PT-1', by: 'S8', date: '2026-01-29', stage: 'skin' },
    { id: 'TS-102', kind: 'coupon pull', of: ['RF-01'], limit: '250 lbf', measured: '390 lbf', instrument: 'PT-1', by: 'S8', date: '2026-02-09', stage: 'skin' },
  ];
}

export const testsText = (services: readonly Service[]): string => list(['Write what the gauge said. Whether that is good enough is not ours to type.'], tests(services));
