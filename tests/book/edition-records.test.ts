import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { cleanFiles, textForEdition, withheldFrom } from '../../src/book/edition-records.js';
import type { EDITIONS } from '../../src/book/input.js';
import { hiddenFrom } from '../../src/book/redact/hidden.js';
import { loadOne, storeText } from '../support/store.js';
import { smallStore } from './small-store.js';

const STORE = smallStore({
  'shells/T-1/notes-welds.yaml': '- {id: [}\n',
  'shells/T-1/welds-2.yaml':
    '# K7 and Ysolde Brackwater\n- id: W-2   # K7\n  joins: [SF-R, CB-01]\n  type: fillet\n  process: GMAW\n  size: 03/16 in\n  welder: &who K7\n  note: >-\n    Orla Vantongeren asked\n    Ysolde Brackwater, K7 agreed\n',
  'shells/T-1/welds-3.yaml':
    '- {id: W-3, joins: [SF-R, CB-02], type: fillet, process: GMAW, size: 1/4 in, welder: &who K7, note: *who}\n',
});
const { model } = loadOne(STORE);
const { files } = storeText(STORE);
const records = (edition: (typeof EDITIONS)[number]) => cleanFiles(files, hiddenFrom(model, edition), edition).files;

describe('record files for an edition', () => {
  it('are the very files for the shop', () => {
    expect(records('shop')).toBe(files);
    expect(withheldFrom('shop')).toEqual([]);
  });

  it.each(['owner', 'service'] as const)('hold no welder in the %s edition, in no place of a file', (edition) => {
    for (const [path, text] of records(edition)) expect([path, text]).toEqual([path, expect.not.stringMatching(/\bK7\b|Orla/u)]);
    const [weld] = parse(records(edition).get('shells/T-1/welds-2.yaml') as string);
    expect(weld.note).toMatch(/^the shop asked/u);
    expect(Object.keys(weld)).not.toContain('welder');
  });

  it('hold no customer in the service edition, and the customer in the owner’s', () => {
    expect([...records('service').values()].join()).not.toMatch(/Brackwater|Fennimarsh|ysolde/u);
    expect(records('owner').get('shells/T-1/shell.yaml')).toContain('Ysolde Brackwater');
  });

  it('keep every value as it was typed', () => {
    // `03/16 in` and `5 ft` are text to the reader, and so is `6.10`.
    expect(records('service').get('shells/T-1/welds-2.yaml')).toContain('size: 03/16 in');
    const [before, after] = [files, records('service')].map((all) => loadOne(Object.fromEntries(all)).model.shell);
    expect(after?.members.map((one) => one.typed)).toEqual(before?.members.map((one) => one.typed));
    expect(after?.runs.map((one) => one.typed)).toEqual(before?.runs.map((one) => one.typed));
  });

  it('leave out a file that cannot be read, or cleared: nobody knows what is in it', () => {
    expect([...records('service').keys()].sort()).toEqual(
      [...files.keys()].filter((path) => !/notes-welds|welds-3/u.test(path)).sort(),
    );
  });

  it('go with words that are cleared alike', () => {
    const say = textForEdition(model, 'service');
    expect(say('Coach of Ysolde Brackwater')).toBe('Coach of the owner');
    expect(textForEdition(model, 'shop')('Coach of Ysolde Brackwater')).toBe('Coach of Ysolde Brackwater');
  });
});
