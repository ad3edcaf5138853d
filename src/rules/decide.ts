import type { Finding, Severity } from '../finding.js';
import type { Nonconformance } from '../records/index.js';

/** A finding beside the finding record that decides it, where there is one. */
export interface DecidedFinding extends Finding {
  /** Id of the record in findings.yaml. */
  readonly decidedBy?: string;
}

/**
 * Sets decisions beside warnings. A record decides a warning when it names the rule (`rules`) and the blamed record (`of`),
 * and has both a decision and who approved it. An error is never decided: a rating or a law is not the shop's to waive.
 */
export function decide(findings: readonly Finding[], records: readonly Nonconformance[]): readonly DecidedFinding[] {
  const deciding = records.filter((record) => record.decision !== undefined && record.approvedBy !== undefined);
  return findings.map((finding) => {
    if (finding.severity !== 'warning') return finding;
    const by = deciding.find((record) => record.rules.includes(finding.rule) && names(record, finding));
    return by ? { ...finding, decidedBy: by.id } : finding;
  });
}

const names = (record: Nonconformance, finding: Finding): boolean =>
  finding.ids[0] !== undefined && record.of.includes(finding.ids[0]);

export interface Counts {
  readonly error: number;
  readonly warning: number;
  readonly note: number;
  /** Warnings, counted above, that a finding record decides. */
  readonly decided: number;
}

export function countFindings(findings: readonly DecidedFinding[]): Counts {
  const of = (severity: Severity): number => findings.filter((finding) => finding.severity === severity).length;
  return {
    error: of('error'),
    warning: of('warning'),
    note: of('note'),
    decided: findings.filter((finding) => finding.decidedBy !== undefined).length,
  };
}

/** True where something blocks close-out: an error, or a warning that nobody has decided. */
export const blocks = (counts: Counts): boolean => counts.error > 0 || counts.warning > counts.decided;
