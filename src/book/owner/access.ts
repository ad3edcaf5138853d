import { faceWords } from '../../drawing/index.js';
import { hazardsBehind, hazardWord } from '../../query/hazards.js';
import { readerOf } from '../../words/index.js';
import type { ChapterMaker } from '../book.js';
import { accessPanels } from '../chapters/panels.js';
import { fixingWords } from '../chapters/skins.js';
import { phrasesFor, sentencesFor } from '../sentences.js';
import { table } from '../table.js';

/** Which panels there are, how each is held, and what may hurt behind it. */
export const ownerPanels: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const { model, figures } = book.assessment;
  const reader = readerOf(model.shop);
  const room = book.availableSize('portrait', 20);
  return {
    key: 'panels',
    title: w('panels.title'),
    template: 'owner-panels',
    data: {
      panels: table(book.show, {
        look: 'dense tight',
        rows: accessPanels(book),
        home: (panel) => panel.id,
        columns: (c) => [
          c.id(w('head.panel'), (panel) => panel.id),
          c.text(w('head.name'), (panel) => panel.name ?? panel.note),
          c.text(w('panels.side'), (panel) => phrase(faceWords(book.assessment, panel))),
          c.text(w('panels.opens'), (panel) => phrase(fixingWords(panel.fixing))),
          c.text(w('panels.hurt'), (panel) =>
            hazardsBehind(model.shell, figures.access.behind[panel.id] ?? [])
              .map((one) => hazardWord(one, reader))
              .join(', '),
          ),
        ],
        empty: w('word.none'),
      }),
      figures: book.draw
        .panels(book.assessment, { widthMm: room.widthMm, heightMm: 56 })
        .filter(({ ids }) => ids.some((id) => accessPanels(book).some((panel) => panel.id === id))),
    },
  };
};
