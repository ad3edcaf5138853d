import { processName } from '../../compute/welding/process.js';
import { getOwn } from '../../get-own.js';

/** Reference numbers of ISO 4063 by AWS letters; 21, 22, 43 and 52 (unverified citation). GMAW is told apart by its filler. */
const NUMBERS: Readonly<Record<string, string>> = {
  SMAW: '111',
  FCAW: '136',
  SAW: '121',
  GTAW: '141',
  PAW: '15',
  RSW: '21',
  RSEW: '22',
  FSW: '43',
  LBW: '52',
  OAW: '311',
};

/** Aluminium fillers are numbered 1xxx to 5xxx and welded under inert gas: 131. Steel and unknown wire: 135. */
const isAluminium = (filler: string | undefined): boolean => filler === undefined || /(?:^|\D)[1-5]\d{3}(?:\D|$)/u.test(filler);

/** The ISO 4063 number of a process as the shop typed it; its own words where there is none. */
export function processNumber(typed: string, filler?: string): string {
  if (/^\d{2,3}$/u.test(typed.trim())) return typed.trim();
  const name = processName(typed);
  if (name === 'GMAW') return /^MAG$/iu.test(typed.trim()) || !isAluminium(filler) ? '135' : '131';
  return getOwn(NUMBERS, name) ?? name;
}

/** Resistance processes join without a side. */
export const isResistance = (typed: string): boolean => ['21', '22'].includes(processNumber(typed)) || /^RSE?W$/iu.test(typed);
