import { PDFArray, PDFDict, type PDFObject } from '@cantoo/pdf-lib';
import type { PageObject } from './pages.js';
import type { PdfFile } from './read.js';
import { signatureField } from './signature-field.js';

/** What a book of this program has in its catalogue, and what a page of it has. Anything else was put there by somebody. */
const CATALOG = new Set([
  ...['Type', 'Version', 'Pages', 'Names', 'Dests', 'Outlines', 'StructTreeRoot', 'MarkInfo', 'Lang', 'ViewerPreferences'],
  ...['PageMode', 'PageLayout', 'PageLabels', 'Metadata', 'OutputIntents', 'AF'],
]);
const NAMES = new Set(['EmbeddedFiles', 'Dests']);
const PAGE = new Set([
  ...['Type', 'Parent', 'Resources', 'MediaBox', 'CropBox', 'Rotate', 'Contents', 'Annots', 'StructParents', 'Tabs', 'Group'],
]);
const LINK = new Set(['Type', 'Subtype', 'F', 'Border', 'Rect', 'Dest', 'StructParent', 'P', 'Contents', 'NM', 'M']);

/** What a reader calls the parts that are most often added. */
const WORDS: Readonly<Record<string, string>> = {
  OpenAction: 'something that is done when the file is opened',
  AA: 'something that starts by itself',
  JavaScript: 'a script',
  OCProperties: 'layers that can be shown and hidden',
  Collection: 'a cover page for its attachments',
  AcroForm: 'a form',
  URI: 'links that lead out of the file',
};

/** What stands in a file that no book has, each in words: scripts, notes, forms, layers, actions, other keys. Empty for a book. */
export function foreignParts(file: PdfFile, pages: readonly PageObject[]): readonly string[] {
  const found = new Set<string>();
  const look = (dict: PDFDict, allowed: ReadonlySet<string>, where: string): void => {
    for (const key of dict.keys()) {
      const word = key.decodeText();
      if (!allowed.has(word)) found.add(`${WORDS[word] ?? `an entry ${word}`}${where}`);
    }
  };
  const field = signatureField(file);
  look(file.catalog, field ? new Set([...CATALOG, 'AcroForm', 'Perms']) : CATALOG, '');
  const names = file.get(file.catalog, 'Names');
  if (names instanceof PDFDict) look(names, NAMES, '');
  pages.forEach(({ page, above }, i) => {
    file.budget.spend('node');
    const where = ` on page ${i + 1}`;
    look(page, PAGE, where);
    for (const one of file.list(page, 'Annots')) {
      const note = file.resolve(one);
      const what = note instanceof PDFDict && note !== field?.field ? foreignNote(file, note) : undefined;
      if (what) found.add(`${what}${where}`);
    }
    for (const node of above) look(node, new Set([...PAGE, 'Kids', 'Count']), '');
  });
  return [...found];
}

function foreignNote(file: PdfFile, note: PDFDict): string | undefined {
  const kind = file.nameOf(note, 'Subtype');
  if (kind !== 'Link') return `a note of kind ${kind ?? 'unknown'}`;
  const odd = note.keys().find((key) => !LINK.has(key.decodeText()) && !(key.decodeText() === 'A' && isGoTo(file, note)));
  return odd === undefined
    ? undefined
    : odd.decodeText() === 'A'
      ? 'a link that does more than lead to a page'
      : `a link with ${odd.decodeText()}`;
}

/** An action that leads to a page of this file, and to nothing after it. */
function isGoTo(file: PdfFile, note: PDFDict): boolean {
  const action: PDFObject | undefined = file.get(note, 'A');
  if (!(action instanceof PDFDict) || file.nameOf(action, 'S') !== 'GoTo') return false;
  const target = file.get(action, 'D');
  return (
    action.keys().every((key) => ['Type', 'S', 'D'].includes(key.decodeText())) &&
    !(target instanceof PDFArray && target.size() === 0)
  );
}
