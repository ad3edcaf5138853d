import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { Ajv } from 'ajv';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

/** What a reader of the report must not choke on: signs of XML and JSON, a bell, a mark of text direction. */
const ODD = 'gap & <b>\\"5 in\\"</b> ]]> \\u0007 \\u202E turned';
let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore({
    'shells/T-1/findings.yaml': [
      '- {id: NC-1, raised: 2026-04-11, of: [DC-1/1], rules: [order.not-verified], description: no photos, decision: use as is, reason: seen, approved_by: K. Marrow}',
      `- {id: NC-2, raised: 2026-04-11, of: [FL-1], description: "${ODD}"}`,
      '',
    ].join('\n'),
    'shells/T-1/members-more.yaml': `- {id: FL-9, part: "${ODD}", stage: floor, section: "RT2x2 ${ODD}", alloy: 6061-T6, from: [20 in, 0 in, 4 in], to: [180 in, 0 in, 4 in]}\n`,
  });
});
afterAll(() => store.remove());

async function check(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram(['check', 'T-1', '--quiet', ...args], io);
  return { status, text: io.answer(), messages: io.messages() };
}
const asJson = async () => JSON.parse((await check('--json')).text);

interface SarifResult {
  readonly ruleId: string;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly [{ readonly physicalLocation: { readonly region: object } }];
}

describe('check --format sarif', () => {
  // The schema of SARIF 2.1.0 (OASIS Standard) as published in the package @microsoft/jest-sarif; ajv is the validator.
  const schemaFile = createRequire(import.meta.url).resolve('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json');
  // The schema is of draft 4, whose `id` later drafts call `$id`; nothing else in it differs for them.
  const { $schema: _, id: __, ...schema } = JSON.parse(readFileSync(schemaFile, 'utf8'));
  const validate = new Ajv({ strict: false, validateFormats: false, unicodeRegExp: false }).compile(schema);

  it('is a log by the published schema', async () => {
    const { status, text } = await check('--format', 'sarif');
    expect(status).toBe(1);
    const valid = validate(JSON.parse(text));
    expect(validate.errors ?? []).toEqual([]);
    expect(valid).toBe(true);
  });
  it('has each finding of the JSON answer, at its line, with its rule', async () => {
    const log = JSON.parse((await check('--format', 'sarif')).text);
    const { findings } = await asJson();
    const [only] = log.runs;
    const seen = (only.results as SarifResult[]).map((one) => [
      one.ruleId,
      one.level,
      one.message.text,
      one.locations[0].physicalLocation.region,
    ]);
    expect(seen.length).toBeGreaterThan(3);
    expect(seen.map((one) => one.slice(0, 3))).toEqual(
      findings.map((one: Record<string, unknown>) => [one.rule, one.severity, one.message]),
    );
    for (const [i, one] of seen.entries())
      expect(one[3]).toMatchObject({ startLine: findings[i].line, startColumn: findings[i].column });
    const rules = only.tool.driver.rules.map((one: { id: string }) => one.id);
    expect(new Set(rules)).toEqual(new Set(findings.map((one: { rule: string }) => one.rule)));
    expect(rules.length).toBe(new Set(rules).size);
  });
  it('names files from where it is run, so that a build server finds them', async () => {
    const io = literalIo(path.dirname(store.root));
    await runProgram(['check', 'T-1', '--quiet', '--format', 'sarif', '--store', store.root], io);
    const [first] = JSON.parse(io.answer()).runs[0].results;
    expect(first.locations[0].physicalLocation.artifactLocation.uri).toMatch(
      new RegExp(`^${encodeURI(path.basename(store.root))}/shells/T-1/`, 'u'),
    );
  });
  it('marks what a finding record decides', async () => {
    const { results } = JSON.parse((await check('--format', 'sarif')).text).runs[0];
    const decided = results.filter((one: { suppressions?: unknown }) => one.suppressions);
    expect(decided).toHaveLength(1);
    expect(decided[0].suppressions[0]).toMatchObject({ status: 'accepted', justification: 'Decided by NC-1' });
  });
});

