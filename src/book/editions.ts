import type { Assessment } from '../assess.js';
import type { Finding } from '../finding.js';
import type { Model, Shell } from '../model/shell.js';
import { keysWith } from '../records/keys-with.js';
import type { Edition, History } from './input.js';

/** Who may see what: the one table. Whatever is not for an edition is taken out here, before any chapter sees it. */
interface EditionPolicy {
  /** Who ordered the shell, and how to reach them. */
  readonly customer: boolean;
  /** Names and stamps of welders, and who typed what into the record. */
  readonly staff: boolean;
  /** Nonconformance records: every one, or only those that the owner is to be told of. */
  readonly nonconformances: 'all' | 'told';
  /** Areas of the rules whose findings are printed. */
  readonly findings: 'all' | readonly string[];
  /** Words after the shell's number on each page. */
  readonly name: string;
}

export const EDITION_POLICY: Readonly<Record<Edition, EditionPolicy>> = {
  owner: { customer: true, staff: false, nonconformances: 'told', findings: [], name: 'Owner’s edition' },
  service: {
    customer: false,
    staff: false,
    nonconformances: 'all',
    findings: ['weight', 'member', 'panel', 'opening', 'service', 'access', 'test', 'finding'],
    name: 'Service edition',
  },
  shop: { customer: true, staff: true, nonconformances: 'all', findings: 'all', name: 'Shop edition' },
};

/** What stands in the place of a welder. */
const SOMEONE = 'the shop';
/** Fields of free text, where a stamp may be named among other words. */
const TEXTS = keysWith(({ prose }) => prose === true);
/** Fields that name a person. */
const SIGNERS = keysWith(({ person }) => person === true);
/** What no edition but the shop's has: under which addresses and by which key a person commits. */
const PRIVATE = keysWith((traits) => traits.private === true);

/** What an edition keeps to itself of one shell's record. */
export interface Hidden {
  readonly ids: ReadonlySet<string>;
  /** Names and the like, longest first, wherever they stand in a text. */
  readonly words: readonly { readonly word: string; readonly instead: string }[];
}

export function hiddenFrom(model: Model, edition: Edition): Hidden {
  const sight = EDITION_POLICY[edition];
  const welders = sight.staff ? [] : [...model.library.people.values()].filter((person) => /weld/iu.test(person.role));
  const customer = sight.customer ? [] : Object.values(model.shell.customer ?? {}).filter((word) => word !== undefined);
  const words = [
    ...welders.map((person) => ({ word: person.name, instead: SOMEONE })),
    ...customer.map((word) => ({ word, instead: 'the owner' })),
  ].filter(({ word }) => word.trim().length > 1);
  return { ids: new Set(welders.map((person) => person.id)), words: words.sort((a, b) => b.word.length - a.word.length) };
}

/** What one edition may print of an assessment. */
export function forEdition(assessment: Assessment, edition: Edition): Assessment {
  const sight = EDITION_POLICY[edition];
  if (edition === 'shop') return assessment;
  const { model } = assessment;
  const hidden = hiddenFrom(model, edition);
  const { customer, byId, ...rest } = model.shell;
  const clean = redact(rest, hidden) as Omit<Shell, 'customer' | 'byId'>;
  const findings = sight.nonconformances === 'all' ? clean.findings : clean.findings.filter((one) => one.tellOwner);
  const welds = clean.welds.map(({ welder, ...weld }) => weld);
  const shell: Shell = { ...clean, findings, welds, byId, ...(sight.customer && customer ? { customer } : {}) };
  const people = new Map(
    [...model.library.people].filter(([id]) => !hidden.ids.has(id)).map(([id, one]) => [id, withoutPrivate(one)]),
  );
  const kept = { shop: model.shop, library: { ...model.library, people }, shell: { ...shell, byId: entriesOf(shell, byId) } };
  return { model: kept, figures: assessment.figures, findings: seenFindings(assessment.findings, sight, hidden) };
}

/** The commits that an edition may print: their authors and words are the shop's own. */
export function historyFor(history: History, model: Model, edition: Edition): History {
  if (EDITION_POLICY[edition].staff) return history;
  const hidden = hiddenFrom(model, edition);
  return {
    ...history,
    commits: history.commits.map((commit) => ({ ...commit, author: '', message: masked(commit.message, hidden) })),
  };
}

function seenFindings(findings: readonly Finding[], sight: EditionPolicy, hidden: Hidden): readonly Finding[] {
  const areas = sight.findings;
  const seen = areas === 'all' ? findings : findings.filter((one) => areas.includes(one.rule.split('.')[0] as string));
  return seen.map((one) => ({ ...one, message: masked(one.message, hidden), ids: one.ids.filter((id) => !hidden.ids.has(id)) }));
}

const withoutPrivate = <T extends object>(record: T): T =>
  Object.fromEntries(Object.entries(record).filter(([key]) => !PRIVATE.has(key))) as T;

/** The same ids, each with its record as this edition has it; a record that it may not see is gone. */
function entriesOf(shell: Shell, byId: Shell['byId']): Shell['byId'] {
  const lists = Object.values(shell).filter(Array.isArray).flat() as { readonly id?: string }[];
  const records = new Map(lists.filter((one) => typeof one?.id === 'string').map((one) => [one.id as string, one]));
  for (const axle of shell.chassis.axles) records.set(axle.id, axle);
  return new Map([...byId].filter(([id]) => records.has(id)).map(([id, entry]) => [id, { ...entry, record: records.get(id) }]));
}

/** A deep copy without what is hidden. What was typed stays behind whole: nothing prints it, and nothing can leak from it. */
export function redact(value: unknown, hidden: Hidden, key = ''): unknown {
  if (typeof value === 'string') {
    if (SIGNERS.has(key) && hidden.ids.has(value)) return SOMEONE;
    return TEXTS.has(key) ? masked(value, hidden) : withoutNames(value, hidden);
  }
  if (Array.isArray(value)) return value.map((one) => redact(one, hidden, key));
  if (value === null || typeof value !== 'object' || key === 'source') return value;
  if (key === 'typed') return {};
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, redact(one, hidden, name)]));
}

function withoutNames(text: string, hidden: Hidden): string {
  let shown = text;
  for (const { word, instead } of hidden.words) shown = shown.replaceAll(word, instead);
  return shown;
}

function masked(text: string, hidden: Hidden): string {
  return withoutNames(text, hidden).replace(/[\p{L}\p{N}._/-]+/gu, (token) => {
    const bare = token.replace(/[.]+$/u, '');
    return hidden.ids.has(bare) ? SOMEONE + token.slice(bare.length) : token;
  });
}
