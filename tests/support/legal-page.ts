import { RULES } from '../../src/rules/index.js';
import { LEGAL_FIGURES, type LegalFigure } from '../../src/rules/legal.js';

/** Those that nobody has held against a text. */
export const fromMemory = (): readonly LegalFigure[] => LEGAL_FIGURES.filter(({ compared }) => compared === undefined);

const HEAD = `# Figures that are the law’s

Written from [legal.ts](legal.ts) and the rules by \`UPDATE_RULES=1 npx vitest run --config .vitest.config.ts tests/rules/reference.test.ts\`.

States, provinces and countries differ, and texts change: whoever certifies a vehicle compares these with the text in force, and a licensed
engineer, electrician or gas fitter decides. A shop writes its own comparison into a pack in \`library/rules/\` (\`citation\`, \`edition\`, \`verified\`).

*the rule*: a copy of the text itself. *official restatement*: whoever makes the rule says what it says. *secondary*: somebody else says so; good enough to
compute with, not to certify by.`;

/** The page of legal figures, as Markdown. */
export function legalPage(): string {
  const memory = fromMemory();
  const compared = LEGAL_FIGURES.filter(({ compared: one }) => one !== undefined);
  const unread = RULES.filter(({ source }) => /unverified citation/iu.test(source));
  return `${[
    HEAD,
    `## Compared with a text: ${compared.length} of ${LEGAL_FIGURES.length}`,
    table(['figure', 'citation', 'edition', 'day', 'compared with', 'which is'], compared.map(comparedRow)),
    `## From memory: ${memory.length} of ${LEGAL_FIGURES.length}`,
    'Nobody has held these against a text yet. The number may only go down.',
    table(
      ['figure', 'citation', 'edition'],
      memory.map(({ figure, citation, edition }) => [figure, citation, edition]),
    ),
    `## Rules that cite a law or standard from memory: ${unread.length} of ${RULES.length}`,
    'Whoever has the text compares it, writes what was read into the rule’s `source`, and takes “unverified citation” away.',
    table(
      ['rule', 'cites'],
      unread.map(({ name, source }) => [`\`${name}\``, source]),
    ),
  ].join('\n\n')}\n`;
}

const comparedRow = ({ figure, citation, edition, compared }: LegalFigure): readonly string[] => [
  figure,
  citation,
  edition,
  compared?.day ?? '',
  compared?.text ?? '',
  compared?.standing ?? '',
];

const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  [heads, heads.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
