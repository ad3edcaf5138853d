import type { Model } from '../../model/shell.js';
import { type Concealed, closingDate, concealed } from '../../query/concealment.js';
import { CONCEALED_RUN } from '../example-records.js';
import type { Rule, RuleFinding } from '../rule.js';
import { evidenceOf, lineName, photoDay, testDay } from './evidence.js';

export const orderNotVerified: Rule = {
  name: 'order.not-verified',
  severity: 'warning',
  asks: 'missing',
  duty: 'inspector',
  finds:
    'A concealed run or joint without a dated photo, or without a passed test, of before it was closed in. A note where the panel has no date to compare with.',
  why: 'Nobody can look any more. A check without evidence is not verified; it never passes.',
  source: 'common practice, no source',
  examples: {
    given: `
${CONCEALED_RUN}
# pictures
shells/X-1/photos/a.jpg: {sha256: ab}
# photos/photos.yaml
- {id: P-1, file: a.jpg, of: [DC-1/1], taken: 2026-04-17}
# tests.yaml
`,
    fails: `
# nobody tested it
`,
    passes: `
- {id: TS-1, kind: insulation, of: [DC-1], limit: 1 Mohm, measured: 50 Mohm, instrument: IR-1, date: 2026-04-17}
`,
  },
  check({ model }) {
    const items = concealed(model);
    return [...items.flatMap((item) => withoutEvidence(item, model)), ...undated(items)];
  },
};

function withoutEvidence(item: Concealed, model: Model): readonly RuleFinding[] {
  if (!item.closed) return [];
  const { photos, tests, stale, needsTest } = evidenceOf(item, model);
  const missing = [
    photos.some((photo) => photoDay(photo)) || stale.photos.length > 0
      ? ''
      : photos.length > 0
        ? 'its photos have no date'
        : 'no photo shows it',
    !needsTest || tests.some((test) => testDay(test)) || stale.tests.length > 0 ? '' : 'no passing test covers it',
  ].filter((text) => text !== '');
  if (missing.length === 0) return [];
  const { date, panel } = item.closed;
  return [
    {
      message: `${lineName(item)}, closed in by ${panel} on ${date}, is not verified: ${missing.join(' and ')}`,
      ids: [item.record.id, panel],
      place: item.record.source.place(),
    },
  ];
}

/** One note a panel, not one for each of the many things behind it. */
function undated(items: readonly Concealed[]): readonly RuleFinding[] {
  const behind = new Map<string, number>();
  for (const item of items) for (const panel of item.panels) behind.set(panel.id, (behind.get(panel.id) ?? 0) + 1);
  const panels = new Map(items.flatMap((item) => item.panels).map((panel) => [panel.id, panel]));
  return [...panels.values()]
    .filter((panel) => closingDate(panel) === undefined)
    .map((panel) => ({
      severity: 'note',
      message: `Panel ${panel.id} has no date, so what it closes in (${behind.get(panel.id)} runs and joints) is not verified yet: add \`date:\` on the day it goes on`,
      ids: [panel.id],
      place: panel.source.place(),
    }));
}
