export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];
export type English = 'us' | 'uk';

/** For whom a page is written. */
export interface Reader {
  readonly language: Language;
  readonly english: English;
}

/** One sentence in every language. `uk` where that differs from `us`; names in braces are filled in. */
export interface Sentence {
  readonly us: string;
  readonly uk?: string;
  readonly es: string;
}

/** Names in braces: `{volts} V AC` → `volts`. */
export type Blanks<Text extends string> = Text extends `${string}{${infer Name}}${infer Rest}` ? Name | Blanks<Rest> : never;

/** The reader that a shop writes for: English as in the United States where it names none. */
export const readerOf = ({ language = 'en', english = 'us' }: Partial<Reader>): Reader => ({ language, english });
