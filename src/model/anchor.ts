/** The name of a record's home in the book, safe in a URL fragment and in HTML: `DC-12/S1` → `r-DC-12.2fS1`. One to one. */
export function anchor(id: string): string {
  return `r-${id.replace(/[^A-Za-z0-9_-]/gu, (sign) => `.${(sign.codePointAt(0) as number).toString(16)}`)}`;
}
