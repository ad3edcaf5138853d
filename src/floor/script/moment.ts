/** The phone's own day and time, without a zone: as the shop's records have them. */
export function localMoment(day = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  const date = `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
  return `${date}T${two(day.getHours())}:${two(day.getMinutes())}:${two(day.getSeconds())}`;
}

export const phoneDay = (): string => localMoment().slice(0, 10);
