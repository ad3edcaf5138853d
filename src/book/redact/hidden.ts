import type { Model } from '../../model/shell.js';
import type { Person } from '../../records/index.js';
import { EDITION_POLICY } from '../edition-policy.js';
import type { Edition } from '../input.js';
import { isPublic } from './public-words.js';
import { folded, wordsIn } from './words.js';

/** A name that an edition keeps to itself: its words in order, and what stands in its place. */
export interface HiddenName {
  readonly words: readonly string[];
  readonly instead: string;
}

/** What an edition keeps to itself of one shell's record. */
export interface Hidden {
  /** Ids of people; in a text in any case. */
  readonly people: ReadonlySet<string>;
  /** Names of people, small letters without marks, that a field for a person may hold instead of an id. */
  readonly peopleNames: ReadonlySet<string>;
  /** Ids of findings and photos that are not for this edition. */
  readonly records: ReadonlySet<string>;
  /** Each of these ids that says something by itself, in small letters, and what stands in its place in a text. */
  readonly stamps: ReadonlyMap<string, string>;
  /** By the first of their words, longest first. */
  readonly names: ReadonlyMap<string, readonly HiddenName[]>;
  /** Ids that stay as they are wherever they stand. */
  readonly ids: ReadonlySet<string>;
  /** Names that are words of the trade too, and stay where they stand alone: the shop is told. */
  readonly spared: ReadonlyMap<string, string>;
  /** Keys of the shop's own are left out. */
  readonly ownKeys: boolean;
}

/** What stands in the place of a welder, and of whoever ordered the shell. */
export const SOMEONE = 'the shop';
export const CUSTOMER = 'the owner';
/** What stands in the place of a finding's or photo's id. */
const OTHER = 'a record of the shop';

/** An id that says nothing by itself, as `7` or a word of the trade, stays in a text: it may mean anything there. */
const isTelling = (id: string): boolean => id.length > 1 && !/^\p{N}+$/u.test(id) && !isPublic(id);

const NOBODY: Hidden = {
  people: new Set(),
  peopleNames: new Set(),
  records: new Set(),
  stamps: new Map(),
  names: new Map(),
  ids: new Set(),
  spared: new Map(),
  ownKeys: false,
};

/** By facts alone: who is named as a welder, who ordered the shell, which findings the owner is not to be told of. */
export function hiddenFrom(model: Model, edition: Edition): Hidden {
  const policy = EDITION_POLICY[edition];
  if (edition === 'shop') return NOBODY;
  const welders = policy.staff ? [] : weldersOf(model);
  const people = new Set(welders.flatMap(({ id }) => id));
  const records = policy.nonconformances === 'all' ? new Set<string>() : hiddenRecords(model);
  const taken = new Taken();
  for (const { name, more } of welders) {
    taken.person(name, SOMEONE);
    for (const text of more) taken.whole(text, SOMEONE);
  }
  const own = model.shell.typed as { readonly customer?: unknown } | undefined;
  const customers = [
    ...(policy.customer ? [] : [own?.customer ?? model.shell.customer]),
    ...(model.elsewhere?.customers?.() ?? []),
  ];
  for (const customer of customers) taken.customer(customer);
  return {
    people,
    peopleNames: new Set(welders.map(({ name }) => folded(name.trim()))),
    records,
    stamps: new Map([
      ...[...records].filter(isTelling).map((id) => [id.toLowerCase(), OTHER] as const),
      ...[...people].filter(isTelling).map((id) => [id.toLowerCase(), SOMEONE] as const),
    ]),
    names: taken.names,
    ids: publicIds(model, people, records),
    spared: taken.spared,
    ownKeys: true,
  };
}

interface Welder {
  readonly id: string;
  readonly name: string;
  /** Further words of their own: addresses, keys. */
  readonly more: readonly string[];
}

