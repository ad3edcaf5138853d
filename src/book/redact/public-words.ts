import { lazy } from '../../compute/lazy-value.js';
import { getOwn } from '../../get-own.js';
import type { AnyField, Fields } from '../../records/field.js';
import { KINDS } from '../../records/kinds.js';
import { folded, wordsIn } from './words.js';

/** Colours of wires and pipes (IEC 60757 and the trade's own): a welder may be called Brown, a wire is. */
const COLOURS =
  'black brown red orange yellow green blue violet purple grey gray white pink turquoise cyan tan beige silver gold copper clear ' +
  'lime cream ivory amber slate rose dark light natural';

/** Words of the trade and of every report that stand in no field's help. */
const TRADE =
  'weld welder welded weldment shop owner coach wire pipe cable fuse breaker battery tank valve pump heater lamp switch door window ' +
  'slide roof floor wall belly skin panel member frame rail post beam cross water gas fuel waste fresh grey hot cold air oil steel wood ' +
  'left right front rear upper lower inner outer top bottom middle side end up down in out on off open shut new old long short north ' +
  'south east west street road lane mill hill field park lake river bridge house hall farm works service services company trust group ' +
  'the a an of and at by for to with from or no not as is it its was were be are has had this that one two three';

/** Every word that the record format itself uses: its keys, its choices, its help. Such a word is never taken for a name. */
export const publicWords: () => ReadonlySet<string> = lazy(() => {
  const words = new Set<string>();
  const add = (text: string): void => {
    for (const word of wordsIn(text.replaceAll('_', ' '))) words.add(word.folded);
  };
  const addFields = (fields: Fields): void => {
    for (const [key, field] of Object.entries(fields)) {
      add(key);
      addField(field);
    }
  };
  const addField = ({ shape, traits }: AnyField): void => {
    add(traits.help);
    for (const word of traits.called ?? []) add(word);
    if (shape.is === 'value') add(choicesIn(shape.json));
    else if (shape.is === 'block') addFields(shape.fields);
    else if (shape.is === 'list') addField(shape.each);
    else if (shape.is === 'table') addField(shape.value);
    else if (shape.is === 'either') for (const one of shape.forms) addField(one);
    else {
      addFields(shape.fields);
      addField(shape.rest);
    }
  };
  for (const [name, kind] of Object.entries(KINDS)) {
    add(name);
    addFields((kind as { fields: Fields }).fields);
    const forms = (kind as { variants?: { forms: Readonly<Record<string, Fields>> } }).variants?.forms ?? {};
    for (const [form, fields] of Object.entries(forms)) {
      add(form);
      addFields(fields);
    }
  }
  add(COLOURS);
  add(TRADE);
  return words;
});

function choicesIn(json: Readonly<Record<string, unknown>>): string {
  const choices = getOwn(json, 'enum');
  return Array.isArray(choices) ? choices.join(' ') : '';
}

export const isPublic = (word: string): boolean => publicWords().has(folded(word));
