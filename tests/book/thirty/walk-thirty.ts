import type { ReadPdf } from '../read-pdf.js';
import { walk } from '../three-steps.js';
import type { PlainShell } from './plain-records.js';
import type { Asked } from './questions.js';

/** Lines, cells and hyphens part words where they must: only the signs are compared. */
const signs = (text: string): string => text.replaceAll(/[\s\u00a0\u00ad]+/gu, '');

/** What the printed book does not say of what the records say, on the page that the question leads to and those that its answer may take. */
export function missingFrom(pdf: ReadPdf, { steps, pages = 1, says }: Asked, records: PlainShell): readonly string[] {
  const { pages: trail, lost } = walk(pdf, { question: '', steps, answer: [] });
  if (lost) return [lost];
  const from = trail.at(-1) as number;
  const text = signs(
    pdf.pages
      .slice(from - 1, from + pages)
      .map((page) => page.text)
      .join(' '),
  );
  return says(records).filter((one) => !text.includes(signs(one)));
}
