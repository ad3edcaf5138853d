import type { Manifest } from '../../archive/manifest.js';
import type { Difference } from '../../archive/verify.js';
import { date } from '../../quantity/format.js';
import type { Compared } from '../book-and-store.js';
import type { Paint } from './paint.js';
import { bullets, counted, paragraph } from './wrap.js';

/** More than these a person does not read; JSON has them all. */
const SHOWN = 20;

const HONESTY =
  'A match says that nothing in the file has changed since it was printed. Who printed it, it cannot say: compare the fingerprint with ' +
  'the one that the shop gives you, or with the store.';

export function verifyText(
  shown: string,
  manifest: Manifest | undefined,
  own: readonly Difference[],
  compared: Compared | undefined,
  paint: Paint,
): string {
  const parts = [
    manifest ? headText(manifest) : paragraph(shown),
    own.length === 0 && manifest ? matchText(manifest, paint) : noMatch('Does not match itself', own, paint),
    compared ? storeText(manifest as Manifest, compared, paint) : '',
    own.length === 0 ? paragraph(paint.faint(HONESTY)) : '',
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function headText({ shell, title, edition, shop, revision, revision_date, tag, uncommitted, fingerprint }: Manifest): string {
  const at = revision_date === null ? '' : ` of ${date(revision_date)}`;
  const from = revision === null ? 'records that were never committed' : `revision ${revision.slice(0, 10)}${at}`;
  const also = uncommitted.length > 0 ? `, with ${counted(uncommitted.length, 'file')} changed and not committed` : '';
  return [
    paragraph(`Shell ${shell}, ${title}: ${edition} edition, printed by ${shop}`),
    paragraph(`${from}${tag === null ? '' : ` (${tag})`}${also}`, '  '),
    `  fingerprint ${fingerprint}`,
  ].join('\n');
}

function matchText({ records, photos, pages, edition, withheld }: Manifest, paint: Paint): string {
  const carried = photos.filter((one) => one.carried).length;
  const files = carried > 0 ? [counted(carried, 'photo file')] : [];
  const amounts = [counted(records.length, 'record file'), ...files, counted(pages.length, 'page')];
  const lines = [paragraph(`${paint.good('Matches itself')}: ${amounts.join(', ')} are as they were printed, to the byte.`)];
  if (edition === 'shop') lines.push(paragraph('The fingerprint was counted again from the records in it.', '  '));
  if (withheld.length > 0) lines.push(paragraph(`This edition carries the record without ${withheld.join('; ')}.`, '  '));
  return lines.join('\n');
}

function noMatch(head: string, differences: readonly Difference[], paint: Paint): string {
  const more = differences.length - SHOWN;
  return [
    paint.error(head),
    bullets(differences.slice(0, SHOWN).map(({ message }) => message)),
    ...(more > 0 ? [paint.faint(`  and ${more} more (--json has them all)`)] : []),
  ].join('\n');
}

function storeText({ revision }: Manifest, { matches, matchesRevision, store, differences }: Compared, paint: Paint): string {
  if (matches === null) return paragraph(`Not compared with a store: ${store}.`);
  if (matches) return paragraph(`${paint.good('Matches the store')} ${store}: the same record, to the fingerprint.`);
  const then = `its revision ${revision?.slice(0, 10)}`;
  const since = matchesRevision
    ? `The store's record at ${then} is the book's: it has changed since the book was printed.`
    : matchesRevision === false
      ? `The store's record at ${then} is not the book's either.`
      : 'The store does not have the revision that the book was printed from.';
  return `${noMatch(`Does not match the store ${store} as it is now`, differences, paint)}\n${paragraph(since, '  ')}`;
}
