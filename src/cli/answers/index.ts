import { z } from 'zod';
import { getOwn } from '../../get-own.js';
import type { Json } from '../report/json.js';
import { CHECK_ANSWERS } from './check.js';
import { LOOKUP_ANSWERS } from './lookups.js';
import { PICTURE_ANSWERS } from './pictures.js';
import { PRINT_ANSWERS } from './prints.js';
import { RECORD_ANSWERS } from './records.js';
import { type AnswerForms, type JsonObject, jsonText, orNull } from './shape.js';
import { TAKEOFF_ANSWERS } from './takeoff.js';
import { WEIGHT_ANSWERS } from './weights.js';

const ANSWERS: Readonly<Record<string, AnswerForms>> = {
  ...RECORD_ANSWERS,
  ...CHECK_ANSWERS,
  ...TAKEOFF_ANSWERS,
  ...WEIGHT_ANSWERS,
  ...LOOKUP_ANSWERS,
  ...PICTURE_ANSWERS,
  ...PRINT_ANSWERS,
};

/** Commands whose `--json` answer is one object of this program’s own. */
export const ANSWERED: readonly string[] = Object.keys(ANSWERS).sort();

/** What a command’s `--json` answer is, to the last key. Undefined for a command that has none. */
export function answerForm(command: string): z.ZodType | undefined {
  const forms = getOwn(ANSWERS, command);
  if (!forms) return undefined;
  const head = { shellbook: z.literal(1), command: z.literal(command), shell: orNull(jsonText), revision: orNull(jsonText) };
  const [first, ...others] = formsOf(forms).map(({ shape }) => z.strictObject({ ...head, ...shape }));
  return others.length === 0 ? first : z.union([first as z.ZodObject, ...others]);
}

const formsOf = (forms: AnswerForms): readonly JsonObject[] => (Array.isArray(forms) ? forms : [forms as JsonObject]);

/** A JSON Schema (draft 2020-12). */
export type JsonSchema = Readonly<Record<string, Json>>;

/** JSON Schema of a command’s `--json` answer: the keys that a script may count on. Undefined for a command that has none. */
export function answerSchema(command: string): JsonSchema | undefined {
  const form = answerForm(command);
  return (
    form && {
      ...(z.toJSONSchema(form, { override: ({ jsonSchema }) => void open(jsonSchema) }) as JsonSchema),
      title: `Answer of shellbook ${command} --json`,
      description: 'More keys may come; these stay. Numbers are SI, the unit is the end of the key.',
    }
  );
}

/** A later version may say more: whoever checks an answer against the schema of an earlier one must not turn it down for that. */
function open(schema: { additionalProperties?: unknown }): void {
  if (schema.additionalProperties === false) delete schema.additionalProperties;
}

/** The schemas of all answers, by command. */
export const answerSchemas = (): Readonly<Record<string, JsonSchema | undefined>> =>
  Object.fromEntries(ANSWERED.map((command) => [command, answerSchema(command)]));
