import type { ChangedPage, SupplementChanges } from './compare.js';

/** One line of the list that comes with a supplement: pages that follow each other and are changed alike. */
export interface Exchange {
  readonly chapter: string;
  readonly takeOut: string;
  readonly putIn: string;
  readonly why: string;
}

const WHY: Readonly<Record<ChangedPage['why'], string>> = {
  contents: 'changed at the bars',
  references: 'page numbers that it refers to',
  new: 'one more page',
};

/** What to take out of a binder and what to put in, in the order of the book. */
export function exchanges(changes: SupplementChanges, titleOf: (chapter: string) => string): readonly Exchange[] {
  const runs: ChangedPage[][] = [];
  for (const page of changes.pages) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run && last && last.number + 1 === page.number && last.chapter === page.chapter && last.why === page.why) run.push(page);
    else runs.push([page]);
  }
  const lines = runs.map((run): Exchange => {
    const [first, last] = [run[0] as ChangedPage, run.at(-1) as ChangedPage];
    const range = span(first.label, last.label);
    return { chapter: titleOf(first.chapter), takeOut: first.why === 'new' ? '–' : range, putIn: range, why: WHY[first.why] };
  });
  return [...lines, ...spans(changes.takeOut).map((range) => ({ chapter: '', takeOut: range, putIn: '–', why: 'gone' }))];
}

const span = (from: string, to: string): string => (from === to ? from : `${from} to ${to}`);

function spans(numbers: readonly number[]): readonly string[] {
  const found: [number, number][] = [];
  for (const number of numbers) {
    const last = found.at(-1);
    if (last && last[1] + 1 === number) last[1] = number;
    else found.push([number, number]);
  }
  return found.map(([from, to]) => span(String(from), String(to)));
}
