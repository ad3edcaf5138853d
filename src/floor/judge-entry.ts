import { zoneMap } from '../compute/access/zones.js';
import { isOutside, placesAllowed, probableSlip } from '../compute/services/envelope.js';
import { mirroredFrom } from '../compute/services/mirrored.js';
import { isSameConnection } from '../compute/services/same-connection.js';
import { strays } from '../compute/services/strays.js';
import { bondTimes } from '../compute/structure/bond-times.js';
import { bondFigures, DEW_MARGIN_K } from '../compute/structure/bonds.js';
import { calibrationGap } from '../compute/verdicts/calibration.js';
import { judgeTest } from '../compute/verdicts/verdict.js';
import { outOfOrder } from '../compute/welding/inspection.js';
import { inspectorShortfall } from '../compute/welding/inspector.js';
import { uncovered } from '../compute/welding/procedure.js';
import { qualified, type Shortfall } from '../compute/welding/qualification.js';
import type { Vec3 } from '../geometry/vector.js';
import { isPlaced, type PlacedNode, placedNodes } from '../model/placed.js';
import type { Model } from '../model/shell.js';
import { tapeSolid } from '../model/tape-solid.js';
import { length, thickness } from '../quantity/format.js';
import { expiredAdhesive } from '../query/concealment.js';
import type { Inspection, Panel, Run, ServiceNode, Test, Ticket, Weld } from '../records/index.js';
import type { FLOOR_TAPPED } from '../words/index.js';

/** What is likely wrong with an entry though its form is right: a sentence of the page with its blanks. */
export interface EntryWarning {
  readonly key: keyof typeof FLOOR_TAPPED;
  readonly values?: Readonly<Record<string, string | number>>;
}

/** By the functions that `check` judges with. Fields that are not filled in yet are not judged. */
export function weldWarnings(weld: Partial<Weld>, model: Model): readonly EntryWarning[] {
  const { welder, date, process, joins = [] } = weld;
  const whole = { ...weld, joins } as Weld;
  const warnings: EntryWarning[] = [];
  if (welder !== undefined && date !== undefined && process !== undefined) {
    const { verdict, reasons } = qualified(whole, model);
    if (verdict !== 'qualified')
      warnings.push({ key: 'floor.tap.unqualified', values: { person: welder, why: reasons.map(shortfallText).join(', ') } });
  }
  const procedure = weld.procedure === undefined ? undefined : model.library.procedures.get(weld.procedure);
  if (procedure && process !== undefined && weld.type !== undefined) {
    const out = uncovered(whole, procedure, model, (mm) => thickness(mm, model.shop.units));
    if (out.length > 0)
      warnings.push({
        key: 'floor.tap.uncovered',
        values: { procedure: procedure.id, why: out.map(({ has, allowed }) => `${has} ≠ ${allowed}`).join(', ') },
      });
  }
  return warnings;
}

const shortfallText = (one: Shortfall): string =>
  'limit' in one
    ? `${one.date} / ${one.limit}`
    : 'process' in one
      ? one.process
      : 'position' in one
        ? one.position
        : 'group' in one
          ? one.group
          : 'range' in one
            ? `${one.thicknessMm.toFixed(1)} mm`
            : '?';

/** `weld`: what is on record of it, or was entered on this page. */
export function lookWarnings(look: Partial<Inspection>, weld: Partial<Weld> | undefined, model: Model): readonly EntryWarning[] {
  const { method, by, date, result } = look;
  if (method === undefined || by === undefined || date === undefined) return [];
  const warnings: EntryWarning[] = [];
  const person = model.library.people.get(by);
  if (weld?.welder === by) warnings.push({ key: 'floor.tap.own', values: { person: by } });
  else if (person && result === 'accept' && inspectorShortfall({ method, date }, person))
    warnings.push({ key: 'floor.tap.noeye', values: { person: by, method } });
  const inspections = [...(weld?.inspections ?? []), look as Inspection];
  const last =
    weld && result !== undefined
      ? outOfOrder({ ...(weld as Weld), inspections }).find(({ at }) => at === inspections.length - 1)
      : undefined;
  if (last) warnings.push({ key: ORDER[last.what] });
  return warnings;
}

const ORDER = {
  'before the weld': 'floor.tap.beforeweld',
  'before the look above': 'floor.tap.beforelook',
  'no repair number': 'floor.tap.norepair',
} as const;

