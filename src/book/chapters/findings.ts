import type { Finding } from '../../finding.js';
import { type Book, type ChapterMaker, personName } from '../book.js';
import { table } from '../table.js';

/** Nonconformances and what was decided, then what the rules say of the record as it stands. */
export const findings: ChapterMaker = (book) => ({
  key: 'findings',
  title: 'Findings and decisions',
  template: 'findings',
  data: { records: findingTable(book), judged: judgedTable(book) },
});

function findingTable(book: Book) {
  const { show } = book;
  return table(book.show, {
    rows: book.assessment.model.shell.findings,
    home: (one) => one.id,
    columns: (c) => [
      c.id(
        'Finding',
        (one) => one.id,
        (one) => show.date(one.raised),
      ),
      c.refs('Of', (one) => one.of),
      c.text(
        'What was found',
        (one) => one.description,
        (one) => one.note,
      ),
      c.text(
        'Decision',
        (one) => one.decision ?? 'undecided',
        (one) => [one.reason, one.approvedBy && `by ${personName(book, one.approvedBy)}`].filter(Boolean).join(', '),
      ),
      c.text('Closed', (one) => (one.closed ? show.date(one.closed) : 'open')),
    ],
    empty: book.edition === 'owner' ? 'The shop recorded nothing that the owner must know.' : 'No findings are recorded.',
  });
}

const SEVERITY = { error: 'Error', warning: 'Warning', note: 'Note' } as const;

function judgedTable(book: Book) {
  const rank = { error: 0, warning: 1, note: 2 };
  return table<Finding>(book.show, {
    look: 'tight',
    rows: [...book.assessment.findings].sort((a, b) => rank[a.severity] - rank[b.severity]),
    group: (one) => ({ error: 'Errors', warning: 'Warnings', note: 'Notes' })[one.severity],
    columns: (c) => [
      c.id(
        'Rule',
        (one) => one.rule,
        (one) => SEVERITY[one.severity],
      ),
      c.refs(
        'Records',
        (one) => one.ids.slice(0, 6),
        (one) => (one.ids.length > 6 ? `and ${one.ids.length - 6} more` : undefined),
      ),
      c.text('What it says', (one) => one.message),
    ],
    empty: 'The rules find nothing to say.',
  });
}
