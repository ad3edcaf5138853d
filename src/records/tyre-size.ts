/**
 * Outside diameter and width that a size like `295/75R22.5` stands for, mm: section width / height of the section in percent of it,
 * rim in inches. The design size; a grown tyre is a little larger. ISO 4000-1 and ISO 4223-1, unverified citation. Undefined for other forms.
 */
export function tyreSize(text: string | undefined): { readonly diameterMm: number; readonly widthMm: number } | undefined {
  const read = /^\s*(?:LT|P)?(\d{3})\s*\/\s*(\d{2,3})\s*(?:R|D|-)\s*(\d{2}(?:\.5)?)\b/iu.exec(text ?? '');
  if (!read) return undefined;
  const [widthMm, percent, rimIn] = read.slice(1).map(Number) as [number, number, number];
  return { diameterMm: rimIn * 25.4 + (2 * widthMm * percent) / 100, widthMm };
}
