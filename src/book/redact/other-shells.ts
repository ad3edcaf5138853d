import type { Model } from '../../model/shell.js';
import { readerOf, say } from '../../words/index.js';
import { tokensIn } from './text.js';

/**
 * Commits' messages without what they say of other shells: a book holds nothing of another customer's coach. Pieces between semicolons
 * belong to the shell that was named last before them.
 */
export function ofThisShell({ shell, shop, elsewhere }: Model): (message: string) => string {
  const others = new Set(elsewhere?.shells?.() ?? []);
  if (others.size === 0) return (message) => message;
  return (message) => {
    let own = true;
    const kept = message.split(/\s*;\s*/u).filter((piece) => {
      const named = tokensIn(piece).map(({ token }) => token);
      const another = named.some((word) => others.has(word));
      if (another || named.includes(shell.id)) own = !another;
      return own;
    });
    return kept.join('; ') || say(readerOf(shop), 'history.another');
  };
}
