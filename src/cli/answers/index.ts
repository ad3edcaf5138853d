import { getOwn } from '../../get-own.js';
import { FIGURE_ANSWERS } from './figures.js';
import { RECORD_ANSWERS } from './records.js';
import { type JsonShape, jsonText, orNull } from './shape.js';

const ANSWERS: Readonly<Record<string, JsonShape>> = { ...RECORD_ANSWERS, ...FIGURE_ANSWERS };

/** The schemas of all answers, by command. */
export const answerSchemas = (): Readonly<Record<string, JsonShape | undefined>> =>
  Object.fromEntries(ANSWERED.map((command) => [command, answerSchema(command)]));

/** Commands whose `--json` answer is one object of this program’s own. */
export const ANSWERED: readonly string[] = Object.keys(ANSWERS).sort();

/** JSON Schema of a command’s `--json` answer: the keys that a script may count on. Undefined for a command that has none. */
export function answerSchema(command: string): JsonShape | undefined {
  const body = getOwn(ANSWERS, command);
  return (
    body && {
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: `Answer of shellbook ${command} --json`,
      description: 'More keys may come; these stay. Numbers are SI, the unit is the end of the key.',
      type: 'object',
      properties: { shellbook: { const: 1 }, command: { const: command }, shell: orNull(jsonText), revision: orNull(jsonText) },
      required: ['shellbook', 'command', 'shell', 'revision'],
      allOf: [body],
    }
  );
}
