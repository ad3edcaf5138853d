import { type Book, type ChapterMaker, stageName } from '../book.js';
import { ageWords } from '../evidence-words.js';
import type { PrintPhoto } from '../photos.js';
import { ref } from '../table.js';

/** Photos of what is concealed now, by stage, each with what, where and when. */
export const photos: ChapterMaker = (book) => {
  const order = new Map(book.assessment.model.library.stages.map((stage, at) => [stage.id, at]));
  const groups = new Map<string, PrintPhoto[]>();
  for (const one of book.photos.all) {
    const stage = stageOf(book, one) ?? '';
    groups.set(stage, [...(groups.get(stage) ?? []), one]);
  }
  const rank = (stage: string) => order.get(stage) ?? order.size;
  return {
    key: 'photos',
    title: 'Photos of concealed work',
    template: 'photos',
    data: {
      groups: [...groups]
        .sort(([a], [b]) => rank(a) - rank(b))
        .map(([stage, list]) => ({
          title: stage ? stageName(book, stage) : 'No stage recorded',
          to: `h-photos-${rank(stage)}-${[...groups.keys()].indexOf(stage)}`,
          rows: inRows(list.map((one) => frame(book, one))),
        })),
    },
  };
};

/** A photo's own stage, else that of the first record that it shows. */
function stageOf(book: Book, { photo }: PrintPhoto): string | undefined {
  const { byId } = book.assessment.model.shell;
  return photo.stage ?? photo.of.map((id) => (byId.get(id)?.record as { stage?: string } | undefined)?.stage).find(Boolean);
}

const sentence = (text: string): string => (/[.!?]$/u.test(text) ? text : `${text}.`);

function frame(book: Book, { photo, path, missing }: PrintPhoto) {
  return {
    id: photo.id,
    path,
    missing,
    caption: sentence(photo.caption ?? photo.note ?? 'No caption recorded'),
    of: photo.of.map((id) => ref(id)),
    view: photo.view,
    taken: book.show.date(photo.taken ?? photo.date),
    vouched: photo.vouched && vouchedWords(book, photo.vouched),
    age: ageWords(book, photo.id, photo.of, photo.taken ?? photo.date),
  };
}

/** A date that a person gives is never the camera's: it is told as theirs. */
const vouchedWords = (
  book: Book,
  { by, date, why }: { readonly by: string; readonly date: string; readonly why: string },
): string =>
  `No camera gave this date: ${book.edition === 'shop' ? by : 'the shop'} vouched for it on ${book.show.date(date)}, because ${why}.`;

/** Three beside each other: one block of the page. */
function inRows<T>(list: readonly T[]): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(list.length / 3) }, (_, at) => list.slice(at * 3, at * 3 + 3));
}
