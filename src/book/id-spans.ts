import { type Column, type Ref, ref } from './table.js';

/** Ids from which on a row of them is told by its first and last. */
const LEAST = 3;
const NUMBERED = /^(?<stem>.*?)(?<number>\d+)(?<tail>[^\d]*)$/u;

/** `AP-01, AP-02, AP-03, AP-05` as `AP-01 to AP-03, AP-05`: no id is left out between the two, and the link leads to the first. */
export function idSpans(ids: readonly string[]): readonly Ref[] {
  const runs: string[][] = [];
  for (const id of ids) {
    const last = runs.at(-1)?.at(-1);
    if (last !== undefined && follows(last, id)) runs.at(-1)?.push(id);
    else runs.push([id]);
  }
  return runs.flatMap((run) => {
    const [first, last] = [run[0] as string, run.at(-1) as string];
    return run.length < LEAST ? run.map((id) => ref(id)) : [ref(first, `${first} to ${last}`)];
  });
}

function follows(before: string, id: string): boolean {
  const [a, b] = [NUMBERED.exec(before)?.groups, NUMBERED.exec(id)?.groups];
  if (!a || !b || a.stem !== b.stem || a.tail !== b.tail || a.number?.length !== b.number?.length) return false;
  return Number(a.number) + 1 === Number(b.number);
}

/** `DC-04/5, DC-04/6` as `DC-04/5, /6`: what stands before the last stroke is told once. */
export const shortRefs = (ids: readonly string[]): readonly Ref[] =>
  ids.map((id, at) => {
    const stroke = id.lastIndexOf('/');
    const before = ids[at - 1];
    const same = stroke > 0 && before !== undefined && before.slice(0, before.lastIndexOf('/')) === id.slice(0, stroke);
    return ref(id, same ? id.slice(stroke) : id);
  });

/** The column of many ids, those that follow each other told by the first and the last. */
export const spansColumn = <R>(
  head: string,
  ids: (row: R) => readonly string[],
  sub?: (row: R) => string | undefined,
): Column<R> => ({
  head,
  kind: 'id',
  cell: (row) => {
    const refs = idSpans(ids(row));
    const more = sub?.(row);
    return { ...(refs.length > 0 ? { refs } : { text: more ? '' : '–' }), ...(more ? { sub: more } : {}) };
  },
});
