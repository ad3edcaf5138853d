/** A tag, or what stands between two. */
const TEXT = />[^<]+</gu;
/** Ids (`DR-1`, `DC-12/S1`), inches with a fraction (`13-3/4`), dates. */
const ONE_WORD = /(?<![\w&#/-])[\dA-Z][\dA-Z]*(?:[-/][\dA-Z]+)+(?![\w;/-])/gu;
/** A link of its own is a box that goes to the next line whole. */
const ALONE = /^[\dA-Z/-]+$/u;
const BEFORE_UNIT = /(?<=\d) (?=(?:ft|in|mm|m|kg|lb|gal|psi|V|A|L)\b)|(?<=\d\u00a0ft|\d ft) (?=\d)/gu;

/** Markup in which no id, fraction or quantity is parted over two lines. */
export function unbroken(markup: string): string {
  // The same words stand on many cards.
  const done = new Map<string, string>();
  return markup.replace(TEXT, (text) => {
    const known = done.get(text);
    if (known !== undefined) return known;
    const words = text.slice(1, -1);
    const whole = ALONE.test(words) ? text : `>${words.replace(BEFORE_UNIT, '\u00a0').replace(ONE_WORD, '<i>$&</i>')}<`;
    done.set(text, whole);
    return whole;
  });
}
