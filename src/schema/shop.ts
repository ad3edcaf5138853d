import { z } from 'zod';
import { MEDIA } from '../model/services.js';
import { eachOf, type Fields, field } from './fields.js';
import { shared } from './record.js';
import { enumFault } from './worded-fields.js';

const keepApart = (f: Fields) =>
  z.strictObject({
    media: field(
      (typed, say) => {
        const media = eachOf(typed, say, 'two media', (one, sayOne) => {
          const known = MEDIA.find((medium) => medium === one);
          return known ?? void sayOne(enumFault(one, MEDIA));
        });
        if (!media) return undefined;
        const [a, b] = media;
        if (a !== undefined && b !== undefined && media.length === 2) return [a, b] as const;
        return void say({ found: `list of ${media.length}`, expected: 'two media as `[gas, ac]`' });
      },
      'The two media, as [gas, ac]',
      { type: 'array', items: { type: 'string', enum: MEDIA }, minItems: 2, maxItems: 2 },
    ),
    distance: f.quantity('length', 'Least distance between the outsides of two runs').optional(),
    share_zone: f.yesNo('no: the two may not share a cavity').optional(),
  });

const limits = (f: Fields) =>
  z.strictObject({
    axle_margin: f.level('Share of an axle’s limit below which a margin is a warning').optional(),
    diagonal_difference: f.quantity('length', 'Most that the diagonals of an opening may differ').optional(),
    header_sag: f.quantity('length', 'Most that a header may sag').optional(),
    truss_spacing: f.quantity('length', 'Most between two trusses or posts', 'above zero').optional(),
    cavity_fill: f.level('Most of a cavity’s clear area that services may fill').optional(),
    keep_apart: z.array(keepApart(f)).meta({ description: 'Media that must keep apart' }).optional(),
    moving_clearance: f.quantity('length', 'Least between a moving tyre or slide and whatever stands still').optional(),
    hot_clearance: z
      .strictObject({
        dry: f.quantity('length', 'From a dry hot part, as an exhaust pipe').optional(),
        wet: f.quantity('length', 'From one cooled by water').optional(),
      })
      .meta({ description: 'Least between a hot part and wires or pipes' })
      .optional(),
    ambient: f.quantity('temperature', 'Hottest air around wiring, for ampacity; 30 C where not typed').optional(),
    voltage_drop: f.level('Most voltage drop to a load').optional(),
    flatness: f.quantity('length', 'Most that a corner may lie out of its panel’s plane').optional(),
    late_entry: f.quantity('time', 'Longest between an event and its entry').optional(),
    unexplained_mass: f.level('Share of the total mass that may stay unexplained').optional(),
    tape: f.quantity('length', 'How well a tape tells a place').optional(),
    overlay: f.quantity('length', 'Worst error of a picture’s points that is still of use', 'above zero').optional(),
  });

/** `100 %` for visual, or a share for each method. */
const shares = (f: Fields, of: string) =>
  field<Readonly<Record<string, number>>>(
    (typed, say) => {
      if (typeof typed !== 'object' || typed === null) {
        const visual = f.readLevel(typed, say);
        return visual === undefined ? undefined : { VT: visual };
      }
      if (Array.isArray(typed))
        return void say({ found: 'list', expected: '`100 %`, or a share for each method as `{VT: 100 %, PT: 10 %}`' });
      const read = Object.entries(typed).map(([method, share]) => {
        const level = f.readLevel(share, (fault) => say({ ...fault, path: [method] }));
        return level === undefined ? undefined : ([method.trim().toUpperCase(), level] as const);
      });
      return read.includes(undefined) ? undefined : Object.fromEntries(read as [string, number][]);
    },
    `Least share of ${of} joints to be accepted by each method, as {VT: 100 %, PT: 10 %}; a share alone is of VT`,
    { type: ['string', 'number', 'object'], examples: ['100 %', { VT: '100 %', PT: '10 %' }] },
  );

/** shop.yaml */
export const shop = (f: Fields) =>
  z.strictObject({
    ...shared(f),
    shop: z
      .strictObject({
        name: f.text('The shop’s name, as printed on the cover'),
        place: f.text('Where the shop is').optional(),
        contact: f.text('How to reach the shop, years from now').optional(),
      })
      .meta({ description: 'Who the shop is' }),
    units: f.oneOf(['us', 'metric', 'both'], 'How answers and books are shown').optional(),
    paper: f.oneOf(['letter', 'a4'], 'Paper of the book').optional(),
    weld_symbols: f
      .oneOf(['iso', 'aws'], 'Weld symbols by ISO 2553 (iso) or AWS A2.4 (aws); where not typed: aws with units us, else iso')
      .optional(),
    limits: limits(f).meta({ description: 'House limits; each has a default' }).optional(),
    inspection: z
      .strictObject({ primary: shares(f, 'primary').optional(), secondary: shares(f, 'secondary').optional() })
      .meta({ description: 'How much of the welds is inspected, by class of joint' })
      .optional(),
    english: f.oneOf(['us', 'uk'], 'English of the owner’s pages: us or uk').optional(),
    language: f.oneOf(['en', 'es'], 'Language of the owner’s, emergency and label pages').optional(),
    labels: z.record(z.string(), f.text('Words')).meta({ description: 'The shop’s own words on labels' }).optional(),
  });
