const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `12 Feb 2026` of an ISO 8601 day or moment. */
export function dayText(date: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})/u.exec(date) ?? [];
  return year === undefined ? date : `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}
