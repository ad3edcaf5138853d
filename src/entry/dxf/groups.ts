import { UserError } from '../../user-error.js';

/** One pair of lines of a drawing: what the value is, and the value. */
export interface DxfGroup {
  readonly code: number;
  readonly value: string;
  /** Line of the value, counted from 1. */
  readonly line: number;
}

/** A coach has some thousand lines; a drawing of it with everything in it some hundred thousand. */
const MOST_GROUPS = 12_000_000;

/** Pairs of a DXF text one by one: nothing of it is kept. Throws {@link UserError} at the line where it is none. */
export function* dxfGroups(name: string, text: string): Generator<DxfGroup> {
  let at = 0;
  let line = 0;
  const next = (): string | undefined => {
    if (at >= text.length) return undefined;
    const end = text.indexOf('\n', at);
    const value = text.slice(at, end < 0 ? text.length : end);
    at = end < 0 ? text.length : end + 1;
    line++;
    return value.endsWith('\r') ? value.slice(0, -1) : value;
  };
  for (let count = 0; ; count++) {
    const typed = next();
    if (typed === undefined || (typed.trim() === '' && at >= text.length)) return;
    if (!/^\s*-?\d{1,4}\s*$/u.test(typed))
      throw new UserError(
        `${name}:${line}: Found \`${typed.slice(0, 30)}\`, expected a group code of a DXF drawing (a whole number): save the drawing as DXF in text form`,
      );
    const value = next();
    if (value === undefined)
      throw new UserError(`${name}:${line}: the drawing ends in the middle of a pair: it was not saved or copied whole`);
    if (count > MOST_GROUPS)
      throw new UserError(
        `${name} has more than ${MOST_GROUPS / 1e6} million pairs of lines, expected a drawing of one coach: save its frame alone`,
      );
    yield { code: Number(typed), value, line };
  }
}
