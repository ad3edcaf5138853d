import type { Model } from '../../model/shell.js';
import type { PageWords } from '../../page/words.js';
import type { FloorData } from '../floor-data.js';
import type { TaskName } from '../tasks.js';
import type { Entries } from './entries.js';
import type { FilledForm } from './form.js';

export type FloorScreen = 'home' | 'form' | 'kept' | 'pick' | 'mark';

/** What the parts of the page share. */
export interface FloorSession {
  readonly data: FloorData;
  readonly words: PageWords;
  readonly model: Model;
  readonly entries: Entries;
  /** The form that is open. */
  form(): { readonly name: TaskName; readonly form: FilledForm } | undefined;
  tell(text: string): void;
  show(screen: FloorScreen): void;
  /** Fills a field of the open form. */
  fill(key: string, text: string): void;
}

/** What a field of the open form says. */
export const typedIn = (session: Pick<FloorSession, 'form'>, key: string): string =>
  session.form()?.form.fields.get(key)?.value.trim() ?? '';

/** The record that a look, a bond or a closing is of. */
export const recordNamed = (): string => (document.getElementById('f-record') as HTMLInputElement | null)?.value.trim() ?? '';
