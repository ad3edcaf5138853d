import type { Place, Severity } from '../../finding.js';
import { type Counts, countFindings, type DecidedFinding } from '../../rules/decide.js';
import type { TerminalPaint } from './paint.js';
import { counted, paragraph } from './wrap.js';

/** Gives the lines around a place, with a caret under it; empty where the file cannot be shown. */
export type ShowFrame = (place: Place) => string;

/** Beyond this many like findings, the rest is only counted. */
const EXAMPLES = 3;
const ORDER: readonly Severity[] = ['error', 'warning', 'note'];

/** Findings for the terminal: errors first, like ones under one heading, decided ones last and short. */
export function findingsText(findings: readonly DecidedFinding[], frame: ShowFrame, paint: TerminalPaint, all: boolean): string {
  const open = findings.filter((finding) => finding.decidedBy === undefined);
  const decided = findings.filter((finding) => finding.decidedBy !== undefined);
  const groups = ORDER.flatMap((severity) => grouped(open.filter((finding) => finding.severity === severity)));
  const texts = groups.map((group) => groupText(group, frame, paint, all));
  if (decided.length > 0) texts.push(decidedText(decided, paint));
  return texts.join('\n\n');
}

function grouped(findings: readonly DecidedFinding[]): readonly (readonly DecidedFinding[])[] {
  const groups = new Map<string, DecidedFinding[]>();
  for (const finding of findings) groups.set(finding.rule, [...(groups.get(finding.rule) ?? []), finding]);
  return [...groups.values()];
}

function groupText(group: readonly DecidedFinding[], frame: ShowFrame, paint: TerminalPaint, all: boolean): string {
  const { severity, rule } = group[0] as DecidedFinding;
  const shown = all || group.length <= EXAMPLES ? group : group.slice(0, EXAMPLES);
  const more = group.length - shown.length;
  const heading = `${severityText(severity, paint)} ${paint.strong(rule)}${group.length > 1 ? `, ${counted(group.length, 'finding')}` : ''}`;
  const texts = shown.map((finding) => oneText(finding, severity === 'note' ? () => '' : frame, paint));
  if (more > 0) texts.push(paint.faint(`  and ${more} more (--all shows them)`));
  return [heading, ...texts].join('\n');
}

function oneText(finding: DecidedFinding, frame: ShowFrame, paint: TerminalPaint): string {
  const lines = [`  ${paint.faint(placeText(finding.place))}`, paragraph(finding.message, '  ')];
  const shown = frame(finding.place);
  if (shown !== '') lines.push(indent(shown));
  for (const other of finding.related ?? []) lines.push(paragraph(`${other.message}: ${placeText(other.place)}`, '  '));
  return lines.join('\n');
}

function decidedText(decided: readonly DecidedFinding[], paint: TerminalPaint): string {
  const lines = decided.map((finding) =>
    paragraph(`${finding.rule} at ${placeText(finding.place)}: ${finding.message} Decided by ${finding.decidedBy}.`, '  '),
  );
  return [paint.good('decided by a finding record'), ...lines].join('\n');
}

function severityText(severity: Severity, paint: TerminalPaint): string {
  return severity === 'error' ? paint.error(severity) : severity === 'warning' ? paint.warning(severity) : paint.faint(severity);
}

export const placeText = (place: Place): string => `${place.file}:${place.line}:${place.column}`;

const indent = (text: string): string =>
  text
    .split('\n')
    .map((line) => `    ${line}`.trimEnd())
    .join('\n');

/** `2 errors, 3 warnings (1 decided), 4 notes`, or `nothing found`. */
export function countsText(counts: Counts): string {
  const parts = [
    counts.error > 0 ? counted(counts.error, 'error') : '',
    counts.warning > 0 ? counted(counts.warning, 'warning') + (counts.decided > 0 ? ` (${counts.decided} decided)` : '') : '',
    counts.note > 0 ? counted(counts.note, 'note') : '',
  ].filter((part) => part !== '');
  return parts.length > 0 ? parts.join(', ') : 'nothing found';
}

/** What a command that only reads a shell says on standard error when its records have findings of their own. */
export function shadowText(shell: string, findings: readonly DecidedFinding[]): string | undefined {
  const counts = countFindings(findings);
  if (counts.error === 0) return undefined;
  return paragraph(
    `Note: the records of ${shell} have ${counted(counts.error, 'error')}, so figures may be incomplete. See: shellbook check ${shell}`,
  );
}
