import type { Finding } from '../finding.js';
import { Schemas } from '../records/schema.js';
import type { RecordIndex } from './record-index.js';
import type { SheetFault } from './rows.js';
import { type Candidate, validate } from './validate.js';

/** What was found wrong while a sheet is read, and what each record is held to. */
export class SheetChecks {
  private readonly found: SheetFault[] = [];
  private readonly schemas = new Map<string, Schemas>();
  /** Names of records that are not there yet, where that is allowed. */
  readonly ahead: SheetFault[] = [];

  constructor(private readonly of: { readonly known: RecordIndex; readonly ahead: boolean }) {}

  readonly say = (fault: SheetFault): void => void this.found.push(fault);

  /** True where the record may be written; each fault is told. */
  isValid(candidate: Omit<Candidate, 'known' | 'schemas'>, file: string): boolean {
    const { known, ahead } = this.of;
    const later = ahead ? (finding: Finding) => this.ahead.push(sheetFault(finding)) : undefined;
    const whole = { ...candidate, known, schemas: this.schemasFor(file) };
    return validate(whole, (finding) => this.say(sheetFault(finding)), later) !== undefined;
  }

  /** Faults by row, then column. */
  get faults(): readonly SheetFault[] {
    return this.found.sort((a, b) => a.row - b.row || (a.column ?? -1) - (b.column ?? -1));
  }

  /** With the units of a file. */
  schemasFor(file: string): Schemas {
    const made = this.schemas.get(file) ?? new Schemas(this.of.known.unitsOf(file));
    this.schemas.set(file, made);
    return made;
  }
}

const sheetFault = ({ place, message }: Finding): SheetFault => ({
  row: place.line,
  ...(place.column > 0 ? { column: place.column - 1 } : {}),
  message,
});
