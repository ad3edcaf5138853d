import { blocks, countFindings, type DecidedFinding } from '../../rules/decide.js';
import type { CheckedFindings, CheckedShell } from './checked.js';
import { placeText } from './findings.js';

/** Signs that no XML 1.0 document may hold (2.2): controls, halves of surrogate pairs, noncharacters. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ud800-\udfff\ufffe\uffff]/gu;

const escaped = (text: string): string =>
  text
    .replace(FORBIDDEN, '')
    .replace(/&/gu, '&amp;')
    .replace(/</gu, '&lt;')
    .replace(/>/gu, '&gt;')
    .replace(/"/gu, '&quot;')
    .replace(/\n/gu, '&#10;');

/** A finding fails its case where it blocks: errors, and warnings that nobody decided. */
function testCase(finding: DecidedFinding, suite: string): string {
  const { rule, severity, message, ids, place } = finding;
  const name = escaped(ids.length > 0 ? `${rule} ${ids.join(' ')}` : rule);
  const open = `    <testcase classname="${escaped(suite)}" name="${name}" time="0">`;
  const said = escaped(`${placeText(place)} ${message}`);
  if (blocks(countFindings([finding])))
    return `${open}\n      <failure type="${severity}" message="${escaped(message)}">${said}</failure>\n    </testcase>`;
  const decided = finding.decidedBy === undefined ? '' : ` Decided by ${escaped(finding.decidedBy)}.`;
  return `${open}\n      <system-out>${severity}: ${said}${decided}</system-out>\n    </testcase>`;
}

function testSuite(name: string, part: CheckedFindings, at: string): string {
  // A report without any case reads as a run that did not happen.
  const cases =
    part.findings.length > 0
      ? part.findings.map((finding) => testCase(finding, name))
      : [`    <testcase classname="${escaped(name)}" name="nothing found" time="0"/>`];
  const failures = part.findings.filter((finding) => blocks(countFindings([finding]))).length;
  const head = `name="${escaped(name)}" tests="${cases.length}" failures="${failures}" errors="0" skipped="0" time="0" timestamp="${at}" hostname="localhost"`;
  return [`  <testsuite ${head}>`, ...cases, '  </testsuite>'].join('\n');
}

/**
 * Findings as a JUnit report, one suite for the store's own files and one a shell. There is no standard for it; elements and
 * attributes are those that Apache Ant’s formatter writes.
 * @param at When, ISO 8601 to the second, without zone.
 */
export function checkJunit(library: CheckedFindings, shells: readonly CheckedShell[], at: string): string {
  const suites = [testSuite('shop and library', library, at), ...shells.map((shell) => testSuite(shell.shell, shell, at))];
  return ['<?xml version="1.0" encoding="UTF-8"?>', '<testsuites name="shellbook check">', ...suites, '</testsuites>'].join('\n');
}
