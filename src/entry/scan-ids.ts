/** A record that opens with its id, as nearly all do. */
const OPENS_WITH_ID = /^- *(?:\{ *)?id: *("[^"\\]*"|'[^']*'|[^\s,}"'#]+) *(?=[,}\n]|$)/gmu;
const ITEM = /^- /gmu;
/** What a look at the lines alone cannot judge. */
const UNCLEAR = /^\S.*[\s,{[][#&*!|>]|^[^-#\s]/mu;

/**
 * The ids of a bare list of records, from its lines alone: a tenth of the time that reading the YAML takes. Undefined where the lines
 * leave any doubt, as where a record does not open with its id.
 */
export function scanIds(text: string): readonly string[] | undefined {
  if (UNCLEAR.test(text)) return undefined;
  const ids = [...text.matchAll(OPENS_WITH_ID)].map(([, id = '']) => id.replace(/^["']|["']$/gu, ''));
  return ids.length === (text.match(ITEM)?.length ?? 0) ? ids : undefined;
}
