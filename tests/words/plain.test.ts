/**
 * Words that people of the trade stumble over, or that have a second meaning which can hurt somebody: none stands in anything that a
 * reader meets, in help, messages, rules, pages or the readme. Common practice, no source: they were read aloud to people of the trade.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** What is not said, and what is said instead. */
const NOT_SAID: readonly (readonly [RegExp, string])[] = [
  [/\bcalled so\b|\bso too\b/u, 'has that name'],
  [/\bsays? nothing of\b/u, 'is not recorded'],
  [/\bis told as\b/u, 'is listed as'],
  [/\bno date in it\b/u, 'carry no date'],
  [/\bpassed test is of\b/u, 'no passing test covers it'],
  [/\bNothing is called that\b|\bNear to it\b/u, 'No match. Closest:'],
  [/\bin the open\b/u, 'exposed'],
  [/\bkept back\b/u, 'reserve'],
  [/\bruled by\b/u, 'limited by'],
  [/\bstands? on (?:scale ticket|the take-?off)\b/u, 'based on'],
  [/\bno recorded source is left\b|\bsources left none\b/u, 'no live source remains, or not proved'],
  [/\btruth lies\b/u, 'the true weight is within'],
  [/\bEvery torque\b/u, 'Torque values'],
  [/\bEach look\b/u, 'Inspections'],
  [/\bNot all is here\b/u, 'See also'],
  [/\bLooking after it\b/u, 'Care'],
  [/\bWhere a mass at each station\b/u, 'how added weight splits'],
  [/\bagainst frost; frost protection\b/iu, 'Winterizing'],
  [/\b(?:no|a|the) spare ways?\b/iu, 'spare conduit, chase or breaker space'],
  [/\bcode frame\b/iu, 'marked lines'],
  [/\bla(?:id|ys?) (?:\w+ )?down as\b/u, 'creates, makes'],
  [/\bgiven again\)/u, 'repeated'],
  [/\bthe forty alike\b/u, 'many alike'],
  [/\bwith (?:its|their) (?:heads)\b/u, 'column heads'],
  [/\ba axle\b|\ba id\b/u, 'an'],
  [/(?<!\b[Tt]here )\b(?:is|are) no (?:file|folder|list|unit|sheet|JSON|signature|number|book|backup|key)\b/u, 'is not a'],
  [/\bstands in nobody’s way\b|\bstand in nobody’s way\b/u, 'not in the way'],
];

/** Text between quotes or backticks of a source file; comments are for developers. Not regular expressions, nor lists of words to look up. */
function saidIn(source: string): readonly string[] {
  return source.split('\n').flatMap((line) => {
    if (/^\s*(?:\/\/|\*|\/\*|import |export \{)/u.test(line)) return [];
    return [...line.matchAll(/'((?:[^'\\]|\\.)*)'|`([^`]*)`|"((?:[^"\\]|\\.)*)"/gu)]
      .map(([, single, back, double]) => single ?? back ?? double ?? '')
      .filter((one) => /\s/u.test(one));
  });
}

const filesIn = (folder: string, end: RegExp): readonly string[] =>
  readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => end.test(file))
    .map((file) => path.join(folder, file));

/** Lists of words that a reader may type: whatever they say is looked up. */
const LOOKED_UP = /topics\/|synonyms|everyday-words|former-options/u;

describe('words that are not said', () => {
  const pages = [...filesIn('templates', /\.hbs$/u), ...filesIn('src', /\.md$/u), 'README.md', 'DEVELOPERS.md'];
  const texts: readonly (readonly [string, readonly string[]])[] = [
    ...filesIn('src', /\.ts$/u)
      .filter((file) => !LOOKED_UP.test(file))
      .map((file) => [file, saidIn(readFileSync(path.join(ROOT, file), 'utf8'))] as const),
    ...pages.map((file) => [file, readFileSync(path.join(ROOT, file), 'utf8').split('\n')] as const),
  ];

  it.each(NOT_SAID)('%s', (words, instead) => {
    const found = texts.flatMap(([file, said]) =>
      said.filter((one) => words.test(one)).map((one) => `${file}: ${one.slice(0, 120)}`),
    );
    expect(found, `say: ${instead}`).toEqual([]);
  });

  it('finds what it looks for', () => {
    expect(saidIn('  message: `1 record is called so too`,')).toEqual(['1 record is called so too']);
    expect(texts.length).toBeGreaterThan(500);
  });
});
