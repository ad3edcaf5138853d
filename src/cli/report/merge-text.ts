import type { MergeClash } from '../../entry/merge/merge.js';
import { flow } from '../../entry/yaml-text.js';

/** `W-0112: \`size\` is \`1/4 in\` here and \`5/16 in\` coming in (it was \`3/16 in\`)`. */
export function clashText({ name, fields, gone }: MergeClash): string {
  if (gone !== undefined)
    return `${name}: taken away ${gone === 'ours' ? 'here' : 'in what comes in'}, changed ${gone === 'ours' ? 'in what comes in' : 'here'}`;
  if (fields.length === 0) return `${name}: its comments were changed on both sides`;
  return `${name}: ${fields.map(({ path, base, ours, theirs }) => `${path.length === 0 ? 'the value' : `\`${path.join('.')}\``} is ${said(ours)} here and ${said(theirs)} coming in (it was ${said(base)})`).join('; ')}`;
}

const said = (value: unknown): string => (value === undefined ? 'not there' : `\`${flow(value)}\``);
