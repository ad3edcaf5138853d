import type { Model } from '../../model/shell.js';
import { readerOf, say } from '../../words/index.js';

/**
 * A commit's message without what it says of other shells: a book holds nothing of another customer's coach. Pieces between semicolons
 * belong to the shell that was named last before them.
 */
export function ofThisShell(message: string, { shell, shop, elsewhere }: Model): string {
  const others = new Set(elsewhere?.shells?.() ?? []);
  if (others.size === 0) return message;
  let own = true;
  const kept = message.split(/\s*;\s*/u).filter((piece) => {
    const named: readonly string[] = piece.match(ID) ?? [];
    const another = named.some((word) => others.has(word));
    if (another || named.includes(shell.id)) own = !another;
    return own;
  });
  return kept.join('; ') || say(readerOf(shop), 'history.another');
}

/** A run of signs that ids are made of, without what ends a sentence or a clause. */
const ID = /[\p{L}\p{N}](?:[\p{L}\p{N}._/-]*[\p{L}\p{N}])?/gu;
