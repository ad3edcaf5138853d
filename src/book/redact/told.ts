import type { Model } from '../../model/shell.js';
import type { Edition } from '../input.js';
import { type Hidden, hiddenFrom } from './hidden.js';
import { cleanText } from './text.js';
import { wordsIn } from './words.js';

/** A shop looks through a few; more say the same. */
const MOST = 5;

/**
 * What an edition cannot keep to itself, in sentences for the shop: names that are words of the trade too, where they stand alone in a
 * text, and ids that a name stands in.
 */
export function toldToShop(model: Model, edition: Edition): readonly string[] {
  const hidden = hiddenFrom(model, edition);
  return [...sparedWords(model, hidden), ...namesInIds(hidden)];
}

function sparedWords(model: Model, { spared }: Hidden): readonly string[] {
  if (spared.size === 0) return [];
  const found = new Map<string, string[]>();
  for (const { id, record } of model.shell.byId.values()) {
    const { typed } = record as { readonly typed?: unknown };
    for (const word of new Set(capitalsIn(JSON.stringify(typed ?? '')))) {
      if (spared.has(word)) found.set(word, [...(found.get(word) ?? []), id]);
    }
  }
  return [...found]
    .slice(0, MOST)
    .map(
      ([word, ids]) =>
        `\`${word.charAt(0).toUpperCase()}${word.slice(1)}\` is a name and a word of the trade: where it stands alone it is printed. Look at ${ids.slice(0, MOST).join(', ')}${ids.length > MOST ? ` and ${ids.length - MOST} more` : ''}; write the whole name, or the stamp, where a person is meant.`,
    );
}

/** Words with a capital: who means a person writes one. */
const capitalsIn = (text: string): readonly string[] =>
  wordsIn(text).flatMap(({ folded, from }) => (/\p{Lu}/u.test(text.charAt(from)) ? [folded] : []));

function namesInIds(hidden: Hidden): readonly string[] {
  const bare: Hidden = { ...hidden, ids: new Set() };
  const named = [...hidden.ids].filter((id) => cleanText(id, bare) !== id);
  if (named.length === 0) return [];
  const more = named.length > MOST ? ` and ${named.length - MOST} more` : '';
  return [
    `A name or a stamp stands in ${named.slice(0, MOST).join(', ')}${more}: an id is printed as it is. Give it another where that tells too much.`,
  ];
}
