import type { CareItem, Clamp } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { phrasesFor, sentencesFor } from '../sentences.js';
import { table } from '../table.js';

/** Care with its dates and boxes to tick, and the bolts with their torque. */
export const keep: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const { care = [] } = book.assessment.model.shell;
  return {
    key: 'care',
    title: w('keep.title'),
    template: 'owner-care',
    data: { care: careTable(book, care), bolts: boltTable(book) },
  };
};

const DAY_S = 86_400;
const PERIOD = /(\d+)\s*(day|week|month|year)s?/u;

/** The day that a number of days, weeks, months or years after another is, as `2026-07-10`; undefined where no time is named. */
function dueAfter(every: string, from: string | undefined): string | undefined {
  const [, count, unit] = PERIOD.exec(every) ?? [];
  if (from === undefined || count === undefined) return undefined;
  const [year = 0, month = 1, day = 1] = from.split('-').map(Number);
  const n = Number(count);
  if (unit === 'day' || unit === 'week') {
    const seconds = Date.UTC(year, month - 1, day) / 1000 + n * (unit === 'week' ? 7 : 1) * DAY_S;
    return new Date(seconds * 1000).toISOString().slice(0, 10);
  }
  const months = month - 1 + n * (unit === 'year' ? 12 : 1);
  const [toYear, toMonth] = [year + Math.floor(months / 12), months % 12];
  const lastDay = new Date(Date.UTC(toYear, toMonth + 1, 0)).getUTCDate();
  return new Date(Date.UTC(toYear, toMonth, Math.min(day, lastDay))).toISOString().slice(0, 10);
}

/** When it is due next: counted from the last day on which it was done, else from its first day. */
export const careDue = ({ every, from, done }: CareItem): string | undefined => dueAfter(every, [...done].sort().at(-1) ?? from);

function careTable(book: Book, care: readonly CareItem[]) {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const last = ({ done }: CareItem): string | undefined => [...done].sort().at(-1);
  return table<CareItem>(book.show, {
    look: 'ticks',
    rows: care,
    columns: (c) => [
      c.text(w('head.what'), (one) => one.what),
      c.text(w('keep.every'), (one) => phrase(one.every)),
      c.text(w('keep.last'), (one) => book.show.date(last(one)) || w('keep.never')),
      c.text(w('keep.due'), (one) => book.show.date(careDue(one)) || w('keep.by.distance')),
      c.text(w('keep.done'), () => '________  ________'),
    ],
    empty: w('keep.none'),
  });
}

/** Bolts with the same torque in one line. */
function boltTable(book: Book) {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const groups = new Map<string, Clamp[]>();
  for (const one of book.assessment.model.shell.clamps) {
    const key = JSON.stringify([one.clampKind, one.bolt, one.torqueNm, one.checkAgain]);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return table<readonly Clamp[]>(book.show, {
    look: 'dense tight',
    rows: [...groups.values()],
    columns: (c) => [
      c.text(w('head.what'), ([one]) => [phrase(one?.clampKind), one?.bolt].filter(Boolean).join(', ')),
      c.text(w('keep.torque'), ([one]) => (one?.torqueNm === undefined ? undefined : book.show.torque(one.torqueNm))),
      c.text(w('keep.again'), ([one]) => phrase(one?.checkAgain)),
      c.text(w('head.id'), (all) => all.map(({ id }) => id).join(', ')),
      c.text(w('keep.checked'), (all) => {
        const checks = all.flatMap(({ checks: done = [] }) => done.map(({ date }) => date)).sort();
        return book.show.date(checks.at(-1)) || w('keep.never');
      }),
    ],
    empty: w('word.none'),
  });
}
