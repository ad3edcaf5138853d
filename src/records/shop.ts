import { block, celsius, keyed, level, list, measured, oneOf, plainField, prose, quantity, text, yesNo } from './fields.js';
import { eachOf } from './form/unit-reader.js';
import { enumFault } from './form/worded-fields.js';
import { type FormOf, part } from './kind.js';
import { MEDIA, type Medium } from './names.js';
import type { RecordBase } from './record-base.js';
import { SHARED } from './shared.js';
import type { ModelOf } from './types.js';

const twoMedia = plainField<readonly [Medium, Medium]>(
  (typed, say) => {
    const media = eachOf(typed, say, 'two media', (one, sayOne) => {
      const known = MEDIA.find((medium) => medium === one);
      return known ?? void sayOne(enumFault(one, MEDIA));
    });
    if (!media) return undefined;
    const [a, b] = media;
    if (a !== undefined && b !== undefined && media.length === 2) return [a, b];
    return void say({ found: `a list of ${media.length}`, expected: 'two media as `[gas, ac]`' });
  },
  'The two media, as [gas, ac]',
  { type: 'array', items: { type: 'string', enum: MEDIA }, minItems: 2, maxItems: 2 },
);

const keepApart = {
  media: twoMedia.required(),
  distance: quantity('length', 'Least distance between the outsides of two runs'),
  share_zone: yesNo('no: the two may not share a cavity'),
};
export type KeepApart = ModelOf<typeof keepApart>;

/** ABYC E-11, wires from an exhaust: 9 in from a dry one, 2 in from one cooled by water, unverified citation. */
export const HOT_MM = { dry: 230, wet: 50 } as const;

/** Days. */
const days = (help: string) => quantity('time', help).model((seconds) => seconds / 86_400, 'Days');
const hot = (help: string) => quantity('length', help);

/** House limits, each with where its default comes from. Ratings and laws are not among them: they cannot be loosened here. */
const limits = {
  // common practice, no source: less than 3 % left on an axle is gone with the first repair.
  axle_margin: level('Share of an axle’s limit below which a margin is a warning').usual(0.03),
  // common practice, no source: 1/8 in between diagonals, 1/16 in header sag.
  diagonal_difference: quantity('length', 'Most that the diagonals of an opening may differ').usual(25.4 / 8),
  header_sag: quantity('length', 'Most that a header may sag').usual(25.4 / 16),
  // common practice, no source: trusses and posts at 20 in.
  truss_spacing: quantity('length', 'Most between two trusses or posts', 'above zero').usual(508),
  // NEC Chapter 9 Table 1 for three and more wires in a raceway, unverified citation; a house rule for cavities.
  cavity_fill: level('Most of a cavity’s clear area that services may fill').usual(0.4),
  keep_apart: list(block(keepApart), 'Media that must keep apart: adds to the defaults, or overrides single pairs').usual([]),
  // common practice, no source: 50 mm about a moving tyre or slide.
  moving_clearance: quantity('length', 'Least between a moving tire or slide and whatever stands still').usual(50),
  hot_clearance: block(
    { dry: hot('From a dry hot part, as an exhaust pipe'), wet: hot('From one cooled by water') },
    'Least between a hot part and wires or pipes',
  )
    .model(({ dry = HOT_MM.dry, wet = HOT_MM.wet }) => ({ dry, wet }), 'Mm')
    .usual(HOT_MM),
  ambient: celsius('Hottest air around wiring, for ampacity; 30 C where not typed'),
  // ABYC E-11 for critical 12 V loads, unverified citation.
  voltage_drop: level('Most voltage drop to a load').usual(0.03),
  // common practice, no source: 3 mm out of plane shows in a skin.
  flatness: quantity('length', 'Most that a corner may lie out of its panel’s plane').usual(3),
  // common practice, no source: a week between an event and its entry.
  late_entry: days('Longest between an event and its entry').usual(7),
  // common practice, no source: one part in a hundred.
  unexplained_mass: level('Share of the total mass that may stay unexplained').usual(0.01),
  tape: quantity('length', 'How closely a tape measures a place'),
  overlay: quantity('length', 'Worst error of a picture’s points that is still of use', 'above zero'),
};
export type Limits = ModelOf<typeof limits>;

