import type { Model } from '../model/shell.js';
import { type Day, dayOf } from '../quantity/day.js';
import type { Person, RecordBase } from '../records/index.js';
import { coverageOf } from './coverage.js';

/** Who may sign anything; nobody while the shop has not said so. */
export const signers = ({ library }: Model): readonly Person[] =>
  [...library.people.values()].filter(({ signs }) => signs !== undefined && signs.length > 0);

/** Why a person may not sign a stage (or `close`), in words; nothing where they may, or where nobody is named to sign. */
export function mayNotSign(model: Model, by: string, stage: string): string | undefined {
  const all = signers(model);
  if (all.length === 0 || all.some((one) => one.id === by && one.signs?.includes(stage))) return undefined;
  const who = all.filter((one) => one.signs?.includes(stage)).map((one) => one.id);
  return `${by} may not sign ${stage}, says library/people.yaml; expected ${who.join(' or ') || 'somebody whose `signs` has it'}`;
}

export interface NewestCovered {
  readonly id: string;
  readonly day: Day;
}

/** The newest of what a sign-off covers, by the dates typed: it cannot have been signed for before that. */
export function newestCovered(model: Model, stage: string, day: string): NewestCovered | undefined {
  let newest: NewestCovered | undefined;
  for (const name of coverageOf(model, stage, day).keys()) {
    const id = name.slice(name.lastIndexOf(' ') + 1);
    const record = model.shell.byId.get(id)?.record as Partial<RecordBase> | undefined;
    const date = dayOf(record?.date);
    if (date !== undefined && record?.planned !== true && date > (newest?.day ?? '')) newest = { id, day: date };
  }
  return newest;
}
