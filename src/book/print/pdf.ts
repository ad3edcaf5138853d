/** What is done to the printed file: its dates. Bytes are replaced by as many bytes, so that no offset in the file moves. */

const STAMP = /\/(CreationDate|ModDate) \(D:\d{14}[^)]*\)/gu;

/** `2026-06-30T12:00:00+02:00` → `20260630100000`, in universal time; the day's start where no time is given. */
function digits(date: string): string {
  const at = new Date(date);
  const told = Number.isNaN(at.getTime()) ? '2000-01-01T00:00:00' : at.toISOString();
  return told.replace(/[^0-9]/gu, '').slice(0, 14);
}

/** Sets the dates to the record's own, and nothing of this machine's clock stays. */
export function finishPdf(pdf: Uint8Array, date: string): Uint8Array {
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString('latin1');
  const fixed = text.replace(STAMP, (whole, key: string) => {
    const start = `/${key} (D:${digits(date)}`;
    const end = "+00'00')";
    return start.length + end.length === whole.length ? start + end : `${start})`.padEnd(whole.length, ' ');
  });
  return Uint8Array.from(Buffer.from(fixed, 'latin1'));
}

/** Pages of a file as Chromium writes it: the root of its page tree says. */
export function pageCountOf(pdf: Uint8Array): number {
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString('latin1');
  let most = 0;
  for (const match of text.matchAll(/\/Type\s*\/Pages\b[\s\S]{0,200000}?\/Count\s+(\d+)/gu))
    most = Math.max(most, Number(match[1]));
  return most;
}
