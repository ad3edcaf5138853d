import type { Finding } from '../../finding.js';
import type { DecidedFinding } from '../../rules/decide.js';
import { RULES } from '../../rules/index.js';
import type { CheckedFindings } from './checked.js';
import { asciiControls } from './json.js';

/** Levels of SARIF 2.1.0 (OASIS Standard, 3.27.10) are the severities' own names. */
const result = (finding: DecidedFinding, store: string) => ({
  ruleId: finding.rule,
  level: finding.severity,
  message: { text: finding.message },
  locations: [location(finding.place, store)],
  ...(finding.related && finding.related.length > 0
    ? {
        relatedLocations: finding.related.map((one, id) => ({
          id,
          message: { text: one.message },
          ...location(one.place, store),
        })),
      }
    : {}),
  partialFingerprints: { 'ruleAndIds/v1': `${finding.rule} ${finding.ids.join(' ')}` },
  // 3.27.23: a decided warning is there, and somebody answers for it.
  ...(finding.decidedBy === undefined
    ? {}
    : {
        suppressions: [{ kind: 'external', status: 'accepted', justification: `Decided by ${finding.decidedBy}` }],
      }),
});

/** Columns count UTF-16 code units from 1 (3.14.17), as places do. */
const location = (place: Finding['place'], store: string) => ({
  physicalLocation: {
    artifactLocation: { uri: encodeURI(store === '' ? place.file : `${store}/${place.file}`) },
    region: { startLine: place.line, startColumn: place.column, endLine: place.endLine, endColumn: place.endColumn },
  },
});

/**
 * Findings as a SARIF 2.1.0 log, for tools that show them at their lines.
 * @param store Folder of the store as seen from where the log is read, with `/`; empty where that is the store itself.
 */
export function checkSarif(parts: readonly CheckedFindings[], store: string, version: string): string {
  const findings = parts.flatMap((part) => part.findings);
  const used = new Set(findings.map(({ rule }) => rule));
  const known = RULES.filter(({ name }) => used.has(name)).map((rule) => ({
    id: rule.name,
    shortDescription: { text: rule.finds },
    fullDescription: { text: rule.why },
    help: { text: `Source: ${rule.source}` },
    defaultConfiguration: { level: rule.severity },
  }));
  // Those of reading have no rule file.
  const reading = [...used].filter((name) => !known.some(({ id }) => id === name)).map((id) => ({ id }));
  const log = {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'shellbook', version, rules: [...known, ...reading] } },
        columnKind: 'utf16CodeUnits',
        results: findings.map((finding) => result(finding, store)),
      },
    ],
  };
  return asciiControls(JSON.stringify(log, null, 2));
}