/** Named as a welder in any shell, qualified for a welding process, or a welder by trade; in the register or not. */
function weldersOf({ shell, library, elsewhere }: Model): readonly Welder[] {
  const named = new Set([...shell.welds.flatMap(({ welder }) => welder ?? []), ...(elsewhere?.welders?.() ?? [])]);
  const isWelder = (person: Person): boolean =>
    named.has(person.id) ||
    named.has(person.name) ||
    person.qualified.some(({ process }) => process !== undefined) ||
    folded(person.role.trim()) === 'welder';
  const known = [...library.people.values()].filter(isWelder);
  const ids = new Set(known.flatMap(({ id, name }) => [id, name]));
  return [
    ...known.map(({ id, name, git, key }) => ({ id, name, more: [...(git ?? []), ...(key === undefined ? [] : [key])] })),
    ...[...named].filter((one) => !ids.has(one)).map((one) => ({ id: one, name: '', more: [] })),
  ];
}

/** Findings that the owner is not to be told of, and every photo of them. */
function hiddenRecords({ shell }: Model): ReadonlySet<string> {
  const findings = shell.findings.filter((one) => !one.tellOwner);
  const ids = new Set(findings.map(({ id }) => id));
  const shown = new Set(findings.flatMap(({ photos }) => photos));
  for (const { id, of } of shell.photos) if (shown.has(id) || of.some((one) => ids.has(one))) ids.add(id);
  return ids;
}

function publicIds({ shell, library }: Model, people: ReadonlySet<string>, records: ReadonlySet<string>): ReadonlySet<string> {
  const all = [
    ...shell.byId.keys(),
    shell.id,
    ...[library.materials, library.sections, library.conductors, library.procedures, library.people, library.instruments].flatMap(
      (one) => [...one.keys()],
    ),
    ...library.certificates.keys(),
    ...library.stages.map(({ id }) => id),
    ...shell.services.map(({ id }) => id),
  ];
  return new Set(all.filter((id) => !people.has(id) && !records.has(id)));
}

/** Parts of a name that stand in front of others and are nobody's. */
const PARTICLES = new Set(
  'van von der den de del della di da do dos du la le el al bin ibn mc mr mrs ms dr jr sr ii iii'.split(' '),
);

class Taken {
  readonly names = new Map<string, HiddenName[]>();
  readonly spared = new Map<string, string>();

  /** A person's name: as it is, the other way round, written together, and each of its parts alone. */
  person(name: string, instead: string): void {
    const words = wordsIn(name).map((word) => word.folded);
    this.add(words, instead);
    if (words.length > 1) {
      this.add([...words.slice(-1), ...words.slice(0, -1)], instead);
      this.add([words.join('')], instead);
      this.add([[...words].reverse().join('')], instead);
      const [first = '', last = ''] = [words[0], words.at(-1)];
      this.add([first.charAt(0) + last], instead);
    }
    for (const word of words) if (word.length > 1 && !PARTICLES.has(word)) this.part(word, instead);
  }

  /** A text that counts as a whole only. */
  whole(text: string, instead: string): void {
    this.add(
      wordsIn(text).map((word) => word.folded),
      instead,
    );
  }

  /** As typed: a record of a form that is not read gives nobody away either. */
  customer(customer: unknown, key = 'name'): void {
    if (Array.isArray(customer)) for (const one of customer) this.customer(one, key);
    else if (typeof customer === 'object' && customer !== null)
      for (const [name, one] of Object.entries(customer)) this.customer(one, name);
    else if (typeof customer === 'string') this.ofCustomer(customer, key);
  }

  private ofCustomer(value: string, key: string): void {
    this.whole(value, CUSTOMER);
    if (key === 'contact') for (const address of value.match(/[^\s<>;,]+@[^\s<>;,]+/gu) ?? []) this.whole(address, CUSTOMER);
    else for (const { folded: word } of wordsIn(value)) if (word.length > 2 && !/^\p{N}/u.test(word)) this.part(word, CUSTOMER);
  }

  private part(word: string, instead: string): void {
    if (isPublic(word)) this.spared.set(word, instead);
    else this.add([word], instead);
  }

  /** Longest first, so that the whole name goes before its parts. A name of public words alone would take them out of every text. */
  private add(words: readonly string[], instead: string): void {
    const [first] = words;
    if (first === undefined) return;
    if (words.every((word) => isPublic(word) || /^\p{N}/u.test(word))) return;
    const before = this.names.get(first) ?? [];
    this.names.set(
      first,
      [...before, { words, instead }].sort((a, b) => b.words.length - a.words.length),
    );
  }
}
