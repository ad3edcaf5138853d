import type { ChapterMaker } from '../book.js';
import { sentencesFor } from '../sentences.js';

/** The plans and both sides. */
const MOST_VIEWS = 4;

/** A page from the maker, what the coach is, and what it looks like. */
export const coachPage: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const { shell, shop } = book.assessment.model;
  const media = new Set(shell.services.map(({ medium }) => medium));
  const cautions = [
    { word: w('word.load'), text: w('coach.load') },
    ...(media.has('gas') ? [{ word: w('word.gas'), text: w('coach.gas') }] : []),
    ...(media.has('ac') ? [{ word: w('word.ac'), text: w('coach.ac') }] : []),
    ...(media.has('dc') ? [{ word: w('word.battery'), text: w('coach.battery') }] : []),
    { word: w('word.structure'), text: w('coach.structure') },
    ...(media.has('air') || media.has('hydraulic') ? [{ word: w('word.pressure'), text: w('coach.pressure') }] : []),
  ];
  const room = { widthMm: book.availableSize('portrait').widthMm, heightMm: 105 };
  return {
    key: 'coach',
    title: w('coach.title'),
    template: 'owner-coach',
    data: {
      shop: shop.name,
      shell: shell.id,
      contact: [shop.place, shop.telephone, shop.contact].filter(Boolean).join(' · '),
      cautions,
      example: shell.panels.find(({ panelKind }) => panelKind === 'access')?.id ?? shell.id,
      figures: book.draw.generalArrangement(book.assessment, room).slice(0, MOST_VIEWS),
    },
  };
};
