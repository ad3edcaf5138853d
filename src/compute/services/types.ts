/** Electrical figures of one circuit. Absent where a value it needs was not recorded. */
export interface CircuitFigure {
  readonly id: string;
  /** Sum of its runs' lengths (installed where given), mm. */
  readonly lengthMm: number;
  readonly dropV?: number;
  /** Fraction of the circuit's voltage. */
  readonly drop?: number;
  readonly ampacityA?: number;
  readonly protectionA?: number;
  /** Node with the largest drop. */
  readonly worstLoad?: string;
  readonly runs: readonly string[];
  readonly assumptions: readonly string[];
}

export interface ServicesFigures {
  readonly circuits: readonly CircuitFigure[];
}
