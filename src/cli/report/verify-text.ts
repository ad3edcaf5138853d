import type { Manifest } from '../../archive/manifest.js';
import type { BookDifference } from '../../archive/verify.js';
import { dateWords } from '../../quantity/format.js';
import type { VerifiedAnswer } from '../verified.js';
import type { TerminalPaint } from './paint.js';
import { bullets, counted, paragraph } from './wrap.js';

/** More than these a person does not read; JSON has them all. */
const SHOWN = 20;

/** Three answers, each of its own: unchanged, signed by whom, the same as the store. None stands for another. */
export function verifyText(found: VerifiedAnswer, paint: TerminalPaint): string {
  const { manifest, shown, signed } = found;
  const parts = [
    manifest ? headText(manifest) : paragraph(shown),
    unchangedText(found, paint),
    paragraph(signed.proved ? paint.good(signed.words) : signed.words),
    found.tag ? paragraph(found.tag.is === 'known' ? paint.good(found.tag.words) : found.tag.words) : '',
    storeText(found, paint),
    manifest && manifest.withheld.length > 0
      ? paragraph(paint.faint(`This edition leaves out ${manifest.withheld.join('; ')}.`))
      : '',
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function headText({
  shell,
  title,
  edition,
  shop,
  revision,
  revision_date,
  tag,
  uncommitted,
  fingerprint,
}: Omit<Manifest, 'homes'>): string {
  const at = revision_date === null ? '' : ` of ${dateWords(revision_date)}`;
  const from = revision === null ? 'records that were never committed' : `revision ${revision.slice(0, 10)}${at}`;
  const also = uncommitted.length > 0 ? `, with ${counted(uncommitted.length, 'file')} changed and not committed` : '';
  return [
    paragraph(`The book says: shell ${shell}, ${title}, ${edition} edition, printed by ${shop}`),
    paragraph(`${from}${tag === null ? '' : ` (${tag})`}${also}`, '  '),
    `  fingerprint ${fingerprint}`,
  ].join('\n');
}

function unchangedText({ own, manifest, seal }: VerifiedAnswer, paint: TerminalPaint): string {
  if (own.length > 0 || !manifest) {
    const uncovered =
      seal.notCovered.length > 0 ? paragraph(`Not checked, because nothing covers it: ${seal.notCovered.join('; ')}.`, '  ') : '';
    return [different('Changed since it was sealed', own, paint), uncovered].filter((part) => part !== '').join('\n');
  }
  const { records, photos, pages } = manifest;
  const carried = photos.filter((one) => one.carried).length;
  const files = carried > 0 ? [counted(carried, 'photo file')] : [];
  const amounts = [counted(records.length, 'record file'), ...files, counted(pages.length, 'page')];
  const counting =
    manifest.seal === 2 || manifest.edition === 'shop' ? ' Its fingerprint was worked out again from its records.' : '';
  return paragraph(`${paint.good('Unchanged since it was sealed')}: ${amounts.join(', ')}.${counting}`);
}

function different(head: string, differences: readonly BookDifference[], paint: TerminalPaint): string {
  const more = differences.length - SHOWN;
  return [
    paint.error(head),
    bullets(differences.slice(0, SHOWN).map(({ message }) => message)),
    ...(more > 0 ? [paint.faint(`  and ${more} more (--json has them all)`)] : []),
  ].join('\n');
}

function storeText({ manifest, compared, again, fromStore }: VerifiedAnswer, paint: TerminalPaint): string {
  if (!manifest || !compared) return '';
  const { matches, matchesRevision, store } = compared;
  if (matches === null) {
    const missing = fromStore.length > 0 ? `${bullets(fromStore.map(({ message }) => message))}\n` : '';
    return `${missing}${paragraph(`Not compared with a store: ${store}.`)}`;
  }
  const at = manifest.revision === null ? '' : ` at revision ${manifest.revision.slice(0, 10)}`;
  const pages =
    again === undefined || 'why' in again
      ? `pages not compared: ${again?.why ?? 'they cannot be read'}`
      : again.differences.length === 0
        ? `${counted(again.pages, 'page')} printed again, and the same`
        : `${counted(again.pages, 'page')} printed again, and not the same`;
  if (fromStore.length === 0) return paragraph(`${paint.good('Matches the record in the store')} ${store}${at}; ${pages}.`);
  const then =
    matchesRevision === true
      ? `The store's record${at} matches the book: the differences came later.`
      : matchesRevision === false
        ? `The store's record${at} does not match the book either.`
        : 'The store does not have the revision that the book was printed from.';
  const since = matches ? '' : `\n${paragraph(then, '  ')}`;
  return `${different(`Not the same as the store in ${store}`, fromStore, paint)}${since}\n${paragraph(`${pages.charAt(0).toUpperCase()}${pages.slice(1)}.`, '  ')}`;
}
