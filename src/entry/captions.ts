/** Words that say no more than that it is a picture. */
const EMPTY: ReadonlySet<string> = new Set([
  'image',
  'img',
  'photo',
  'picture',
  'pic',
  'screenshot',
  'scan',
  'copy',
  'edited',
  'final',
  'new',
  'untitled',
]);

/** `trough before closing.jpg` says what to see; `IMG_0412.jpg` does not. Two words at least, of letters. */
export function captionFrom(name: string): string | undefined {
  const own = name.slice(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1).replace(/\.[A-Za-z0-9]+$/u, '');
  const text = own
    .replace(/[\p{Cc}_]+/gu, ' ')
    .replace(/(?<=\p{L})-(?=\p{L})/gu, ' ')
    .replace(/\s*\(\d+\)$/u, '')
    .replace(/\s+/gu, ' ')
    .trim();
  const words = text.split(/[^\p{L}]+/u).filter((word) => word.length >= 3 && !EMPTY.has(word.toLowerCase()));
  return words.length >= 2 && text.length <= 120 ? text : undefined;
}
