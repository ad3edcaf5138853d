import type { Assessment } from '../../assess.js';
import { blocks, type Counts, countFindings, type DecidedFinding, decide } from '../../rules/decide.js';
import type { OpenShell, OpenStore } from '../open.js';
import { revisionOf } from '../revision-of.js';

/** What `check` has to say about the store's own files, or about one shell. */
export interface CheckedFindings {
  readonly revision: string | null;
  readonly findings: readonly DecidedFinding[];
  readonly counts: Counts;
  readonly blocks: boolean;
}

export interface CheckedShell extends CheckedFindings {
  readonly shell: string;
  readonly assessment: Assessment;
}

export const checkedShell = (opened: OpenShell): CheckedShell => checkedAs(opened.assessment, revisionOf(opened));

export function checkedAs(assessment: Assessment, revision: string | null): CheckedShell {
  const { shell } = assessment.model;
  const judged = checked(decide(assessment.findings, shell.findings), revision);
  return { ...judged, shell: shell.id, assessment };
}

/** shop.yaml and the library: no finding record of a shell decides about them. */
export const checkedStore = (store: OpenStore, revision: string | null): CheckedFindings =>
  checked(store.loaded.findings, revision);

function checked(findings: readonly DecidedFinding[], revision: string | null): CheckedFindings {
  const counts = countFindings(findings);
  return { revision, findings, counts, blocks: blocks(counts) };
}
