/** A fingerprint in groups of four digits, as people compare it. */
export const groupedDigits = (fingerprint: string): string => fingerprint.match(/.{1,4}/gu)?.join(' ') ?? '';
