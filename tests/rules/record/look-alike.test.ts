/** Pairs from the data of Unicode Technical Standard 39 (confusables), typed by code point so that they can be told apart here. */
import { describe, expect, it } from 'vitest';
import { lookAt } from '../../../src/compute/record/look-alike.js';
import { loadStore } from '../../../src/model/load.js';
import { lookAlikeIds } from '../../../src/rules/record/look-alike-ids.js';
import { storeText } from '../../support/store.js';
import { judgeOne } from '../judge-one.js';

const TWINS: readonly (readonly [plain: string, other: string])[] = [
  ['A', '\u0410'],
  ['B', '\u0412'],
  ['C', '\u0421'],
  ['E', '\u0415'],
  ['H', '\u041d'],
  ['K', '\u041a'],
  ['M', '\u041c'],
  ['O', '\u041e'],
  ['P', '\u0420'],
  ['T', '\u0422'],
  ['X', '\u0425'],
  ['Y', '\u04ae'],
  ['I', '\u0406'],
  ['J', '\u0408'],
  ['S', '\u0405'],
  ['Q', '\u051a'],
  ['W', '\u051c'],
  ['V', '\u0474'],
  ['a', '\u0430'],
  ['e', '\u0435'],
  ['o', '\u043e'],
  ['p', '\u0440'],
  ['c', '\u0441'],
  ['x', '\u0445'],
  ['i', '\u0456'],
  ['j', '\u0458'],
  ['s', '\u0455'],
  ['A', '\u0391'],
  ['B', '\u0392'],
  ['E', '\u0395'],
  ['Z', '\u0396'],
  ['H', '\u0397'],
  ['I', '\u0399'],
  ['K', '\u039a'],
  ['M', '\u039c'],
  ['N', '\u039d'],
  ['O', '\u039f'],
  ['P', '\u03a1'],
  ['T', '\u03a4'],
  ['Y', '\u03a5'],
  ['X', '\u03a7'],
  ['o', '\u03bf'],
  ['v', '\u03bd'],
  ['o', '\u0585'],
  ['u', '\u057d'],
  ['A', '\u13aa'],
  ['L', '\u13de'],
  ['A', '\uff21'],
  ['z', '\uff5a'],
  ['3', '\u0417'],
  ['6', '\u0411'],
  ['1', '\uff11'],
  ['A', '\u{1d400}'],
  ['i', '\u0131'],
];
const INVISIBLE = [
  '\u200b',
  '\u200c',
  '\u200d',
  '\u2060',
  '\ufeff',
  '\u00ad',
  '\u180e',
  '\u{e0041}',
  '\u2062',
  '\ufe0f',
  '\u034f',
];

const shellWith = (...ids: readonly string[]) => {
  const zones = ids.map((id) => `- {id: ${JSON.stringify(id)}, name: bay}`).join('\n');
  const loaded = loadStore(
    storeText({
      'shop.yaml': 'shop: {name: Test shop}\n',
      'shells/T-1/shell.yaml': 'shell: T-1\n',
      'shells/T-1/zones.yaml': zones,
    }),
  ).shells.get('T-1');
  if (!loaded) throw new Error('no shell');
  return loaded.model;
};

describe('record.look-alike-ids', () => {
  it.each(TWINS)('finds %s beside its twin %s', (plain, other) => {
    expect(lookAt(`W-${plain}2`).skeleton).toBe(lookAt(`W-${other}2`).skeleton);
    expect(plain).not.toBe(other);
  });

  it.each(INVISIBLE)('finds a sign that shows nothing: %j', (sign) => {
    expect(lookAt(`W-${sign}2`)).toMatchObject({ skeleton: 'W-2', invisible: [expect.stringMatching(/^U\+[0-9A-F]{4,6}$/u)] });
  });

  it('names both ids, at the line of the second, with what the eye cannot see', () => {
    const [found, ...others] = judgeOne(lookAlikeIds, shellWith('CO-1', 'C\u041e-1', 'CO-2'));
    expect(others).toEqual([]);
    expect(found).toMatchObject({ ids: ['C\u041e-1', 'CO-1'], place: { file: 'shells/T-1/zones.yaml', line: 2 } });
    expect(found?.message).toContain('U+041E');
  });

  it('finds an id that mixes scripts without a twin', () => {
    expect(judgeOne(lookAlikeIds, shellWith('D\u0421-12'))[0]?.message).toContain('mixes letters of Latin and Cyrillic (U+0421)');
  });

  it.each([
    ['O-1', '0-1'],
    ['\u0421\u0412-1', '\u0421\u0412-2'],
    ['\u00c4-1', 'A-1'],
    ['I5', 'l5'],
    ['Gro\u00df-1', 'Gross-1'],
  ])('leaves alone what is typed on one keyboard: %s, %s', (one, other) =>
    expect(judgeOne(lookAlikeIds, shellWith(one, other))).toEqual([]),
  );
});
