import type { Medium } from '../records/names.js';
import { goneFrom, withMarks } from './gone.js';
import { type ListPlan, planList } from './lists/plan.js';
import { listTexts } from './lists/texts.js';
import { planImport } from './plan.js';
import type { SheetInput, SheetPlan } from './sheet-changes.js';
import { isList, type SheetWord } from './sheet-form.js';
import { textsOf } from './texts.js';

export interface SheetOf extends SheetInput {
  readonly word: SheetWord;
  readonly medium?: Medium;
  /** Records that came with this sheet before. */
  readonly remembered?: readonly string[];
  /** Those of them that are gone from it are marked. */
  readonly markGone?: boolean;
}

export interface PlannedSheet {
  readonly plan: SheetPlan;
  readonly texts: ReadonlyMap<string, string>;
  /** Ids of records whose rows are gone. */
  readonly gone: readonly string[];
}

/** The plan, and the new text of each file; none where something is wrong. */
export function planSheet(of: SheetOf, mostBytes: number): PlannedSheet {
  const { plan, begun } = planOf(of);
  const { word, known, sheet, remembered = [], markGone = false } = of;
  const gone = goneFrom(remembered, word, plan, known);
  const whole = markGone ? withMarks(plan, gone, word, known, sheet.name) : plan;
  if (plan.faults.length > 0) return { plan: whole, texts: new Map(), gone };
  const texts = isList(word)
    ? listTexts({ ...whole, begun } as ListPlan, known)
    : textsOf(word, whole, known, undefined, mostBytes);
  return { plan: whole, texts, gone };
}

function planOf(of: SheetOf): { readonly plan: SheetPlan; readonly begun: ReadonlyMap<string, string> } {
  const { word } = of;
  if (isList(word)) {
    const plan = planList({ ...of, word });
    return { plan, begun: plan.begun };
  }
  return { plan: planImport({ ...of, kind: word }), begun: new Map() };
}
