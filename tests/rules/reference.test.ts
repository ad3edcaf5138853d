import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assess } from '../../src/assess.js';
import { RULES } from '../../src/rules/index.js';
import { READING } from '../../src/rules/reading.js';
import type { Outside, RuleArea } from '../../src/rules/rule.js';
import { EXAMPLE_STORE, exampleFiles } from '../support/example-store.js';
import { legalPage } from '../support/legal-page.js';
import { rulePage } from '../support/rule-page.js';
import { loadOne } from '../support/store.js';

const PAGE = fileURLToPath(new URL('../../src/rules/RULES.md', import.meta.url));
const LEGAL = fileURLToPath(new URL('../../src/rules/LEGAL.md', import.meta.url));

describe('the page of rules', () => {
  it('has the rules as they are', () => {
    if (process.env.UPDATE_RULES) writeFileSync(PAGE, rulePage());
    expect(rulePage(), 'UPDATE_RULES=1 writes it anew').toBe(readFileSync(PAGE, 'utf8'));
  });

  it('stands beside that of legal figures', () => {
    if (process.env.UPDATE_RULES) writeFileSync(LEGAL, legalPage());
    expect(legalPage(), 'UPDATE_RULES=1 writes it anew').toBe(readFileSync(LEGAL, 'utf8'));
  });

  it('names every finding of reading', () => {
    const source = ['schema', 'records', 'source', 'model', 'store', 'quantity'].flatMap(codesUnder);
    expect(new Set(source)).toEqual(new Set(Object.keys(READING)));
  });
});

describe('the examples of a rule', () => {
  it.each(RULES.map((rule) => [rule.name, rule] as const))(
    '%s: the first gives the finding, the second does not',
    (name, { examples }) => {
      const area = name.slice(0, name.indexOf('.')) as RuleArea;
      const found = (text: string) => findingsOf(`${examples.given ?? ''}\n${text}`, area);
      const fails = found(examples.fails);
      expect(fails.map(({ rule }) => rule)).toContain(name);
      const passes = found(examples.passes);
      expect(passes.filter(({ rule }) => rule === name)).toEqual([]);
      for (const finding of [...fails, ...passes]) expect(finding.rule, finding.message).not.toMatch(/^format\./u);
    },
  );
});

function findingsOf(text: string, area: RuleArea) {
  const { git, pictures, ...files } = Object.fromEntries([...exampleFiles(EXAMPLE_STORE), ...exampleFiles(text)]);
  const named = Object.fromEntries(Object.keys(pictures === undefined ? {} : parse(pictures)).map((file) => [file, 'x']));
  const { model, findings } = loadOne({ ...files, ...named }, 'X-1');
  const said = (git === undefined ? {} : parse(git)) as { sharedCommits?: number; builtSincePlanned?: readonly string[] };
  const history = { sharedCommits: said.sharedCommits ?? 0, builtSincePlanned: new Set(said.builtSincePlanned) };
  return assess({ ...model, ...history }, findings, outsideOf(git, pictures), [area]).findings;
}

/** What Git and the pictures say, as an example writes it. */
function outsideOf(git: string | undefined, pictures: string | undefined): Outside {
  const { entered, ...more } = (git === undefined ? {} : parse(git)) as { entered?: Record<string, string> } & Outside;
  return {
    ...more,
    ...(entered === undefined ? {} : { entered: new Map(Object.entries(entered)) }),
    ...(pictures === undefined ? {} : { photos: new Map(Object.entries(parse(pictures))) }),
  };
}

/** Names of findings of reading in the files of a room. */
function codesUnder(room: string): readonly string[] {
  const folder = fileURLToPath(new URL(`../../src/${room}`, import.meta.url));
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .flatMap(
      (file) => readFileSync(path.join(folder, file), 'utf8').match(/(?<=['`])format\.[a-z]+(?:-[a-z]+)*(?=['`])/gu) ?? [],
    );
}
