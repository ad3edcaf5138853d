import { RULES } from '../../src/rules/index.js';
import { READING } from '../../src/rules/reading.js';
import type { Duty, Rule } from '../../src/rules/rule.js';
import { EXAMPLE_STORE } from './example-store.js';

const HEAD = `# What \`check\` looks for

Written from the rules themselves by \`UPDATE_RULES=1 npx vitest run --config .vitest.config.ts tests/rules/reference.test.ts\`.

An **error** blocks sign-off and close. A **warning** blocks close until a record in \`findings.yaml\` decides it by name. A **note** blocks nothing.
*Missing* is work that is not done or not on record; a *defect* is there and not acceptable. An *unverified citation* was not
compared with the text ([all of them](LEGAL.md)); *common practice, no source* is the trade's own.

Every example is run as a test: the first gives the finding, the second does not. A file that an example does not show is that of the
[example store](#the-example-store) at the end.
`;

const DUTIES: Readonly<Record<Duty, string>> = {
  administrator: 'for the shop administrator',
  inspector: 'for the inspector',
  trade: 'for whoever did the work',
};

/** The reference of all rules, by area, as Markdown. */
export function rulePage(): string {
  const areas = [...new Set(RULES.map(({ name }) => areaOf(name)))];
  const sections = areas.map((area) =>
    [`## ${area}`, ...RULES.filter(({ name }) => areaOf(name) === area).map(ruleText)].join('\n\n'),
  );
  return `${[HEAD.trimEnd(), tableOfReading(), ...sections, exampleStore()].join('\n\n')}\n`;
}

const areaOf = (name: string): string => name.slice(0, name.indexOf('.'));

function ruleText({ name, severity, asks, duty, finds, why, source, examples }: Rule): string {
  return [
    `### \`${name}\``,
    `**${severity}**, ${asks}, ${DUTIES[duty]}. ${finds}`,
    `Why: ${why}`,
    `Source: ${source}.`.replace(/\.\.$/u, '.'),
    ...(examples
      ? [fenced('Found:', examples.given, examples.fails), fenced('Not found:', examples.given, examples.passes)]
      : []),
  ].join('\n\n');
}

const fenced = (title: string, given: string | undefined, text: string): string =>
  `${title}\n\n\`\`\`yaml\n${[given?.trim(), text.trim()].filter(Boolean).join('\n')}\n\`\`\``;

function tableOfReading(): string {
  const rows = Object.entries(READING).map(([name, { asks, finds }]) => `| \`${name}\` | ${asks} | ${finds} |`);
  return [
    '## Reading',
    'Before any rule looks, reading finds these, each an error at its line:',
    ['| finding | | what |', '| --- | --- | --- |', ...rows].join('\n'),
  ].join('\n\n');
}

const exampleStore = (): string => `## The example store\n\n\`\`\`yaml\n${EXAMPLE_STORE.trim()}\n\`\`\``;
