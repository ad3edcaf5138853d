/** AWS positions beside those of ISO 6947: Annex B there and AWS A3.0, unverified citation. */
const SAME: Readonly<Record<string, readonly string[]>> = {
  PA: ['1G', '1F'],
  PB: ['2F'],
  PC: ['2G'],
  PD: ['4F'],
  PE: ['4G'],
  PF: ['3G', '3F'],
  PG: ['3G', '3F'],
};

/**
 * True where a listed position is the one welded, by either standard's name. Nothing is inferred further: what a test in one
 * position lets a welder do in another is for the standard, and the record lists what the paper allows.
 */
export function coversPosition(listed: readonly string[], position: string): boolean {
  const wanted = position.trim().toUpperCase();
  return listed.some((one) => {
    const name = one.trim().toUpperCase();
    return name === wanted || (SAME[name]?.includes(wanted) ?? false) || (SAME[wanted]?.includes(name) ?? false);
  });
}
