/**
 * Something that could not be done, with the whole message for the person at the prompt: what is wrong and what to do instead.
 * The command ends with status 2. Never thrown where the answer is merely "no" (status 1), nor from figures or rules.
 */
export class UserError extends Error {
  override readonly name = 'UserError';
  constructor(
    message: string,
    /** 1 where the answer was asked of a book whose seal is broken: that is an answer, and it is "no". */
    readonly status: 1 | 2 = 2,
  ) {
    super(message);
  }
}
