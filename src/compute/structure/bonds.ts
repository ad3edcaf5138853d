import type { Model } from '../../model/shell.js';
import type { Panel } from '../../records/index.js';
import { judgeTest, type TestVerdict } from '../verdicts/verdict.js';
import { dewPointK } from './dew-point.js';

/** Least that a surface must be above the dew point, K. EN 17460 practice; the figure is (unverified citation) (+3 °C). */
export const DEW_MARGIN_K = 3;

/** What the log of one bonded panel shows. */
export interface BondFigure {
  readonly panel: string;
  /** Of the air at bonding; absent where air or humidity was not read. */
  readonly dewPointK?: number;
  /** Surface above the dew point, K. */
  readonly dewMarginK?: number;
  /** Verdict of the coupon's test; absent where the record names none. */
  readonly coupon?: TestVerdict['verdict'];
  /** Keys of the record that are missing for a log that can be judged, as typed: `bond: surface`. */
  readonly missing: readonly string[];
}

const isBonded = ({ fixing }: Panel): boolean => fixing?.method?.startsWith('bonded') === true || fixing?.adhesive !== undefined;

/** The bonding log of every panel that is bonded on: one that is still in the rack has no day yet, and no log. */
export function bondFigures(model: Model): readonly BondFigure[] {
  return model.shell.panels
    .filter((panel) => isBonded(panel) && (panel.fixing?.applied ?? panel.date) !== undefined)
    .map((panel) => figureOf(panel, model));
}

function figureOf({ id, fixing, bond }: Panel, model: Model): BondFigure {
  const dew =
    bond?.airK !== undefined && bond.humidity !== undefined && bond.humidity > 0
      ? dewPointK(bond.airK, bond.humidity)
      : undefined;
  const test = bond?.coupon === undefined ? undefined : model.shell.tests.find((one) => one.id === bond.coupon);
  const needed = {
    'fixing: lot': fixing?.lot,
    'fixing: expires': fixing?.expires,
    'bond: surface': bond?.surfaceK,
    'bond: air': bond?.airK,
    'bond: humidity': bond?.humidity,
    'bond: open_time': bond?.openTimeS,
    'bond: open_time_limit': bond?.openTimeLimitS,
    'bond: cure': bond?.cureS,
    'bond: coupon': bond?.coupon,
  };
  return {
    panel: id,
    ...(dew === undefined ? {} : { dewPointK: dew }),
    ...(dew === undefined || bond?.surfaceK === undefined ? {} : { dewMarginK: bond.surfaceK - dew }),
    ...(test ? { coupon: judgeTest(test, model).verdict } : {}),
    missing: Object.entries(needed).flatMap(([key, value]) => (value === undefined ? [key] : [])),
  };
}
