import { beforeAll, describe, expect, it } from 'vitest';
import { type Surface, surfaces, surfacesInOrder } from '../../src/compute/access/surfaces.js';
import * as drawing from '../../src/drawing/index.js';
import { anchor } from '../../src/model/anchor.js';
import { judged } from './store.js';

const SHEET = { widthMm: 250, heightMm: 180 };

describe('the sides of the demo shell', () => {
  let a: ReturnType<typeof judged>['assessment'];
  let access: readonly string[];
  beforeAll(() => {
    ({ assessment: a } = judged('OV-021'));
    access = a.model.shell.panels.filter(({ panelKind }) => panelKind === 'access').map(({ id }) => id);
  });

  /** Drawings in which a panel is a subject. */
  const drawnIn = (drawings: readonly drawing.Drawing[], id: string): readonly string[] =>
    drawings.filter(({ svg }) => svg.includes(`href="#${anchor(id)}"`)).map((one) => one.id);

  it('draws each access panel in exactly one panel drawing and in one general arrangement, both of its side', () => {
    const panels = drawing.panelsDrawings(a, SHEET, { linkable: () => true });
    const general = drawing.generalArrangement(a, SHEET, { linkable: () => true });
    for (const id of access) {
      expect([id, drawnIn(panels, id).length, drawnIn(general, id).length]).toEqual([id, 1, 1]);
    }
    expect(drawnIn(panels, 'AP-33')).toEqual(['panels-right-inside']);
    expect(drawnIn(panels, 'AP-37')).toEqual(['panels-left-inside']);
    expect(drawnIn(panels, 'AP-21')).toEqual(['panels-ceiling-inside']);
    expect(drawnIn(panels, 'AP-14')).toEqual(['panels-down']);
  });

  it('draws each access panel in one layer of every service, that of its surface', () => {
    const layers: Readonly<Record<Surface['side'], string>> = {
      ...{ underside: 'belly', floor: 'floor', partition: 'floor', ceiling: 'ceiling', roof: 'ceiling' },
      ...{ left: 'left', right: 'right', front: 'front', rear: 'rear' },
    };
    const seen = new Set<string>();
    for (const medium of drawing.mediaUsed(a)) {
      const views = drawing.serviceDrawings(a, medium, SHEET, { linkable: () => true });
      for (const id of access) {
        const shown = drawnIn(views, id);
        const own = layers[(surfaces(a.model).get(id) as Surface).side];
        // A layer without anything of the medium is not drawn.
        for (const name of shown) expect([id, name]).toEqual([id, `service-${medium}-${own}`]);
        expect(shown.length).toBe(views.some((view) => view.id === `service-${medium}-${own}`) ? 1 : 0);
        if (shown.length > 0) seen.add(id);
      }
    }
    expect([...access].filter((id) => !seen.has(id))).toEqual([]);
  });

  it('draws no access panel on a drill sheet of another face, and at most once on the cover', () => {
    const faces = surfacesInOrder(a.model);
    const sheets = faces.map((face) => ({ face, sheet: drawing.noDrillFace(a, face, SHEET, { linkable: () => true }) }));
    expect(sheets.length).toBeGreaterThan(6);
    const cover = drawing.coverDrawing(a, SHEET);
    for (const id of access) {
      const own = surfaces(a.model).get(id);
      const others = sheets.filter(({ face, sheet }) => drawnIn([sheet], id).length > 0 && face.side !== own?.side);
      expect([id, others.map(({ sheet }) => sheet.id), drawnIn([cover], id).length <= 1]).toEqual([id, [], true]);
    }
  });

  it('says the same on cards, labels and key plans', () => {
    for (const id of access) {
      const { side, seenFrom } = surfaces(a.model).get(id) as Surface;
      const panel = a.model.shell.panels.find((one) => one.id === id) as (typeof a.model.shell.panels)[number];
      const words = drawing.faceWords(a, panel);
      expect(words.includes('inside')).toBe(seenFrom === 'inside' && side !== 'ceiling' && side !== 'floor');
      expect(drawing.panelKeyPlan(a, id, { widthMm: 82, heightMm: 42 }).alt).toContain(words);
    }
    // Panels let into linings are inside, those of the belly outside: 12 in the ceiling, 5 in the walls, 20 below.
    const count = (seenFrom: string) => access.filter((id) => surfaces(a.model).get(id)?.seenFrom === seenFrom).length;
    expect([count('inside'), count('outside')]).toEqual([17, 20]);
  });
});
