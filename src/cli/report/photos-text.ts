import type { PhotoDrafts } from '../../entry/photos.js';
import { envelope, type Json } from './json.js';
import { counted, paragraph } from './wrap.js';

export interface PhotosShown extends PhotoDrafts {
  readonly refused: ReadonlyMap<string, string>;
  /** Pictures whose date is none → what stands there. */
  readonly undated: ReadonlyMap<string, string>;
  readonly others: number;
  /** Concealed runs and joints that no photo shows. */
  readonly missing: readonly string[];
  readonly written: boolean;
}

const SHOWN = 20;

export function photosText(
  { drafts, doubles, refused, undated: wrong, others, missing, written }: PhotosShown,
  shell: string,
): string {
  const open = drafts.filter(({ data }) => data.of === undefined);
  const undated = drafts.filter(({ data }) => data.taken === undefined);
  const lines = [`${written ? 'Took' : 'Would take'} in ${counted(drafts.length, 'picture')} of ${shell}.`];
  for (const { id, data, proposed } of drafts.slice(0, SHOWN)) {
    const shows =
      data.of === undefined
        ? proposed.length > 0
          ? `may show ${proposed.slice(0, 4).join(', ')}`
          : 'shows?'
        : `shows ${[data.of].flat().join(', ')}`;
    lines.push(`  ${id}  ${String(data.file)}  ${data.taken === undefined ? 'no date' : String(data.taken)}  ${shows}`);
  }
  if (drafts.length > SHOWN) lines.push(`  and ${drafts.length - SHOWN} more`);
  if (doubles.length > 0)
    lines.push(paragraph(`${counted(doubles.length, 'picture')} there already, by content: ${some(doubles)}.`));
  for (const [name, why] of refused) lines.push(paragraph(`Not taken in: ${name}: ${why}.`));
  for (const [name, said] of wrong)
    lines.push(paragraph(`Without its date: ${name}: the camera wrote \`${said}\`, which is no day.`));
  if (others > 0) lines.push(`${counted(others, 'file')} of other kinds skipped.`);
  if (undated.length > 0)
    lines.push(
      paragraph(
        `${counted(undated.length, 'picture carries', 'pictures carry')} no date: add \`taken:\` in photos.yaml, or it proves nothing about the time before close-in.`,
      ),
    );
  if (open.length > 0)
    lines.push(
      paragraph(
        `Nobody has said yet what ${counted(open.length, 'picture shows', 'pictures show')}: write \`of:\` in photos.yaml, below the records of that day.`,
      ),
    );
  if (missing.length > 0)
    lines.push(
      paragraph(
        `No photo yet of ${counted(missing.length, 'concealed run or joint', 'concealed runs and joints')}: ${some(missing)}.`,
      ),
    );
  return lines.join('\n');
}

const some = (names: readonly string[]): string =>
  names.slice(0, SHOWN).join(', ') + (names.length > SHOWN ? ` and ${names.length - SHOWN} more` : '');

export const photosJson = ({ drafts, doubles, refused, undated, missing, written }: PhotosShown, shell: string): string =>
  envelope('photos', shell, null, {
    dry_run: !written,
    taken: drafts.map(({ data, proposed }) => ({ ...(data as { readonly [key: string]: Json }), proposed })),
    already_there: doubles,
    refused: [...refused].map(([file, reason]) => ({ file, reason })),
    undated: [...undated].map(([file, written]) => ({ file, written })),
    missing,
  });
