import { DEW_MARGIN_K } from '../../compute/structure/bonds.js';
import { dewPointK } from '../../compute/structure/dew-point.js';
import { calibrationLapse } from '../../compute/verdicts/calibration.js';
import { qualified, type Shortfall } from '../../compute/welding/qualification.js';
import type { Model } from '../../model/shell.js';
import type { PageWords } from '../../page/words.js';
import { parseQuantity } from '../../quantity/parse.js';
import type { Instrument, Weld } from '../../records/index.js';
import type { FloorData } from '../floor-data.js';
import type { TaskName } from '../tasks.js';

/** What is likely wrong with an entry though its form is right, in words; judged by the functions that `check` uses. */
export function warningsFor(
  name: TaskName,
  typed: (key: string) => string,
  record: string,
  data: FloorData,
  words: PageWords,
): readonly string[] {
  if (name === 'weld') return welderWarning(typed, data, words);
  if (name === 'test') return gaugeWarning(typed, data, words);
  if (name === 'bond') return bondWarnings(typed, words);
  if (name === 'closed') return hidden(record, data, words);
  return [];
}

function welderWarning(typed: (key: string) => string, { qualified: papers }: FloorData, words: PageWords): readonly string[] {
  const welder = typed('welder');
  if (welder === '' || typed('date') === '' || typed('process') === '') return [];
  // Without the parts: their thickness and alloy are judged by `check`.
  const model = {
    library: { people: new Map(Object.entries(papers).map(([id, own]) => [id, { id, qualified: own }])), materials: new Map() },
    shell: { byId: new Map() },
  } as unknown as Model;
  const weld = { welder, date: typed('date'), process: typed('process'), position: typed('position') || undefined, joins: [] };
  const { verdict, reasons } = qualified(weld as unknown as Weld, model);
  return verdict === 'qualified'
    ? []
    : [words('floor.tap.unqualified', { person: welder, why: reasons.map(reasonText).join(', ') })];
}

const reasonText = (one: Shortfall): string =>
  'limit' in one ? `${one.what} ${one.limit}` : 'process' in one ? one.process : 'position' in one ? one.position : one.what;

function gaugeWarning(typed: (key: string) => string, { gauges }: FloorData, words: PageWords): readonly string[] {
  const gauge = gauges.find(({ id }) => id === typed('instrument'));
  const why = gauge && calibrationLapse(gauge as Instrument, typed('date') || undefined);
  return why === undefined ? [] : [words('floor.tap.gauge', { why })];
}

/** As a bond is made: the dew point before the adhesive is spread, the open time while it is. */
function bondWarnings(typed: (key: string) => string, words: PageWords): readonly string[] {
  const kelvin = (key: string): number | undefined => quantity(typed(key), 'temperature');
  const [surface, air] = [kelvin('bond.surface'), kelvin('bond.air')];
  const humidity = /^([\d.]+)\s*%$/u.exec(typed('bond.humidity'))?.[1];
  const warnings: string[] = [];
  if (surface !== undefined && air !== undefined && humidity !== undefined && Number(humidity) > 0) {
    const margin = surface - dewPointK(air, Number(humidity) / 100);
    if (margin < DEW_MARGIN_K - 1e-9) warnings.push(words('floor.tap.dew', { margin: margin.toFixed(1), least: DEW_MARGIN_K }));
  }
  const [open, most] = [quantity(typed('bond.open_time'), 'time'), quantity(typed('bond.open_time_limit'), 'time')];
  if (open !== undefined && most !== undefined && open > most) warnings.push(words('floor.tap.open'));
  return warnings;
}

function quantity(text: string, dimension: 'temperature' | 'time'): number | undefined {
  const read = text === '' ? undefined : parseQuantity(text, dimension);
  return read?.ok ? read.value : undefined;
}

function hidden(panel: string, { hides }: FloorData, words: PageWords): readonly string[] {
  if (panel === '') return [];
  const lacking = Object.hasOwn(hides, panel) ? (hides[panel] ?? []) : [];
  if (lacking.length === 0) return [words('floor.tap.clear')];
  return [words('floor.tap.hides'), ...lacking.map(([id, lacks]) => words(`floor.tap.${lacks}`, { id }))];
}
