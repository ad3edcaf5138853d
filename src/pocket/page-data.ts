import type { PocketData } from '../page/pocket-data.js';
import type { NearKind } from '../query/lookup/types.js';
import { TAPPED, type WordKey } from '../words/index.js';
import { loadingData } from './near-data.js';
import type { Card, Pocket } from './pocket.js';

/** After so many months a page asks for a newer one. Project default. */
export const OLD_MONTHS = 12;

/** Everything that the page's script reads. */
export function pageData(p: Pocket, cards: readonly Card[]): PocketData {
  const { assessment, edition, fingerprint, history, reader } = p;
  const { shell, shop } = assessment.model;
  const date = history.revisionDate?.slice(0, 10);
  const loading = loadingData(assessment);
  return {
    shell: shell.id,
    edition,
    revision: history.revision ?? null,
    fingerprint,
    ...(date ? { date } : {}),
    oldAfterMonths: OLD_MONTHS,
    units: shop.units,
    words: {
      ...Object.fromEntries((Object.keys(TAPPED) as WordKey[]).map((key) => [key, unfilled(p, key)])),
      ...Object.fromEntries(NEAR_KINDS.map((kind) => [`kind.${kind}`, p.told(kind)])),
      language: reader.language,
    },
    search: cards.map(({ id, title, kind, names, more }) => [id, title, kind, names, more]),
    views: p.views.map(({ tap }) => tap),
    ...(loading ? { loading } : {}),
  };
}

const NEAR_KINDS: readonly (NearKind | 'weld')[] = [
  ...(['run', 'node', 'member', 'panel', 'component', 'tank', 'bay'] as const),
  ...(['rail', 'cross member', 'zone', 'weld'] as const),
];

/** A sentence with its blanks still in braces: the script fills them. */
const unfilled = (p: Pocket, key: WordKey): string => p.say(key);
