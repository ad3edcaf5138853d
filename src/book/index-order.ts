/** Made once: thousands are compared. */
const collators = new Map<string, Intl.Collator>();

/** The order in which people look: numbers as numbers, capitals and accents beside the plain letter, by the rules of the reader's language. */
export function indexOrder(language: string): (a: string, b: string) => number {
  const collator =
    collators.get(language) ?? new Intl.Collator(language, { numeric: true, sensitivity: 'base', ignorePunctuation: false });
  collators.set(language, collator);
  return collator.compare;
}
