/** What a table says of a word that somebody typed: what every object has of itself, as `constructor`, is no word of a table. */
export const getOwn = <T>(table: Readonly<Record<string, T>>, word: string | number): T | undefined =>
  Object.hasOwn(table, word) ? table[word] : undefined;
