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
  /** What is wrong with an answer; undefined where it will do. */
  readonly wrong?: (typed: string) => string | undefined;
}

/** Questions to the person at the terminal; a test answers from a list. Each throws {@link UserError} where the person gives up. */
export interface Asker {
  text(question: TextQuestion): Promise<string>;
  /** `usual` stands first; typing narrows the list down. */
  choose(question: { readonly text: string; readonly choices: readonly MenuChoice[]; readonly usual?: string }): Promise<string>;
  confirm(question: { readonly text: string; readonly usual: boolean }): Promise<boolean>;
}
