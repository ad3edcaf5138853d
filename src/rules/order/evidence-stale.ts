import { type CountsFrom, countsFrom } from '../../compute/record/changed-on.js';
import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import { concealed } from '../../query/concealment.js';
import type { Weld } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';
import { evidenceOf, type Line, photoDay, testDay } from './evidence.js';

export const evidenceStale: Rule = {
  name: 'order.evidence-stale',
  severity: 'warning',
  asks: 'missing',
  duty: 'inspector',
  finds:
    'A run, joint, weld or test whose only photos, passed tests or inspections are from before the last change of its place, route, size or joints.',
  why: 'A line that was moved after its photo and its test has been neither photographed nor tested.',
  source: 'common practice, no source',
  examples: {
    given: `
# zones.yaml
- {id: TC, name: belly trough, box: [[0 m, -0.5 m, 0 m], [4 m, 0.5 m, 0.3 m]], closed_by: [BP-1], drains: [[2.9 m, 0 m, 0 m]]}
# panels.yaml
- {id: BP-1, kind: belly, thickness: 2 mm, date: 2026-04-20, outline: [[0 m, -0.5 m, 0 m], [4 m, -0.5 m, 0 m], [4 m, 0.5 m, 0 m], [0 m, 0.5 m, 0 m]]}
# services/dc.yaml
service: Lights
medium: dc
nodes:
  - {id: N1, kind: source, role: battery, at: [-1 m, 0 m, 0.15 m], tolerance: 10 mm}
  - {id: N2, kind: load, at: [5 m, 0 m, 0.15 m], tolerance: 10 mm}
runs:
  - {id: DC-1/1, from: N1, to: N2, zones: [TC], tolerance: 10 mm, date: 2026-04-10}
# pictures
shells/X-1/photos/a.jpg: {sha256: ab}
# photos/photos.yaml
`,
    fails: `
- {id: P-1, file: a.jpg, of: [DC-1/1], taken: 2026-04-05}
`,
    passes: `
- {id: P-1, file: a.jpg, of: [DC-1/1], taken: 2026-04-12}
`,
  },
  check({ model }) {
    return [...lines(model).flatMap((line) => ofLine(line, model)), ...model.shell.welds.flatMap((weld) => ofWeld(weld, model))];
  },
};

/** What is closed in, by photo and test; what stands exposed, by test alone. */
function lines(model: Model): readonly (Line & { readonly closed: boolean })[] {
  const hidden = concealed(model);
  const known = new Set(hidden.map(({ record }) => record.id));
  const exposed = model.shell.runs.filter((run) => !known.has(run.id));
  return [
    ...hidden.map(
      (item) => ({ kind: item.kind, record: item.record, zones: item.zones, closed: true }) as Line & { closed: true },
    ),
    ...exposed.map((record) => ({ kind: 'run', record, zones: [], closed: false }) as Line & { closed: false }),
  ];
}

function ofLine(line: Line & { readonly closed: boolean }, model: Model): readonly RuleFinding[] {
  const { record } = line;
  const { photos, tests, stale, needsTest } = evidenceOf(line, model);
  const from = countsFrom(model, record.id);
  if (!from) return [];
  const old = [
    ...(line.closed && !photos.some(photoDay)
      ? stale.photos.map(({ id, ...one }) => ({ id, day: photoDay({ id, ...one }), what: 'photo' }))
      : []),
    ...(needsTest && !tests.some(testDay)
      ? stale.tests.map(({ id, ...one }) => ({ id, day: testDay({ id, ...one }), what: 'test' }))
      : []),
  ];
  if (old.length === 0) return [];
  const what = [...new Set(old.map((one) => one.what))];
  return [
    {
      message: `${record.id} ${changeWords(from, record.id, model)}; ${listed(old)} ${old.length > 1 ? 'are' : 'is'} from before that and no longer ${old.length > 1 ? 'count' : 'counts'}: make the ${what.join(' and the ')} again, or, if only the entry was mended, add \`corrected: {date: …, by: …, why: …}\``,
      ids: [record.id, ...old.map((one) => one.id)],
      place: record.source.place(),
    },
  ];
}

function ofWeld(weld: Weld, model: Model): readonly RuleFinding[] {
  const from = countsFrom(model, weld.id);
  const accepted = weld.inspections.filter((one) => one.result === 'accept' && one.date !== undefined);
  if (!from?.change || accepted.length === 0) return [];
  if (accepted.some((one) => dayOf(one.date as string) >= from.day)) return [];
  const last = accepted
    .map((one) => dayOf(one.date as string))
    .sort()
    .at(-1);
  return [
    {
      message: `Weld ${weld.id} ${changeWords(from, weld.id, model)}; its last accepted inspection is of ${last} and no longer counts: inspect it again, or, if only the entry was mended, add \`corrected: {date: …, by: …, why: …}\``,
      ids: [weld.id],
      place: weld.source.place('inspections'),
    },
  ];
}

/** `was changed on 2026-06-01 (amendment A-1)`. */
function changeWords({ day, change, of }: CountsFrom, id: string, { shell }: Model): string {
  const amended = shell.amendments.find((one) => one.changes.includes(of));
  const by = amended ? ` by amendment ${amended.id}` : change && change.commit === undefined ? ', not committed yet' : '';
  if (!change) return `is recorded as of ${day}`;
  return of === id ? `was changed on ${day}${by}` : `changed with ${of} on ${day}${by}`;
}

const MOST = 4;

function listed(old: readonly { readonly id: string; readonly day?: string | undefined; readonly what: string }[]): string {
  const some = old.slice(0, MOST).map((one) => `${one.what} ${one.id} of ${one.day}`);
  const more = old.length - some.length;
  return more > 0 ? `${some.join(', ')} and ${more} more` : some.join(', ');
}
