/** Before this a guess is not worth telling, and less than this is soon over. */
const SOONEST_MS = 2000;
const LEAST_LEFT_MS = 3000;

/**
 * Adds to lines that count (`Reading picture 12 of 340`) how long the rest will take at the pace so far.
 * @param now Milliseconds of any clock.
 */
export function withTimeLeft(now: () => number): (text: string) => string {
  let series: { readonly of: string; readonly from: number; readonly at: number } | undefined;
  return (text) => {
    const counted = /(\d+) of (\d+)/u.exec(text);
    if (!counted) return text;
    const [done, total] = [Number(counted[1]), Number(counted[2])];
    const of = `${text.slice(0, counted.index)} ${total}`;
    if (series?.of !== of || done <= series.from) {
      series = { of, from: done, at: now() };
      return text;
    }
    const tookMs = now() - series.at;
    const leftMs = (tookMs / (done - series.from)) * (total - done);
    return tookMs < SOONEST_MS || leftMs < LEAST_LEFT_MS ? text : `${text}, about ${inWords(leftMs)} left`;
  };
}

/** Rounded up: who waits is glad of less. */
function inWords(ms: number): string {
  const s = Math.ceil(ms / 1000);
  return s < 90 ? `${s < 10 ? s : Math.ceil(s / 10) * 10} s` : `${Math.ceil(s / 60)} min`;
}
