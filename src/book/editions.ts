import type { Assessment } from '../assess.js';
import type { Finding } from '../finding.js';
import type { Model } from '../model/shell.js';
import type { Shell } from '../records/index.js';
import { EDITION_POLICY } from './edition-policy.js';
import type { CommitList, Edition } from './input.js';
import { inLanguage } from './language.js';
import { type Hidden, hiddenFrom } from './redact/hidden.js';
import { ofThisShell } from './redact/other-shells.js';
import { cleanText } from './redact/text.js';
import { redact } from './redact/value.js';

/** What one edition may print of an assessment. */
export function forEdition(assessment: Assessment, edition: Edition): Assessment {
  const policy = EDITION_POLICY[edition];
  // Technicians and the shop read English, whatever the owner reads.
  if (edition === 'shop') return inLanguage(assessment, 'en');
  const { model } = assessment;
  const hidden = hiddenFrom(model, edition);
  const { customer, byId, id, ...rest } = model.shell;
  const seen = ({ id: one }: { readonly id: string }): boolean => !hidden.records.has(one);
  const whole = { ...rest, findings: rest.findings.filter(seen), photos: rest.photos.filter(seen) };
  const clean = redact(whole, hidden) as Omit<Shell, 'customer' | 'byId' | 'id'>;
  const shell: Shell = {
    ...clean,
    id,
    welds: clean.welds.map(({ welder, ...weld }) => weld),
    byId,
    ...(policy.customer && customer ? { customer } : {}),
  };
  const kept = {
    shop: { ...(redact(model.shop, hidden) as Model['shop']), ...(edition === 'owner' ? {} : { language: 'en' as const }) },
    library: libraryFor(model, hidden),
    shell: { ...shell, byId: entriesOf(shell, byId) },
  };
  return { model: kept, figures: assessment.figures, findings: seenFindings(assessment.findings, policy.findings, hidden) };
}

/** The library without the records of hidden people, and without their names in those of others. */
function libraryFor({ library }: Model, hidden: Hidden): Model['library'] {
  const people = new Map([...library.people].filter(([id]) => !hidden.people.has(id)));
  const clean = Object.entries({ ...library, people }).map(([list, records]) => [
    list,
    records instanceof Map ? new Map([...records].map(([id, one]) => [id, redact(one, hidden)])) : redact(records, hidden),
  ]);
  return Object.fromEntries(clean) as Model['library'];
}

/** The commits that an edition may print: of this shell alone, and their authors and words are the shop's own. */
export function historyFor(history: CommitList, model: Model, edition: Edition): CommitList {
  const ours = ofThisShell(model);
  if (EDITION_POLICY[edition].staff)
    return { ...history, commits: history.commits.map((commit) => ({ ...commit, message: ours(commit.message) })) };
  const hidden = hiddenFrom(model, edition);
  const clean = (tag: string | undefined): { tag?: string } => (tag === undefined ? {} : { tag: cleanText(tag, hidden) });
  return {
    ...history,
    ...clean(history.tag),
    commits: history.commits.map((commit) => ({
      ...commit,
      author: '',
      message: cleanText(ours(commit.message), hidden),
      ...clean(commit.tag),
    })),
  };
}

function seenFindings(findings: readonly Finding[], areas: 'all' | readonly string[], hidden: Hidden): readonly Finding[] {
  const seen = areas === 'all' ? findings : findings.filter((one) => areas.includes(one.rule.split('.')[0] as string));
  const isSeen = (id: string): boolean => !hidden.people.has(id) && !hidden.records.has(id);
  return seen.map((one) => ({ ...one, message: cleanText(one.message, hidden), ids: one.ids.filter(isSeen) }));
}

/** The same ids, each with its record as this edition has it; a record that it may not see is gone. */
function entriesOf(shell: Shell, byId: Shell['byId']): Shell['byId'] {
  const lists = Object.values(shell).filter(Array.isArray).flat() as { readonly id?: string }[];
  const records = new Map(lists.filter((one) => typeof one?.id === 'string').map((one) => [one.id as string, one]));
  for (const axle of shell.chassis.axles) records.set(axle.id, axle);
  return new Map([...byId].filter(([id]) => records.has(id)).map(([id, entry]) => [id, { ...entry, record: records.get(id) }]));
}
