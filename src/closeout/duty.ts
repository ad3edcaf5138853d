import type { Model } from '../model/shell.js';
import type { Entry, Weld } from '../records/index.js';
import type { Duty } from '../rules/rule.js';

/** Trades by what they work on. Common practice, no source. */
const BY_MEDIUM: Readonly<Record<string, string>> = {
  dc: 'electrician',
  ac: 'electrician',
  data: 'electrician',
  water: 'plumber and gas fitter',
  drain: 'plumber and gas fitter',
  gas: 'plumber and gas fitter',
  air: 'plumber and gas fitter',
  hydraulic: 'plumber and gas fitter',
  refrigerant: 'plumber and gas fitter',
  fuel: 'plumber and gas fitter',
  duct: 'plumber and gas fitter',
};
const BY_KIND: Readonly<Record<string, string>> = {
  member: 'welder',
  opening: 'welder',
  panel: 'skins and bonding',
  clamp: 'welder',
};
const ADMINISTRATOR = 'shop administrator';
const INSPECTOR = 'inspector';

/**
 * Who must put something right, as a role with the person's id where one is named. Of the trade: the person whom the record names (the
 * welder of a weld, whoever made a test), else the trade that works on such a thing.
 */
export function dutyOf(duty: Duty, ids: readonly string[], model: Model): string {
  if (duty === 'administrator') return ADMINISTRATOR;
  if (duty === 'inspector') return INSPECTOR;
  const entry = ids.map((id) => model.shell.byId.get(id)).find((one) => one !== undefined);
  const person = entry && personOf(entry);
  const known = person === undefined ? undefined : model.library.people.get(person);
  if (known) return `${known.role} (${known.id})`;
  return tradeOf(entry) ?? ADMINISTRATOR;
}

function personOf({ kind, record }: Entry): string | undefined {
  return kind === 'weld' ? (record as Weld).welder : (record as { readonly by?: string }).by;
}

function tradeOf(entry: Entry | undefined): string | undefined {
  if (entry === undefined) return undefined;
  const { medium } = entry.record as { readonly medium?: string };
  return medium === undefined ? BY_KIND[entry.kind] : BY_MEDIUM[medium];
}
