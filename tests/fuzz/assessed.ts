import { type Assessment, assess } from '../../src/assess.js';
import { loadStore } from '../../src/model/load.js';
import { storeText } from '../support/store.js';

/** Undefined where the shell's folder is gone. */
export function assessmentOf(files: Readonly<Record<string, string>>): Assessment | undefined {
  const found = loadStore(storeText(files)).shells.get('T-1');
  return found && assess(found.model, found.findings);
}