/** `on`: the records that the place was measured from. */
export function nodeWarnings(node: Partial<ServiceNode>, on: readonly string[], model: Model): readonly EntryWarning[] {
  if (!isPlaced(node as ServiceNode)) return [];
  const { at } = node as PlacedNode;
  const warnings: EntryWarning[] = [];
  warnings.push(...outsideWarnings([at], model));
  const across = mirroredFrom(node as PlacedNode, model);
  if (across !== undefined) warnings.push({ key: 'floor.tap.mirrored', values: { id: across } });
  const twin = placedNodes(model.shell.nodes).find((one) => one.id !== node.id && isSameConnection(node as PlacedNode, one));
  if (twin) warnings.push({ key: 'floor.tap.twin', values: { id: twin.id } });
  for (const id of on) {
    const away = awayFrom(at, id, model);
    if (away !== undefined) warnings.push({ key: 'floor.tap.away', values: { id, away: length(away, model.shop.units) } });
  }
  return warnings;
}

/** How far a place is from what a tape was held to, mm: from its outside box. */
function awayFrom(at: readonly number[], id: string, { shell, library }: Model): number | undefined {
  const entry = shell.byId.get(id);
  const solid = entry && tapeSolid(entry.kind, entry.record, library);
  if (!solid) return undefined;
  const { min, max } = solid.bounds;
  return Math.hypot(...at.map((one, k) => Math.max((min[k] as number) - one, 0, one - (max[k] as number))));
}

/** Of places far outside the coach: how each was most likely mistyped. */
function outsideWarnings(places: readonly Vec3[], { shell }: Model): readonly EntryWarning[] {
  const bounds = placesAllowed(shell);
  if (!bounds) return [];
  return places
    .filter((at) => isOutside(at, bounds))
    .map((at) => {
      const slip = probableSlip(at, bounds);
      return { key: slip === undefined ? 'floor.tap.outside' : `floor.tap.outside.${slip}` };
    });
}

export function runWarnings(run: Partial<Run>, model: Model): readonly EntryWarning[] {
  const { from, to, zones = [], via = [] } = run;
  const warnings: EntryWarning[] = from !== undefined && from === to ? [{ key: 'floor.tap.loop', values: { id: from } }] : [];
  const ends = [from, to].map((id) => model.shell.nodes.find((one) => one.id === id)?.at);
  const path = ends[0] && ends[1] ? [ends[0], ...via, ends[1]] : [];
  const { never } = strays(
    { zones, via, path, ...(run.toleranceMm === undefined ? {} : { toleranceMm: run.toleranceMm }) },
    zoneMap(model.shell.zones),
  );
  return [
    ...warnings,
    ...outsideWarnings(via, model),
    ...never.map((id) => ({ key: 'floor.tap.never', values: { id } }) as const),
  ];
}

/** `panel`: what is on record of it, with what is typed put over it. */
export function bondWarnings(panel: Panel, model: Model): readonly EntryWarning[] {
  const warnings: EntryWarning[] = [];
  const bonded = {
    ...panel,
    fixing: { method: 'bonded', ...panel.fixing, applied: panel.fixing?.applied ?? panel.date ?? '2000-01-01' },
  };
  const [figure] = bondFigures({ ...model, shell: { ...model.shell, panels: [bonded as Panel] } });
  if (figure?.dewMarginK !== undefined && figure.dewMarginK < DEW_MARGIN_K - 1e-9)
    warnings.push({ key: 'floor.tap.dew', values: { margin: figure.dewMarginK.toFixed(1), least: DEW_MARGIN_K } });
  const { open, cure } = bondTimes(panel.bond);
  if (open) warnings.push({ key: 'floor.tap.open' });
  if (cure) warnings.push({ key: 'floor.tap.cure' });
  const past = expiredAdhesive(panel);
  if (past) warnings.push({ key: 'floor.tap.expired', values: { day: past.expires } });
  return warnings;
}

export function testWarnings(test: Partial<Test>, model: Model): readonly EntryWarning[] {
  const { instrument, date, of = [] } = test;
  const gauge = gaugeWarning(instrument, date, model);
  if (!test.measured && !(test.start && test.end)) return gauge;
  const { verdict, reason = '', lapsed } = judgeTest({ ...test, of, testKind: test.testKind ?? '' } as Test, model);
  if (verdict === 'not verified' && lapsed) return gauge;
  if (verdict === 'not verified') return [...gauge, { key: 'floor.tap.unjudged', values: { why: reason } }];
  return [...gauge, { key: `floor.tap.${verdict}` }];
}

export const ticketWarnings = ({ scale, date }: Partial<Ticket>, model: Model): readonly EntryWarning[] =>
  gaugeWarning(scale, date, model);

function gaugeWarning(id: string | undefined, date: string | undefined, { library }: Model): readonly EntryWarning[] {
  const gauge = id === undefined ? undefined : library.instruments.get(id);
  const gap = gauge && calibrationGap(gauge, date);
  if (!gap || id === undefined) return [];
  return [
    gap.what === 'no due day'
      ? { key: 'floor.tap.gauge.none', values: { id } }
      : { key: gap.what === 'overdue' ? 'floor.tap.gauge.due' : 'floor.tap.gauge.early', values: { id, day: gap.day } },
  ];
}
