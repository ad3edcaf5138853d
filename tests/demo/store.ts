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

export function judged(shell: string): { readonly assessment: Assessment; readonly findings: readonly DecidedFinding[] } {
  const one = loaded.shells.get(shell);
  if (!one) throw new Error(`no shell ${shell}`);
  const assessment = assess(one.model, one.findings);
  return { assessment, findings: decide(assessment.findings, one.model.shell.findings) };
}
