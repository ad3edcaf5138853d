import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Assessment, assess } from '../../src/assess.js';
import { loadStore } from '../../src/model/load.js';
import type { DecidedFinding } from '../../src/rules/decide.js';
import { decide } from '../../src/rules/decide.js';
import { readStoreText } from '../../src/store/read.js';

export const DEMO = path.resolve(fileURLToPath(new URL('../../demo-data', import.meta.url)));

const loaded = loadStore(await readStoreText(DEMO));

export const libraryFindings = loaded.findings;

interface Judged {
  readonly assessment: Assessment;
  readonly findings: readonly DecidedFinding[];
}
const known = new Map<string, Judged>();

/** One shell of the demo, judged when it is first asked for: tests only look at it. */
export function judged(shell: string): Judged {
  const found = known.get(shell);
  if (found) return found;
  const one = loaded.shells.get(shell);
  if (!one) throw new Error(`no shell ${shell}`);
  const assessment = assess(one.model, one.findings);
  const made = { assessment, findings: decide(assessment.findings, one.model.shell.findings) };
  known.set(shell, made);
  return made;
}
