/** How near to the law itself the text was that a figure was compared with. */
export type Standing = 'the rule' | 'official restatement' | 'secondary';

/** A figure that is the law’s, or a code’s that states adopt, and not ours. */
export interface LegalFigure {
  /** What it is, with its value. */
  readonly figure: string;
  readonly citation: string;
  /** Edition or date of the text that the figure was taken from. */
  readonly edition: string;
  /** When somebody last held it against a text, and which; absent where it was written from memory. */
  readonly compared?: { readonly day: string; readonly text: string; readonly standing: Standing };
}

type Comparison = NonNullable<LegalFigure['compared']>;

const on = (standing: Standing, text: string, day = '2026-12-01'): Comparison => ({ day, text, standing });

const law = (figure: string, citation: string, edition = 'not known', compared?: Comparison): LegalFigure => ({
  figure,
  citation,
  edition,
  ...(compared ? { compared } : {}),
});

/** Every legal figure that the program computes with or quotes. `LEGAL.md` is written from it. */
export const LEGAL_FIGURES: readonly LegalFigure[] = [
  law(
    'Loaded weight of one vehicle as its maker states it (GVWR)',
    '49 CFR 571.3',
    'as quoted in 1974',
    on('official restatement', 'NHTSA interpretation letter aiam1472 (1974), which quotes the definition'),
  ),
  law(
    'Capacity of one axle system as its maker states it, at the ground (GAWR)',
    '49 CFR 571.3',
    'as quoted in 1976',
    on('official restatement', 'NHTSA interpretation letter nht76-5.17 (10 November 1976), which quotes the definition'),
  ),
  law(
    'Unloaded vehicle weight: every fluid needed to run it full, no cargo, no occupants',
    '49 CFR 571.3',
    '36 FR 2511',
    on('official restatement', 'NHTSA interpretation letter aiam0613 (1971), which quotes the definition'),
  ),
  law(
    'GVWR at least unloaded weight, rated cargo, and 150 lb (68 kg) in each designated seat',
    '49 CFR 567.4(g)(3)',
    'as quoted in 1994',
    on('official restatement', 'NHTSA interpretation letter 10673, which quotes the sentence'),
  ),
  law(
    'A GAWR for each axle on the certification label',
    '49 CFR 567.4(g)(4)',
    'as restated in 1976',
    on('official restatement', 'NHTSA interpretation letter aiam2449 (1976)'),
  ),
  law(
    'GVWR not above the sum of the GAWRs: asked of every maker as a matter of adequate axles',
    '49 CFR 567 and 568, by interpretation',
    'letters of 1971 and 1987',
    on('official restatement', 'NHTSA interpretation letters aiam0613 (1971) and nht87-2.92 (14 September 1987)'),
  ),
  law(
    'Tyres of an axle together rated at least its GAWR',
    '49 CFR 571.120 S5.1.2',
    'as restated in 1987',
    on('official restatement', 'NHTSA interpretation letter nht87-2.92 (14 September 1987)'),
  ),
  law(
    'Load label of a motor home: occupants and cargo in one figure, kg and lb, and the number of belted seats',
    '49 CFR 571.120 S10',
    '72 FR 68442, 4 December 2007',
    on('official restatement', 'NHTSA interpretation letter 08-003469, which quotes the label'),
  ),
  law(
    'Belted seats, at 150 lb each, not above the occupant and cargo carrying capacity',
    '49 CFR 571.120 S10',
    '72 FR 68442, 4 December 2007',
    on('official restatement', 'NHTSA interpretation letter 08-003469'),
  ),
  law(
    '571.110 for a GVWR up to 10,000 lb (4,536 kg), 571.120 above it',
    '49 CFR 571.110 and 571.120, titles',
    '72 FR 68442, 4 December 2007',
    on('official restatement', 'NHTSA interpretation letter 08-003469, which gives both titles'),
  ),
  law(
    'Weight added before first retail sale without a new label: the lesser of 1.5 % of GVWR and 100 lb',
    '49 CFR 571.120 S10.5',
    '72 FR 68442, 4 December 2007',
    on('official restatement', '72 FR 68442, 4 December 2007, summary of the final rule'),
  ),
  law(
    'Water on the label at 1 kg/L (8.3 lb a gallon)',
    '49 CFR 571.120 S10, label figure',
    '72 FR 68442, 4 December 2007',
    on('secondary', 'a program of a trailer maker that prints the label of 571.110 S9.3 with these words'),
  ),
  law(
    'Full propane in the unloaded weight, drinking water in the cargo',
    '49 CFR 571.120 S10.3.2',
    '72 FR 68442, 4 December 2007',
  ),
  law('Label figures rounded so that the GVWR is not exceeded', '49 CFR 571.120 S10.4.2', '72 FR 68442, 4 December 2007'),
  law(
    'GVWR of a motor home at least its unloaded weight and 150 lb in each belted seat, and not above the GAWRs together',
    '49 CFR 571.120 S10.2',
    '72 FR 68442, 4 December 2007',
  ),
  law(
    'Ratings on the label of whoever finishes a body on an incomplete vehicle',
    '49 CFR 567.5(d)',
    '70 FR 7414, 14 February 2005',
  ),
  law('What an incomplete vehicle document says', '49 CFR 568.4', '70 FR 7414, 14 February 2005'),
  law('Gross combination weight rating (GCWR)', '49 CFR 390.5'),
  law(
    'Vehicle number: 17 characters, check digit in place 9, letters I, O and Q never',
    '49 CFR 565.13',
    'as now numbered',
    on('the rule', 'a plain copy of 565.15(c), whose Table III has no I, O or Q; NHTSA’s outline for new manufacturers'),
  ),
  law(
    'Check digit: values of letters, weights by place, remainder of 11, X for 10',
    '49 CFR 565.15(c)',
    'as now numbered',
    on(
      'the rule',
      'a plain copy of the paragraph with its Tables III to V and worked example; NHTSA’s outline for new manufacturers',
    ),
  ),
  law('No number twice within 60 years', '49 CFR 565'),
  law(
    '20,000 lb on a single axle, 34,000 lb on a tandem, 80,000 lb in all, on the Interstate',
    '23 USC 127(a), 23 CFR 658.17',
    'as in force in 2012',
    on(
      'official restatement',
      'FHWA, Compilation of Existing State Truck Size and Weight Limit Laws, report to Congress, May 2015',
    ),
  ),
  law(
    'Bridge formula W = 500 (L N ÷ (N − 1) + 12 N + 36), to the nearest 500 lb',
    '23 USC 127(a)(2)',
    'not known',
    on('secondary', 'a public comparison of state bridge laws (2020) that states the formula in words'),
  ),
  law(
    'Axles up to 40 in apart count as one, over 40 in and up to 96 in as a tandem',
    '23 CFR 658.5',
    'not known',
    on('secondary', 'a legal encyclopedia’s page on axle weights that cites FHWA, Bridge Formula Weights'),
  ),
  law('Two tandems at 34,000 lb each where first to last axle is 36 ft or more', '23 USC 127(a)(2)'),
  law(
    'Order of isolation: shut down, isolate, lock, relieve what is stored, verify',
    '29 CFR 1910.147(d)',
    '1 July 2002 and later prints',
    on('the rule', 'a plain copy of paragraphs (d)(1) to (d)(5)'),
  ),
  law('Written procedures name each source of energy and what isolates it', '29 CFR 1910.147(c)(4)'),
  law('Gas piping of manufactured homes: 3 psi for 10 minutes (a stand-in)', '24 CFR 3280.705(k)(1)'),
  law(
    'Conduit fill: 53 % for one wire, 31 % for two, 40 % for more',
    'NEC Chapter 9 Table 1',
    '2014 and 2020',
    on('secondary', 'National Electrical Code 2014 Handbook, chapter 9; a public copy of the 2020 table'),
  ),
  law('Inside areas of conduit', 'NEC Chapter 9 Table 4'),
  law('Areas of insulated wires', 'NEC Chapter 9 Table 5'),
  law('Resistance of wires', 'NEC Chapter 9 Table 8'),
  law('Ampacity by insulation column', 'NEC Table 310.16'),
  law('Ampacity in warmer and cooler air', 'NEC 310.15(B)'),
  law('Ampacity of bundled wires over more than 24 in', 'NEC Table 310.15(C)(1)'),
  law(
    'Small copper wires: 15 A on 14 AWG, 20 A on 12 AWG, 30 A on 10 AWG',
    'NEC 240.4(D)',
    '2002 and later',
    on('secondary', 'a wire maker’s ampacity table that quotes the paragraph'),
  ),
  law('Next standard rating above an ampacity', 'NEC 240.4(B)'),
  law(
    'Standard ratings of fuses and breakers',
    'NEC 240.6(A)',
    'not known',
    on('secondary', 'a builders’ guide to article 240 that lists them up to 600 A'),
  ),
  law('Taps up to 10 ft', 'NEC 240.21(B)(1)', 'not known', on('secondary', 'a builders’ guide to article 240')),
  law(
    'Continuous load at 125 %, so 80 % of the breaker',
    'NEC 210.20(A)',
    'not known',
    on('secondary', 'an electricians’ forum that quotes 210.19(A)(1), which says the same of the conductor'),
  ),
  law('Terminals rule the column', 'NEC 110.14(C)'),
  law('Live parts from 50 V on are guarded', 'NEC 110.27'),
  law('Low voltage 13 mm from mains, sheath or not', 'NEC 551.10(C)'),
  law('Fuses of 18 and 16 AWG in low-voltage circuits', 'NEC Table 551.10(E)(1)'),
  law('Drop of 3 % recommended to the farthest load', 'NEC 210.19'),
  law('Liquid propane filled to 80 %', 'NFPA 58'),
];
