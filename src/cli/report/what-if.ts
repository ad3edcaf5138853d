import type { Thought, WhatIfRow } from '../../compute/weights/what-if.js';
import { type Json, place3 } from './json.js';
import type { TerminalPaint } from './paint.js';
import type { ShownUnits } from './shown.js';
import { type TextColumn, textTable } from './tables.js';
import { paragraph } from './wrap.js';

export const whatIfJson = (typed: readonly string[], thoughts: readonly Thought[], rows: readonly WhatIfRow[]): Json => ({
  loads: thoughts.map((one, i) => ({ typed: typed[i], mass_kg: one.massKg, at_mm: place3(one.at), bay: one.bay })),
  rows: rows.map((one) => ({
    kind: one.kind,
    name: one.name,
    standing: one.standing,
    load_kg: one.loadKg,
    uncertainty_kg: one.uncertaintyKg,
    limit_kg: one.limitKg,
    margin_kg: one.marginKg,
    verdict: one.verdict,
  })),
  over: isOver(rows),
});

export const isOver = (rows: readonly WhatIfRow[]): boolean => rows.some((one) => one.verdict === 'over');

const right = (head: string): TextColumn => ({ head, align: 'right' });

export function whatIfText(
  typed: readonly string[],
  rows: readonly WhatIfRow[],
  shown: ShownUnits,
  paint: TerminalPaint,
): string {
  const lines = rows.map((one) => [
    one.standing === '' ? one.name : `${one.name}, ${one.standing}`,
    shown.mass(one.loadKg),
    shown.massDown(one.limitKg),
    shown.massDown(one.marginKg),
    `±${shown.mass(one.uncertaintyKg)}`,
    one.verdict === 'over' ? paint.error('OVER') : one.verdict === 'within' ? paint.good('within') : paint.warning(one.verdict),
  ]);
  const over = rows.filter((one) => one.verdict === 'over').map((one) => one.name);
  const answer =
    over.length > 0
      ? paint.error(paragraph(`Over: ${over.join('; ')}. Do not load it this way: carry less, or put it somewhere else.`))
      : paint.good(paragraph('Nothing is over its limit. A margin “within uncertainty” is no margin.'));
  const what = `With ${typed.join(', and ')}; other bays empty, any tank at any level, any seat taken or not, ${shown.massUnit}`;
  const heads = [{ head: '', wrap: true }, ...['load', 'limit', 'margin', ''].map(right), { head: '' }];
  return `${paint.strong(paragraph(what))}\n${textTable(heads, lines, '  ')}\n${answer}`;
}
