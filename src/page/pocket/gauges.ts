import type { WhatIfRow } from '../../compute/weights/what-if.js';
import { mass } from '../../quantity/format.js';
import { KG_PER_LB } from '../../quantity/units.js';
import { element, make } from '../dom.js';
import type { PocketData } from '../pocket-data.js';
import type { PageWords } from '../words.js';
import { loaded } from './loading.js';
import type { FirstUnits } from './unit-order.js';
import type { Spoken, UnitChoice } from './units.js';

const SVG = 'http://www.w3.org/2000/svg';

/** What each bay takes, typed, and a bar for every axle and limit. */
export function showGauges({ loading }: PocketData, { words, units }: Spoken): void {
  if (!loading) return;
  const form = element<HTMLFormElement>('whatif');
  const place = element<HTMLDivElement>('gauges');
  const inputs = [...form.querySelectorAll<HTMLInputElement>('input[data-bay]')];
  const kgPerUnit = (of: FirstUnits): number => (of === 'metric' ? 1 : KG_PER_LB);
  const paint = (): void => {
    const typed = inputs.map((input) => [input.dataset.bay as string, numberIn(input.value)] as const);
    for (const [i, [, value]] of typed.entries()) inputs[i]?.setAttribute('aria-invalid', String(value === undefined));
    if (typed.some(([, value]) => value === undefined)) {
      place.replaceChildren(make('p', { class: 'caution' }, words('tap.load.bad')));
      return;
    }
    const rows = loaded(loading, new Map(typed.map(([bay, value]) => [bay, (value as number) * kgPerUnit(units.now())])));
    place.replaceChildren(...rows.filter(({ kind }) => kind !== 'tyre').map((row) => gauge(row, units.told, words)));
  };
  // What was typed stays the same weight.
  const exchange = (before: FirstUnits): void => {
    for (const input of inputs) {
      const value = numberIn(input.value) ?? 0;
      input.value = String(Math.round((value * kgPerUnit(before) * 10) / kgPerUnit(units.now())) / 10);
    }
    nameUnits();
    paint();
  };
  const nameUnits = (): void => {
    for (const unit of form.querySelectorAll('.unit')) unit.textContent = units.now() === 'metric' ? 'kg' : 'lb';
  };
  nameUnits();
  units.onChange(exchange);
  form.addEventListener('input', paint);
  form.addEventListener('submit', (event) => event.preventDefault());
  paint();
}

/** A whole or decimal number, zero or more; nothing typed is zero. */
export function numberIn(typed: string): number | undefined {
  const text = typed.trim().replace(',', '.');
  if (text === '') return 0;
  return /^\d+(?:\.\d+)?$/u.test(text) ? Number(text) : undefined;
}

function nameOf({ kind, name, standing }: WhatIfRow, words: PageWords): string {
  const end = /^(left|right) end of (.+)$/u.exec(name);
  const named =
    kind === 'gross'
      ? words('tap.load.gross')
      : kind === 'bay'
        ? words('tap.load.bay', { bay: name })
        : kind === 'end' && end
          ? words('tap.load.end', { axle: end[2] as string, end: words(end[1] === 'left' ? 'tap.left' : 'tap.right') })
          : name;
  return standing === '' ? named : `${named} (${standing})`;
}

const VERDICTS = {
  within: 'tap.load.within',
  'within uncertainty': 'tap.load.unsure',
  over: 'tap.load.over',
  'not verified': 'tap.load.unknown',
} as const;

function gauge(row: WhatIfRow, told: UnitChoice['told'], words: PageWords): HTMLElement {
  const [load, more] = [mass(row.loadKg, 'both'), mass(row.uncertaintyKg, 'both')].map(told) as [string, string];
  const figures = `${load} ± ${more}`;
  const figure =
    row.limitKg === undefined ? figures : words('tap.load.of', { load: figures, limit: told(mass(row.limitKg, 'both')) });
  const made = make(
    'div',
    { class: row.verdict === 'over' ? 'gauge over' : 'gauge' },
    make('b', {}, nameOf(row, words)),
    `${figure}: ${words(VERDICTS[row.verdict])}`,
  );
  if (row.limitKg !== undefined) made.append(bar(row.loadKg / row.limitKg));
  return made;
}

/** Full at the limit; beyond it there is no more to show than that it is over. */
function bar(share: number): HTMLElement {
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', '0 0 100 10');
  svg.setAttribute('preserveAspectRatio', 'none');
  svg.setAttribute('aria-hidden', 'true');
  const rect = document.createElementNS(SVG, 'rect');
  rect.setAttribute('height', '10');
  rect.setAttribute('width', String(Math.max(0, Math.min(1, share)) * 100));
  svg.append(rect);
  const box = make('span', { class: 'bar' });
  box.append(svg);
  return box;
}
