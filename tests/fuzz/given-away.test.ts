/**
 * Nobody is given away: names of welders and of whoever ordered a coach, planted in every field that may hold words, in any case and with
 * endings, stand in no other edition. A dozen in every run, 200 with SHELLBOOK_FUZZ. Names are made of syllables, so that none is a word.
 */
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess.js';
import { bookDocument } from '../../src/book/document.js';
import { carriedIn, textForEdition } from '../../src/book/edition-records.js';
import { hiddenFrom } from '../../src/book/redact/hidden.js';
import { publicWords } from '../../src/book/redact/public-words.js';
import { cleanText } from '../../src/book/redact/text.js';
import { loadStore } from '../../src/model/load.js';
import { FINGERPRINT, HISTORY, smallStore } from '../book/small-store.js';
import { planted } from '../support/plant.js';
import { storeText } from '../support/store.js';

const COUNT = process.env.SHELLBOOK_FUZZ === undefined ? 12 : 200;

/** Consonants and vowels in turn, in an order of its own for each number: no two alike, and no word of any language that is known here. */
function syllables(seed: number, length: number): string {
  let left = seed * 7919 + 104729;
  let word = '';
  for (let i = 0; i < length; i++) {
    const from = i % 2 === 0 ? 'bdfgjkvwxz' : 'aeiou';
    word += from[left % from.length];
    left = Math.floor(left / from.length) + seed * 31 + i;
  }
  return `${word}q`;
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

interface Secret {
  readonly id: string;
  readonly given: string;
  readonly family: string;
}
const SECRETS: readonly Secret[] = Array.from({ length: COUNT }, (_, i) => ({
  id: `Q${i + 10}Z`,
  given: syllables(i + 1, 5),
  family: syllables(i + 1001, 7),
}));
const CUSTOMER: Secret = { id: '', given: syllables(5001, 5), family: syllables(6001, 7) };

/** The same name as people write it. */
const FORMS: readonly ((secret: Secret) => string)[] = [
  ({ given, family }) => `${capital(given)} ${capital(family)}`,
  ({ family }) => `${capital(family)}’s`,
  ({ given, family }) => `${family.toUpperCase()}, ${given.toUpperCase()}`,
  ({ given }) => given,
  ({ family }) => `the ${capital(family)}s`,
  ({ id }) => id,
  ({ id }) => id.toLowerCase(),
  ({ given, family }) => `${given}.${family}@example.test`,
  ({ given, family }) => `${given}_${family}`,
];

/** Kinds of text that the format checks by itself: what else stands there is not read, and is printed nowhere. */
const CHECKED = new Set(['sha256', 'digest', 'vin']);

function plantedStore(): Record<string, string> {
  let turn = 0;
  const files = planted(smallStore(), (field, key, before) => {
    if (CHECKED.has(key)) return undefined;
    const at = turn++;
    const secret = at % 5 === 4 ? CUSTOMER : (SECRETS[at % SECRETS.length] as Secret);
    if (field === 'person by id') return (SECRETS[at % SECRETS.length] as Secret).id;
    const form = FORMS[at % FORMS.length] as (typeof FORMS)[number];
    const said = secret === CUSTOMER && form(secret) === '' ? capital(secret.family) : form(secret);
    if (field === 'person')
      return at % 2 === 0 ? (SECRETS[at % SECRETS.length] as Secret).id : `${capital(secret.given)} ${capital(secret.family)}`;
    return before === undefined ? `Asked ${said} first` : `${before} (${said})`;
  });
  const people = SECRETS.map(
    ({ id, given, family }, i) =>
      `- {id: ${id}, name: ${capital(given)} ${capital(family)}, role: ${i % 2 === 0 ? 'fabricator' : 'Welder'}, git: [${given}@example.test]}\n`,
  ).join('');
  const welds = SECRETS.map(
    ({ id }, i) =>
      `- {id: W-9${i}, joins: [SF-L, CB-01], type: fillet, process: GMAW, size: 1/4 in, length: 2 in, welder: ${id}}\n`,
  ).join('');
  const shell = files['shells/T-1/shell.yaml'] as string;
  return {
    ...files,
    'library/people.yaml': `${smallStore()['library/people.yaml'] ?? ''}${people}`,
    [`shells/T-1/welds-${SECRETS[1]?.family}.yaml`]: welds,
    [`shells/T-1/welds-${SECRETS[2]?.given}.yaml`]: `- {id: W-8, joins: [SF-L, CB-01], type: fillet, process: GMAW, size: 1/4 in, length: 2 in}\n`,
    'shells/T-1/shell.yaml': shell.replace(
      /customer:.*\n/u,
      `customer: {name: ${capital(CUSTOMER.given)} ${capital(CUSTOMER.family)}, place: ${capital(syllables(7001, 7))}, contact: ${CUSTOMER.given}@${CUSTOMER.family}.test}\n`,
    ),
  };
}

/** Where a text has one of the words, as any part of any of its words. */
function finds(text: string, words: readonly string[]): readonly string[] {
  const low = text.toLowerCase();
  return words.flatMap((word) => {
    const at = low.indexOf(word.toLowerCase());
    return at < 0 ? [] : [`${word}: …${text.slice(Math.max(0, at - 60), at + 60).replace(/\s+/gu, ' ')}…`];
  });
}

const WELDERS = SECRETS.flatMap(({ id, given, family }) => [id, given, family]);
const OF_CUSTOMER = [CUSTOMER.given, CUSTOMER.family, syllables(7001, 7)];

describe('names in every field', () => {
  const text = storeText(plantedStore());
  const loaded = loadStore(text).shells.get('T-1');
  if (!loaded) throw new Error('the planted store has no shell');
  const { model, findings } = loaded;

  it('are planted, and read', () => {
    expect(model.shell.members.length).toBeGreaterThan(5);
    expect(model.shell.findings.length + model.shell.photos.length + model.shell.tests.length).toBeGreaterThan(2);
    expect([...text.files.values()].join('').split(capital(CUSTOMER.family)).length).toBeGreaterThan(10);
  });

  it.each(['owner', 'service'] as const)('stand in no record file of the %s edition, nor in what they are called', (edition) => {
    const words = edition === 'service' ? [...WELDERS, ...OF_CUSTOMER] : WELDERS;
    const photos = new Map(model.shell.photos.map(({ file }) => [`shells/T-1/photos/${file}`, 'ab'.repeat(32)]));
    const carried = carriedIn(text, model, photos, edition);
    expect(carried.files.size).toBe(text.files.size);
    for (const [path, clean] of carried.files) expect(finds(`${path}\n${clean}`, words)).toEqual([]);
    expect(finds(JSON.stringify(carried.photos), words)).toEqual([]);
    const say = textForEdition(model, edition);
    for (const secret of SECRETS) for (const form of FORMS) expect(finds(say(`By ${form(secret)}, as asked`), words)).toEqual([]);
  });

  it.each(['owner', 'service'] as const)(
    'stand nowhere in the %s edition, its heads, its drawings’ words and its messages',
    async (edition) => {
      const words = edition === 'service' ? [...WELDERS, ...OF_CUSTOMER] : WELDERS;
      const history = {
        ...HISTORY,
        tag: `T-1-${SECRETS[0]?.family}`,
        commits: HISTORY.commits.map((one, i) => ({
          ...one,
          author: 'x',
          message: `${(FORMS[i % FORMS.length] as (typeof FORMS)[number])(SECRETS[0] as Secret)} did it`,
        })),
      };
      const made = await bookDocument({
        assessment: assess(model, findings),
        edition,
        fingerprint: FINGERPRINT,
        history,
        photoFile: async () => undefined,
      });
      const { html, runningLeft, runningFoot, warnings, chapters } = made;
      expect(
        finds(`${withoutData(html)}\n${runningLeft}\n${runningFoot}\n${warnings.join('\n')}\n${JSON.stringify(chapters)}`, words),
      ).toEqual([]);
    },
  );
});

/** Without fonts: any few letters stand somewhere in them. */
const withoutData = (html: string): string => html.replace(/data:[^"')]+;base64,[\w+/=]+/gu, '');

describe('words of the trade', () => {
  const { model } = loadStore(storeText(plantedStore())).shells.get('T-1') as NonNullable<
    ReturnType<ReturnType<typeof loadStore>['shells']['get']>
  >;
  const hidden = hiddenFrom(model, 'service');

  it('are never damaged, whoever is called like one', () => {
    const called = (name: string, id = 'B1') => {
      const people = new Map([...model.library.people, [id, { ...model.library.people.get('K7'), id, name, role: 'welder' }]]);
      return hiddenFrom({ ...model, library: { ...model.library, people } } as typeof model, 'service');
    };
    for (const name of ['Brown', 'Al', 'Rose White', 'Mark Roof', 'Art Weldon', 'In', 'Green Wire']) {
      const there = called(name);
      for (const word of publicWords()) expect(cleanText(`the ${word} is here`, there)).toBe(`the ${word} is here`);
      expect(cleanText('aluminium, artery, brownish, marking, whiteboard, roofing', there)).toBe(
        'aluminium, artery, brownish, marking, whiteboard, roofing',
      );
    }
    expect(called('Brown').spared.has('brown')).toBe(true);
    expect(cleanText('Tom Vrelkath took the brown wire', called('Tom Vrelkath'))).toBe('the shop took the brown wire');
  });

  it('and ids, sizes and days stay as they are', () => {
    const kept = [
      ...model.shell.byId.keys(),
      ...['1/2 in PEX', '2026-02-11', '14,600 lb', 'ER5356', '6061-T6', 'GMAW', '2F', 'red/black', 'W-112/3', '0.090 in'],
    ];
    for (const text of kept) expect(cleanText(text, hidden)).toBe(text);
  });
});
