/**
 * Vehicle identification number: form and check digit.
 *
 * Source: 49 CFR 565.13 (17 characters; letters I, O and Q never occur) and 565.15(c) Tables III and IV (values of the letters,
 * weights of the positions; the sum modulo 11 stands in position 9, with X for 10).
 * Worked value: 1M8GDM9AXKP042788 sums to 351, remainder 10, digit X.
 */
export const VIN_FORM = /^[A-HJ-NPR-Z0-9]{17}$/u;

const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

/** Letters in order with their values; I, O and Q have none, and S is 2. */
const VALUES: Readonly<Record<string, number>> = Object.fromEntries(
  [...'ABCDEFGH']
    .map((letter, i) => [letter, i + 1] as const)
    .concat(
      [...'JKLMN'].map((letter, i) => [letter, i + 1] as const),
      [
        ['P', 7],
        ['R', 9],
      ],
      [...'STUVWXYZ'].map((letter, i) => [letter, i + 2] as const),
    ),
);

/** The digit that position 9 must have. The number must have the right form. */
export function vinCheckDigit(vin: string): string {
  const sum = [...vin].reduce((total, sign, i) => total + (VALUES[sign] ?? Number(sign)) * (WEIGHTS[i] as number), 0);
  return sum % 11 === 10 ? 'X' : String(sum % 11);
}