describe('check --format junit', () => {
  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '',
    isArray: (name) => name === 'testcase' || name === 'testsuite',
  });

  it('is well-formed XML, whatever the records say', async () => {
    const { status, text } = await check('--format', 'junit');
    expect(status).toBe(1);
    expect(XMLValidator.validate(text)).toBe(true);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that none is there
    expect(text).not.toMatch(/[\u0000-\u0008\u000e-\u001f]/u);
  });
  it('has a suite for the library and one a shell, with the attributes that readers ask for', async () => {
    const { testsuites } = parser.parse((await check('--format', 'junit')).text);
    const suites = testsuites.testsuite;
    expect(suites.map((one: { name: string }) => one.name)).toEqual(['shop and library', 'T-1']);
    const { findings, counts } = await asJson();
    const failing = counts.error + counts.warning - counts.decided;
    const sum = (key: string): number => suites.reduce((all: number, one: Record<string, string>) => all + Number(one[key]), 0);
    expect(sum('failures')).toBe(failing);
    expect(sum('tests')).toBeGreaterThanOrEqual(findings.length);
    for (const suite of suites) {
      // Ant's JUnit report: name, timestamp (ISO 8601, no zone), hostname, tests, failures, errors, time. Read in windyroad's JUnit.xsd.
      expect(Object.keys(suite)).toEqual(
        expect.arrayContaining(['name', 'timestamp', 'hostname', 'tests', 'failures', 'errors', 'time']),
      );
      expect(suite.timestamp).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/u);
      expect(Number(suite.tests)).toBe(suite.testcase.length);
      for (const one of suite.testcase) expect(Object.keys(one)).toEqual(expect.arrayContaining(['classname', 'name', 'time']));
    }
    const failures = suites.flatMap((one: { testcase: { failure?: { type: string; message: string } }[] }) =>
      one.testcase.flatMap(({ failure }) => failure ?? []),
    );
    expect(failures.map((one: { type: string }) => one.type)).toEqual(expect.arrayContaining(['error', 'warning']));
  });
  it('says "nothing found" where a suite would be empty', async () => {
    const { testsuites } = parser.parse((await check('--format', 'junit')).text);
    expect(testsuites.testsuite[0].testcase).toEqual([{ classname: 'shop and library', name: 'nothing found', time: '0' }]);
  });
});

describe('check --format', () => {
  it('json is the same as --json', async () => {
    expect((await check('--format', 'json')).text).toBe((await check('--json')).text);
  });
  it('refuses what it does not know', async () => {
    const { status, messages } = await check('--format', 'html');
    expect(status).toBe(2);
    expect(messages).toContain('text, json, sarif');
  });
  it('gives JSON that reads, with marks of text direction escaped', async () => {
    const { text } = await check('--json');
    expect(() => JSON.parse(text)).not.toThrow();
    expect(text).toContain('\\u202e');
    expect(text).not.toContain('\u202e');
  });
});

describe('check --watch', () => {
  it('checks again when a record was saved, and not for a file beside the records', async () => {
    const stop = new AbortController();
    const io = { ...literalIo(store.root), signal: stop.signal };
    const running = runProgram(['check', 'T-1', '--watch'], io);
    const times = (): number => io.messages().split('waiting for the next save').length - 1;
    const until = async (count: number): Promise<void> => {
      while (times() < count) await new Promise((resolve) => setTimeout(resolve, 25));
      expect(times()).toBe(count);
    };
    await until(1);
    writeFileSync(path.join(store.root, 'shells/T-1/.members.yaml.swp'), 'x');
    writeFileSync(path.join(store.root, 'shells/T-1/findings.yaml'), '[]\n');
    await until(2);
    stop.abort();
    expect(await running).toBe(1);
    expect(io.answer()).toContain('T-1:');
  });
});
