/** Sentences by key, each in the reader's language; what stands in braces is filled in. */
export type PageWords = (key: string, values?: Readonly<Record<string, string | number>>) => string;

export const wordsFrom =
  (sentences: Readonly<Record<string, string>>): PageWords =>
  (key, values = {}) =>
    (Object.hasOwn(sentences, key) ? (sentences[key] as string) : key).replace(/\{(\w+)\}/gu, (blank, name: string) =>
      Object.hasOwn(values, name) ? String(values[name]) : blank,
    );
