import type { Assessment } from '../../assess.js';
import { faceWords } from '../../drawing/index.js';
import { anchor } from '../../model/anchor.js';
import { type Hazard, hazardsBehind } from '../../query/hazards.js';
import { readerOf, sayTo, translated } from '../../words/index.js';

/** What stands on the label of one access panel. */
export interface PanelLabel {
  readonly panel: string;
  readonly name: string;
  /** The side that it is on, as one looks at it: `right wall, inside`. */
  readonly side: string;
  /** Worst first. */
  readonly hazards: readonly Hazard[];
  /** Page of the panel's card in the book; absent where none was printed from this record. */
  readonly page?: number;
  /** The words in the code: `OV-021 AP-07 p.143`. */
  readonly code: string;
}

/** One label for each access panel, in the order of the record. */
export function panelLabels(assessment: Assessment, pages: ReadonlyMap<string, number>): readonly PanelLabel[] {
  const {
    model: { shell, shop },
    figures,
  } = assessment;
  const reader = readerOf(shop);
  const w = sayTo(reader);
  return shell.panels
    .filter((panel) => panel.panelKind === 'access')
    .map((panel) => {
      const page = pages.get(anchor(panel.id));
      const side = translated(reader, faceWords(assessment, panel));
      return {
        panel: panel.id,
        name: panel.name ?? panel.note ?? w('label.name', { side }),
        side,
        hazards: hazardsBehind(shell, figures.access.behind[panel.id] ?? []),
        code: [shell.id, panel.id, ...(page === undefined ? [] : [`p.${page}`])].join(' '),
        ...(page === undefined ? {} : { page }),
      };
    });
}
