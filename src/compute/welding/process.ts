import { getOwn } from '../../get-own.js';

/**
 * One name for each welding process: the AWS letters, from those letters, the ISO 4063 number or the shop's word.
 * ISO 4063 numbers: 131 MIG and 135 MAG are both GMAW to AWS. 21, 43 and 78x (unverified citation).
 */
const NAMES: Readonly<Record<string, string>> = {
  MIG: 'GMAW',
  MAG: 'GMAW',
  '13': 'GMAW',
  '131': 'GMAW',
  '135': 'GMAW',
  TIG: 'GTAW',
  '14': 'GTAW',
  '141': 'GTAW',
  MMA: 'SMAW',
  STICK: 'SMAW',
  '111': 'SMAW',
  '114': 'FCAW',
  '136': 'FCAW',
  '121': 'SAW',
  '15': 'PAW',
  PLASMA: 'PAW',
  '21': 'RSW',
  SPOT: 'RSW',
  '43': 'FSW',
  '52': 'LBW',
  LASER: 'LBW',
  '311': 'OAW',
  '783': 'SW',
  '784': 'SW',
  '786': 'SW',
};

export function processName(typed: string): string {
  const word = typed.trim().toUpperCase();
  return getOwn(NAMES, word) ?? word;
}

/** Processes that lay no filler. */
export const withoutFiller = (process: string): boolean => ['RSW', 'FSW', 'SW', 'LBW'].includes(processName(process));
