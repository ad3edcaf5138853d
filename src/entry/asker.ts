/** One of several answers. */
export interface MenuChoice {
  readonly value: string;
  /** As shown, where it is more than the value. */
  readonly name?: string;
}

export interface TextQuestion {
  readonly text: string;
  /** What an empty answer stands for. */
  readonly usual?: string;
  /** What `=` stands for: the answer of last time. */
  readonly last?: string;
  /** What is wrong with an answer; undefined where it will do. */
  readonly wrong?: (typed: string) => string | undefined;
}

/** Questions to the person at the terminal; a test answers from a list. Each throws {@link UserError} where the person gives up. */
export interface Asker {
  text(question: TextQuestion): Promise<string>;
  /** `usual` stands first and is what an empty answer takes. */
  choose(question: { readonly text: string; readonly choices: readonly MenuChoice[]; readonly usual?: string }): Promise<string>;
  confirm(question: { readonly text: string; readonly usual: boolean }): Promise<boolean>;
  /** Lets go of the terminal; no question comes after it. */
  close?(): void;
}
