import type { Manifest } from '../../archive/manifest.js';
import type { TerminalPaint } from './paint.js';
import { bullets, counted, paragraph } from './wrap.js';

export function recoverText(
  where: string,
  laid: number,
  { shell, edition, revision, withheld }: Manifest,
  lost: readonly string[],
  paint: TerminalPaint,
): string {
  const of = revision === null ? 'as it was printed' : `of revision ${revision.slice(0, 10)}`;
  const parts = [
    paragraph(`${counted(laid, 'file')} of shell ${shell}, ${of}, from the ${edition} edition are now in ${where}.`),
  ];
  if (withheld.length > 0) parts.push(paragraph(`Left out of this edition: ${withheld.join('; ')}.`));
  if (lost.length > 0) {
    parts.push(`${paint.error('The book is damaged. Left out:')}\n${bullets(lost)}`);
  }
  parts.push(paragraph(`Look at it: shellbook check ${shell} --store ${where}`), 'Keep it: git init, git add, git commit');
  return parts.join('\n');
}