/** `100 %` for visual, or a share for each method. */
const shares = (of: string) =>
  measured<Readonly<Record<string, number>>>(
    (units) => (typed, say) => {
      if (typeof typed !== 'object' || typed === null) {
        const visual = units.level(typed, say);
        return visual === undefined ? undefined : { VT: visual };
      }
      if (Array.isArray(typed))
        return void say({ found: 'list', expected: '`100 %`, or a share for each method as `{VT: 100 %, PT: 10 %}`' });
      const read = Object.entries(typed).map(([method, share]) => {
        const part_ = units.level(share, (fault) => say({ ...fault, path: [method] }));
        return part_ === undefined ? undefined : ([method.trim().toUpperCase(), part_] as const);
      });
      return read.includes(undefined) ? undefined : Object.fromEntries(read as [string, number][]);
    },
    `Least share of ${of} joints to be accepted by each method, as {VT: 100 %, PT: 10 %}; a share alone is of VT`,
    { type: ['string', 'number', 'object'], examples: ['100 %', { VT: '100 %', PT: '10 %' }] },
  ).usual({});

const inspection = { primary: shares('primary'), secondary: shares('secondary') };
/** Class of joint → inspection method in capitals → least share of its joints, 0 to 1. */
export type Inspections = ModelOf<typeof inspection>;

const whose = block(
  {
    name: text('The shop’s name, as printed on the cover').required(),
    place: text('Where the shop is'),
    contact: text('How to reach the shop, years from now'),
    telephone: text('A number that somebody answers'),
    notice: prose('Printed on each cover, foot and label, as Made-up example'),
  },
  'Who the shop is',
);

/** shop.yaml: who the shop is, and the store's defaults. */
export const shop = part(
  'shop',
  {
    ...SHARED,
    shop: whose.required(),
    units: oneOf(['us', 'metric', 'both'], 'How answers and books are shown').usual('both'),
    paper: oneOf(['letter', 'a4'], 'Paper of the book').usual('letter'),
    // A shop that works in inches alone reads AWS A2.4; every other the international symbols, unless it says so.
    weld_symbols: oneOf(
      ['iso', 'aws'],
      'Weld symbols by ISO 2553 (iso) or AWS A2.4 (aws); where not typed: aws with units us, else iso',
    ).usual(({ read }) => (read.units === 'us' ? 'aws' : 'iso')),
    limits: block(limits, 'House limits; each has a default'),
    inspection: block(inspection, 'How much of the welds is inspected, by class of joint').usual({ primary: {}, secondary: {} }),
    english: oneOf(['us', 'uk'], 'English of the owner’s pages: us or uk'),
    language: oneOf(['en', 'es'], 'Language of the owner’s, emergency and label pages'),
    labels: keyed(text('Words'), 'The shop’s own words on labels'),
  },
  { words: 'the shop file' },
);
export type ShopForm = FormOf<typeof shop>;
export const LIMIT_FIELDS = limits;

/** Every limit is filled in, with its default where not typed. */
export interface Shop extends RecordBase {
  readonly name: string;
  readonly contact?: string;
  readonly telephone?: string;
  readonly notice?: string;
  readonly units: 'us' | 'metric' | 'both';
  readonly paper: 'letter' | 'a4';
  readonly weldSymbols: 'iso' | 'aws';
  readonly limits: Limits;
  readonly inspection: Inspections;
  readonly english?: 'us' | 'uk';
  readonly language?: 'en' | 'es';
  readonly labels?: Readonly<Record<string, string>>;
}
