import { unitSigns } from '../../quantity/format.js';
import { readingWords } from '../../query/topics/tested.js';
import type { Book, ChapterMaker } from '../book.js';
import { ageWords } from '../evidence-words.js';
import { table } from '../table.js';

/** Pressure, drop, continuity, insulation, rain and function tests, with what would repeat them. */
export const tests: ChapterMaker = (book) => ({
  key: 'tests',
  title: 'Tests',
  template: 'tests',
  data: { tests: testTable(book), instruments: instrumentTable(book) },
});

/** What the rules say of a test; a test with no value is never called passed. */
function verdict(book: Book, id: string): string {
  const bad = book.assessment.findings.filter((one) => one.rule.startsWith('test.') && one.ids[0] === id);
  if (bad.some((one) => one.rule === 'test.failed')) return 'failed';
  const test = book.assessment.model.shell.tests.find((one) => one.id === id);
  const measured = test?.measured ?? test?.end;
  if (!measured || !test?.limit || bad.length > 0) return 'not verified';
  return 'passed';
}

function testTable(book: Book) {
  const { show } = book;
  return table(book.show, {
    rows: book.assessment.model.shell.tests,
    home: (test) => test.id,
    columns: (c) => [
      c.id(
        'Test',
        (test) => test.id,
        (test) => show.date(test.date),
      ),
      c.text(
        'Kind',
        (test) => test.testKind,
        (test) => [test.note, ageWords(book, test.id, test.of, test.date)].filter(Boolean).join(' ') || undefined,
      ),
      c.refs('Of', (test) => test.of),
      c.text('Limit', (test) => test.limit && unitSigns(test.limit.text)),
      c.text('Measured', (test) => readingWords(test)),
      c.text('Time', (test) => (test.durationS === undefined ? undefined : durationWords(test.durationS))),
      c.text(
        'Instrument',
        (test) => test.instrument,
        (test) => (book.edition === 'shop' ? test.by : undefined),
      ),
      c.verdict((test) => verdict(book, test.id)),
    ],
    empty: 'No tests are recorded.',
  });
}

const durationWords = (s: number): string => (s % 3600 === 0 ? `${s / 3600} h` : s % 60 === 0 ? `${s / 60} min` : `${s} s`);

function instrumentTable(book: Book) {
  const { shell, library } = book.assessment.model;
  const used = new Set([...shell.tests.map((test) => test.instrument), ...shell.tickets.map((ticket) => ticket.scale)]);
  return table(book.show, {
    rows: [...library.instruments.values()].filter((one) => used.has(one.id)),
    columns: (c) => [
      c.id('Instrument', (one) => one.id),
      c.text(
        'Kind',
        (one) => one.instrumentKind,
        (one) => one.name,
      ),
      c.text('Resolution', (one) => one.resolution && unitSigns(one.resolution.text)),
      c.text('Tolerance', (one) => one.tolerance && unitSigns(one.tolerance.text)),
      c.text('Calibrated', (one) => book.show.date(one.calibrated)),
      c.text('Due', (one) => book.show.date(one.due)),
    ],
    empty: 'No test or ticket names an instrument of the library.',
  });
}
