import { PdfFault } from './fault.js';

/** What a kind of work counts for: about so many steps take equally long, or hold equally much memory. */
export const STEPS = {
  /** A byte unpacked, copied or hashed. */
  byte: 1,
  /** A byte read as objects: each may become an object of a hundred bytes in memory. */
  parsedByte: 16,
  /** A row of a table of objects. */
  row: 64,
  /** An object, page or name looked at. */
  node: 32,
  /** A byte of a record file or of the manifest, which is read as YAML or JSON afterwards. */
  textByte: 24,
} as const;

/** Every file may cost this, and so much more for each of its bytes: more than twice what a printed book does. */
const FIRST = 16e6;
const PER_BYTE = 64;

/**
 * All the work that one file may cost, counted in steps and not by a clock, so that the same file always ends alike. A file of 500 kB
 * that asks for more than a book of that size would is refused within a second.
 */
export class Budget {
  private used = 0;

  constructor(readonly most: number) {}

  static for(fileBytes: number): Budget {
    return new Budget(FIRST + PER_BYTE * fileBytes);
  }

  get spent(): number {
    return this.used;
  }

  get left(): number {
    return Math.max(0, this.most - this.used);
  }

  /** @throws PdfFault once more was asked for than the file may cost */
  spend(kind: keyof typeof STEPS, count = 1): void {
    this.used += STEPS[kind] * count;
    if (this.used > this.most) throw new PdfFault('it asks for more work than a book of its size does');
  }

  /** How many of a kind may still be spent. */
  leftOf(kind: keyof typeof STEPS): number {
    return Math.floor(this.left / STEPS[kind]);
  }
}
