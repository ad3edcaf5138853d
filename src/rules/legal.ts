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

const on = (standing: Standing, text: string, day = '2026-12-01') => ({ compared: { day, text, standing } });

/** Every legal figure that the program computes with or quotes. `LEGAL.md` is written from it. */
export const LEGAL_FIGURES: readonly LegalFigure[] = [
  {
    figure: 'Loaded weight of one vehicle as its maker states it (GVWR)',
    citation: '49 CFR 571.3',
    edition: 'as quoted in 1974',
    ...on('official restatement', 'NHTSA interpretation letter aiam1472 (1974), which quotes the definition'),
  },
  {
    figure: 'Capacity of one axle system as its maker states it, at the ground (GAWR)',
    citation: '49 CFR 571.3',
    edition: 'as quoted in 1976',
    ...on('official restatement', 'NHTSA interpretation letter nht76-5.17 (10 November 1976), which quotes the definition'),
  },
  {
    figure: 'Unloaded vehicle weight: every fluid needed to run it full, no cargo, no occupants',
    citation: '49 CFR 571.3',
    edition: '36 FR 2511',
    ...on('official restatement', 'NHTSA interpretation letter aiam0613 (1971), which quotes the definition'),
  },
  {
    figure: 'GVWR at least unloaded weight, rated cargo, and 150 lb (68 kg) in each designated seat',
    citation: '49 CFR 567.4(g)(3)',
    edition: 'as quoted in 1994',
    ...on('official restatement', 'NHTSA interpretation letter 10673, which quotes the sentence'),
  },
  {
    figure: 'A GAWR for each axle on the certification label',
    citation: '49 CFR 567.4(g)(4)',
    edition: 'as restated in 1976',
    ...on('official restatement', 'NHTSA interpretation letter aiam2449 (1976)'),
  },
  {
    figure: 'GVWR not above the sum of the GAWRs: asked of every maker as a matter of adequate axles',
    citation: '49 CFR 567 and 568, by interpretation',
    edition: 'letters of 1971 and 1987',
    ...on('official restatement', 'NHTSA interpretation letters aiam0613 (1971) and nht87-2.92 (14 September 1987)'),
  },
  {
    figure: 'Tyres of an axle together rated at least its GAWR',
    citation: '49 CFR 571.120 S5.1.2',
    edition: 'as restated in 1987',
    ...on('official restatement', 'NHTSA interpretation letter nht87-2.92 (14 September 1987)'),
  },
  {
    figure: 'Load label of a motor home: occupants and cargo in one figure, kg and lb, and the number of belted seats',
    citation: '49 CFR 571.120 S10',
    edition: '72 FR 68442, 4 December 2007',
    ...on('official restatement', 'NHTSA interpretation letter 08-003469, which quotes the label'),
  },
  {
    figure: 'Belted seats, at 150 lb each, not above the occupant and cargo carrying capacity',
    citation: '49 CFR 571.120 S10',
    edition: '72 FR 68442, 4 December 2007',
    ...on('official restatement', 'NHTSA interpretation letter 08-003469'),
  },
  {
    figure: '571.110 for a GVWR up to 10,000 lb (4,536 kg), 571.120 above it',
    citation: '49 CFR 571.110 and 571.120, titles',
    edition: '72 FR 68442, 4 December 2007',
    ...on('official restatement', 'NHTSA interpretation letter 08-003469, which gives both titles'),
  },
  {
    figure: 'Weight added before first retail sale without a new label: the lesser of 1.5 % of GVWR and 100 lb',
    citation: '49 CFR 571.120 S10.5',
    edition: '72 FR 68442, 4 December 2007',
    ...on('official restatement', '72 FR 68442, 4 December 2007, summary of the final rule'),
  },
  {
    figure: 'Water on the label at 1 kg/L (8.3 lb a gallon)',
    citation: '49 CFR 571.120 S10, label figure',
    edition: '72 FR 68442, 4 December 2007',
    ...on('secondary', 'a program of a trailer maker that prints the label of 571.110 S9.3 with these words'),
  },
  {
    figure: 'Full propane in the unloaded weight, drinking water in the cargo',
    citation: '49 CFR 571.120 S10.3.2',
    edition: '72 FR 68442, 4 December 2007',
  },
  {
    figure: 'Label figures rounded so that the GVWR is not exceeded',
    citation: '49 CFR 571.120 S10.4.2',
    edition: '72 FR 68442, 4 December 2007',
  },
  {
    figure: 'GVWR of a motor home at least its unloaded weight and 150 lb in each belted seat, and not above the GAWRs together',
    citation: '49 CFR 571.120 S10.2',
    edition: '72 FR 68442, 4 December 2007',
  },
  {
    figure: 'Ratings on the label of whoever finishes a body on an incomplete vehicle',
    citation: '49 CFR 567.5(d)',
    edition: '70 FR 7414, 14 February 2005',
  },
  { figure: 'What an incomplete vehicle document says', citation: '49 CFR 568.4', edition: '70 FR 7414, 14 February 2005' },
  { figure: 'Gross combination weight rating (GCWR)', citation: '49 CFR 390.5', edition: 'not known' },
  {
    figure: 'Vehicle number: 17 characters, check digit in place 9, letters I, O and Q never',
    citation: '49 CFR 565.13',
    edition: 'as now numbered',
    ...on('the rule', 'a plain copy of 565.15(c), whose Table III has no I, O or Q; NHTSA’s outline for new manufacturers'),
  },
  {
    figure: 'Check digit: values of letters, weights by place, remainder of 11, X for 10',
    citation: '49 CFR 565.15(c)',
    edition: 'as now numbered',
    ...on(
      'the rule',
      'a plain copy of the paragraph with its Tables III to V and worked example; NHTSA’s outline for new manufacturers',
    ),
  },
  { figure: 'No number twice within 60 years', citation: '49 CFR 565', edition: 'not known' },
  {
    figure: '20,000 lb on a single axle, 34,000 lb on a tandem, 80,000 lb in all, on the Interstate',
    citation: '23 USC 127(a), 23 CFR 658.17',
    edition: 'as in force in 2012',
    ...on(
      'official restatement',
      'FHWA, Compilation of Existing State Truck Size and Weight Limit Laws, report to Congress, May 2015',
    ),
  },
  {
    figure: 'Bridge formula W = 500 (L N ÷ (N − 1) + 12 N + 36), to the nearest 500 lb',
    citation: '23 USC 127(a)(2)',
    edition: 'not known',
    ...on('secondary', 'a public comparison of state bridge laws (2020) that states the formula in words'),
  },
  {
    figure: 'Axles up to 40 in apart count as one, over 40 in and up to 96 in as a tandem',
    citation: '23 CFR 658.5',
    edition: 'not known',
    ...on('secondary', 'a legal encyclopedia’s page on axle weights that cites FHWA, Bridge Formula Weights'),
  },
  {
    figure: 'Two tandems at 34,000 lb each where first to last axle is 36 ft or more',
    citation: '23 USC 127(a)(2)',
    edition: 'not known',
  },
  {
    figure: 'Order of isolation: shut down, isolate, lock, relieve what is stored, verify',
    citation: '29 CFR 1910.147(d)',
    edition: '1 July 2002 and later prints',
    ...on('the rule', 'a plain copy of paragraphs (d)(1) to (d)(5)'),
  },
  {
    figure: 'Written procedures name each source of energy and what isolates it',
    citation: '29 CFR 1910.147(c)(4)',
    edition: 'not known',
  },
  {
    figure: 'Gas piping of manufactured homes: 3 psi for 10 minutes (a stand-in)',
    citation: '24 CFR 3280.705(k)(1)',
    edition: 'not known',
  },
  {
    figure: 'Conduit fill: 53 % for one wire, 31 % for two, 40 % for more',
    citation: 'NEC Chapter 9 Table 1',
    edition: '2014 and 2020',
    ...on('secondary', 'National Electrical Code 2014 Handbook, chapter 9; a public copy of the 2020 table'),
  },
  { figure: 'Inside areas of conduit', citation: 'NEC Chapter 9 Table 4', edition: 'not known' },
  { figure: 'Areas of insulated wires', citation: 'NEC Chapter 9 Table 5', edition: 'not known' },
  { figure: 'Resistance of wires', citation: 'NEC Chapter 9 Table 8', edition: 'not known' },
  { figure: 'Ampacity by insulation column', citation: 'NEC Table 310.16', edition: 'not known' },
  { figure: 'Ampacity in warmer and cooler air', citation: 'NEC 310.15(B)', edition: 'not known' },
  { figure: 'Ampacity of bundled wires over more than 24 in', citation: 'NEC Table 310.15(C)(1)', edition: 'not known' },
  {
    figure: 'Small copper wires: 15 A on 14 AWG, 20 A on 12 AWG, 30 A on 10 AWG',
    citation: 'NEC 240.4(D)',
    edition: '2002 and later',
    ...on('secondary', 'a wire maker’s ampacity table that quotes the paragraph'),
  },
  { figure: 'Next standard rating above an ampacity', citation: 'NEC 240.4(B)', edition: 'not known' },
  {
    figure: 'Standard ratings of fuses and breakers',
    citation: 'NEC 240.6(A)',
    edition: 'not known',
    ...on('secondary', 'a builders’ guide to article 240 that lists them up to 600 A'),
  },
  {
    figure: 'Taps up to 10 ft',
    citation: 'NEC 240.21(B)(1)',
    edition: 'not known',
    ...on('secondary', 'a builders’ guide to article 240'),
  },
  {
    figure: 'Continuous load at 125 %, so 80 % of the breaker',
    citation: 'NEC 210.20(A)',
    edition: 'not known',
    ...on('secondary', 'an electricians’ forum that quotes 210.19(A)(1), which says the same of the conductor'),
  },
  { figure: 'Terminals rule the column', citation: 'NEC 110.14(C)', edition: 'not known' },
  { figure: 'Live parts from 50 V on are guarded', citation: 'NEC 110.27', edition: 'not known' },
  { figure: 'Low voltage 13 mm from mains, sheath or not', citation: 'NEC 551.10(C)', edition: 'not known' },
  { figure: 'Fuses of 18 and 16 AWG in low-voltage circuits', citation: 'NEC Table 551.10(E)(1)', edition: 'not known' },
  { figure: 'Drop of 3 % recommended to the farthest load', citation: 'NEC 210.19', edition: 'not known' },
  { figure: 'Liquid propane filled to 80 %', citation: 'NFPA 58', edition: 'not known' },
];

/** Those that nobody has held against a text. */
export const fromMemory = (): readonly LegalFigure[] => LEGAL_FIGURES.filter(({ compared }) => compared === undefined);
