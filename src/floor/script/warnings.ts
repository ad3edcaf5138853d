import { placeAt } from '../../model/place-at.js';
import type { Model } from '../../model/shell.js';
import type { PageWords } from '../../page/words.js';
import { idsInPlace } from '../../records/form/tape.js';
import type { Panel, Weld } from '../../records/index.js';
import type { FloorData } from '../floor-data.js';
import { formDraft } from '../form-draft.js';
import type { FloorEntry } from '../hand-over.js';
import * as judge from '../judge-entry.js';
import { formFields, type TaskName } from '../tasks.js';
import { phoneDay } from './moment.js';
import { type FloorSession, recordNamed } from './session.js';

/** What is likely wrong with what is filled in, in words; judged by the functions that `check` uses. */
export function warningsNow(session: FloorSession): readonly string[] {
  const { data, words } = session;
  const shown = session.form();
  if (!shown) return [];
  const { name, form } = shown;
  const typed = (key: string): string => form.fields.get(key)?.value.trim() ?? '';
  const record = recordNamed();
  const draft = formDraft(name, form.columns, typed);
  const found = judged(name, draft, record, typed, session);
  const ahead = [draft as { date?: string; taken?: string }].some(
    ({ date, taken }) => (date ?? taken ?? '').slice(0, 10) > phoneDay(),
  );
  return [
    ...(name === 'closed' ? hiddenBehind(record, session) : []),
    ...(ahead ? [words('floor.tap.ahead')] : []),
    ...found.map((one) => sentence(one, data, words)),
  ];
}

function judged(
  name: TaskName,
  draft: object,
  record: string,
  typed: (key: string) => string,
  { model, entries }: FloorSession,
): readonly judge.EntryWarning[] {
  switch (name) {
    case 'weld':
      return judge.weldWarnings(draft, model);
    case 'look':
      return judge.lookWarnings(draft, weldSoFar(record, model, entries.all), model);
    case 'node': {
      const at = typed('at');
      const found = at === '' ? '' : placeAt(at, model);
      if (typeof found === 'string') return [];
      const { service } = model.shell.circuits.find(({ id }) => id === typed('circuit')) ?? {};
      const on = idsInPlace(at).map(({ id }) => id);
      return judge.nodeWarnings(
        { ...draft, id: typed('id'), at: found.at, ...(service === undefined ? {} : { service }) },
        on,
        model,
      );
    }
    case 'run':
      return judge.runWarnings(draft, model);
    case 'bond':
    case 'closed':
      return judge.bondWarnings(panelSoFar(record, draft, model), model);
    case 'test':
      return judge.testWarnings(draft, model);
    case 'ticket':
      return judge.ticketWarnings(draft, model);
    default:
      return [];
  }
}

/** A weld as it is on record, or was entered here, with the looks that were entered here. */
function weldSoFar(id: string, { shell }: Model, entered: readonly FloorEntry[]): Partial<Weld> | undefined {
  const here = entered.find((one) => one.kind === 'weld' && one.does === 'add' && one.id === id);
  const known = shell.welds.find((one) => one.id === id) ?? (here?.data as Partial<Weld> | undefined);
  if (!known) return undefined;
  const looks = entered.filter((one) => one.kind === 'weld' && one.does === 'append' && one.id === id).map(({ data }) => data);
  return { ...known, inspections: [...(known.inspections ?? []), ...(looks as unknown as Weld['inspections'])] };
}

function panelSoFar(id: string, draft: Partial<Panel>, { shell }: Model): Panel {
  const known: Partial<Panel> = shell.panels.find((one) => one.id === id) ?? {};
  const over = <T extends object>(old: T | undefined, now: T | undefined): T | undefined =>
    old || now ? ({ ...old, ...present(now ?? {}) } as T) : undefined;
  const [fixing, bond] = [over(known.fixing, draft.fixing), over(known.bond, draft.bond)];
  return { ...known, ...draft, id, fixing, bond } as Panel;
}

const present = (block: object): object => Object.fromEntries(Object.entries(block).filter(([, value]) => value !== undefined));

/** Why a test is not proved is said in English alone: on a Spanish page its sentence says what to look at. */
function sentence({ key, values = {} }: judge.EntryWarning, { language }: FloorData, words: PageWords): string {
  const why = key === 'floor.tap.unjudged' && language === 'en' ? ` ${values.why}.` : '';
  return `${words(key, values)}${why}`;
}

/** What lacks a photo or a passed test behind a panel, less what was photographed and tested on this phone. */
function hiddenBehind(panel: string, session: FloorSession): readonly string[] {
  const { data, words, entries } = session;
  if (panel === '') return [];
  const photographed = new Set(entries.all.filter(({ kind }) => kind === 'photo').flatMap((one) => [one.data.of ?? []].flat()));
  const passed = new Set(entries.all.filter((one) => hasPassed(one, session)).flatMap((one) => [one.data.of ?? []].flat()));
  const lacking = (Object.hasOwn(data.hides, panel) ? (data.hides[panel] ?? []) : []).flatMap(([id, lacks]) => {
    const { circuit } = session.model.shell.runs.find((one) => one.id === id) ?? {};
    const noPhoto = lacks !== 'test' && !photographed.has(id);
    const noTest = lacks !== 'photo' && !passed.has(id) && !(circuit !== undefined && passed.has(circuit));
    return noPhoto || noTest ? [[id, noPhoto && noTest ? 'both' : noPhoto ? 'photo' : 'test'] as const] : [];
  });
  if (lacking.length === 0) return [words('floor.tap.clear')];
  return [words('floor.tap.hides'), ...lacking.map(([id, lacks]) => words(`floor.tap.${lacks}`, { id }))];
}

/** Whether a test that was entered here passes, by its values. */
function hasPassed({ kind, data }: FloorEntry, { model }: FloorSession): boolean {
  if (kind !== 'test') return false;
  const { first, more } = formFields('test');
  const draft = formDraft('test', [...first, ...more], (key) => [data[key] ?? ''].flat().join(', '));
  return judge.testWarnings(draft, model).some(({ key }) => key === 'floor.tap.passed');
}
