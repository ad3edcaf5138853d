import { length } from '../../quantity/format.js';
import { MM_PER_IN } from '../../quantity/units.js';

/** The system that stands first; the other follows in brackets. */
export type FirstUnits = 'us' | 'metric';

const SPACE = '[ \\u00a0]';
const FIGURE = '[−±+-]?\\d[\\d,.]*(?:-\\d+/\\d+|/\\d+)?';
const PLACE = `(?:x ${FIGURE}, y ${FIGURE}, z )?`;
const FEET = `${FIGURE}${SPACE}ft(?:${SPACE}${FIGURE}${SPACE}in)?`;
const US = `${PLACE}(?:${FEET}(?!·)|${FIGURE}${SPACE}(?:in·lb|ft·lb|in²|ft²|in|lb|mi|psi|gal|°F))`;
const METRIC = `${PLACE}${FIGURE}${SPACE}(?:N·m|mm²|m²|mm|cm|m|kg|km|kPa|bar|L|°C)`;
const END = '(?![\\w·])';
const PAIRS: Readonly<Record<FirstUnits, RegExp>> = {
  metric: new RegExp(`(${US}) \\((${METRIC})\\)`, 'gu'),
  us: new RegExp(`(${METRIC}) \\((${US})\\)`, 'gu'),
};
/** A height in the words of a place, which has one system only. */
const ALONE = `(?= (?:above|below|over|under|sobre|bajo|por encima|por debajo)\\b)`;
const HEIGHTS: Readonly<Record<FirstUnits, RegExp>> = {
  metric: new RegExp(`(?:${FEET}|${FIGURE}${SPACE}in)${END}${ALONE}`, 'gu'),
  us: new RegExp(`${FIGURE}${SPACE}mm${END}${ALONE}`, 'gu'),
};

/** A text with its figures in that system first. What stands in one system alone, as a size that the shop typed, stays as it is. */
export const inUnits = (text: string, first: FirstUnits): string =>
  /\d/u.test(text)
    ? text.replace(PAIRS[first], '$2 ($1)').replace(HEIGHTS[first], (told) => {
        const mm = first === 'metric' ? mmOf(told) : Number(told.replace(/[^\d.]/gu, ''));
        return `${length(mm, first)} (${told})`;
      })
    : text;

/** `6 ft 7-1/8 in`, in mm. */
function mmOf(told: string): number {
  const [, feet = '0', inches = '0'] =
    new RegExp(`^(?:(${FIGURE})${SPACE}ft)?${SPACE}?(?:(${FIGURE})${SPACE}in)?$`, 'u').exec(told) ?? [];
  return (12 * mixed(feet) + mixed(inches)) * MM_PER_IN;
}

/** `7-1/8`, `3/4`, `12`. */
function mixed(figure: string): number {
  const [, whole = '0', top = '0', bottom = '1'] = /^(?:(\d+)(?:-|$))?(?:(\d+)\/(\d+))?$/u.exec(figure) ?? [];
  return Number(whole) + Number(top) / Number(bottom);
}
