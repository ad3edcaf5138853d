import type { Assessment } from '../../assess.js';
import type { Panel } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { ASSUMED_TYRE_RADIUS_MM, extentCorners, groundZMm, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import { chassisSide } from '../marks/chassis.js';
import { openingMarks } from '../marks/openings.js';
import { outsideOf, panelMark, panelsOfSurface } from '../marks/panels.js';
import { memberMarks } from '../marks/structure.js';
import { membersNearFace } from '../near-face.js';
import { VIEWS } from '../projection.js';
import { circle, line, type Mark, type Point } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { PENS, type PenName } from '../styles.js';
import { wordsFor } from '../wording.js';

/** The left side of this shell as a picture: no ids, no dimensions. */
export function coverDrawing(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { model } = a;
  const w = wordsFor(model);
  const shell = shellExtent(model);
  const bounds = viewBounds(VIEWS.left, extentCorners(vehicleExtent(model)));
  const strips = { sideMm: 3, aboveMm: 2, belowMm: 2, mostMm: 2 };
  const { reduction: _reduction, ...layout } = layOut([{ view: VIEWS.left, bounds }], sheet, strips, 'as large as it goes');
  const port = layout.ports[0] as Port;
  const panels = panelsOfSurface(model, outsideOf('left'));
  const bare = (mark: Mark, pen: PenName): Mark => {
    const { id: _id, ...rest } = mark;
    return rest.kind === 'text' ? rest : { ...rest, pen };
  };
  const marks: Mark[] = [
    ...(panels.length === 0 ? memberMarks(membersNearFace(model, shell, 'left'), model.library, port, false) : []),
    ...panels.map((panel) => panelMark(panel, port, panel.panelKind === 'access' ? 'cover-dark' : 'cover-shell', false)),
    ...shellOutline(panels, port),
    ...chassisSide(model, vehicleExtent(model), port).filter((mark) => mark.kind === 'shape' && mark.closed),
    ...openingMarks(model, 'left', port).marks.map((mark) => bare(mark, 'cover-dark')),
    ...wheels(a, port),
  ];
  return compose(
    {
      id: 'cover',
      title: w('drawn.cover', { shell: model.shell.id }),
      alt: w('drawn.cover.alt', { shell: model.shell.id, title: model.shell.title }),
      ...layout,
      units: model.shop.units,
      marks,
      wishes: [],
      furniture: false,
    },
    options,
  );
}

/** Heavy under the skins: only the half outside them shows, all around the shell and its openings. */
function shellOutline(panels: readonly Panel[], port: Port): readonly Mark[] {
  return panels
    .filter(({ panelKind }) => panelKind !== 'access')
    .map((panel) => ({ ...panelMark(panel, port, 'edge', false, 'background'), widthMm: 2 * PENS.edge.widthMm }));
}

function wheels(a: Assessment, port: Port): readonly Mark[] {
  const { axles } = a.model.shell.chassis;
  if (axles.length === 0) return [];
  const ground = groundZMm(a.model);
  const { x0, x1 } = port.frame;
  const y = port.place([0, 0, ground])[1];
  const marks: Mark[] = [
    line('ground', 'edge', [
      [x0 - 2, y],
      [x1 + 2, y],
    ]),
  ];
  for (const axle of axles) {
    const hub: Point = port.place([axle.xMm, 0, ground + ASSUMED_TYRE_RADIUS_MM]);
    const radius = y - hub[1];
    marks.push(circle('equipment', 'cover-tyre', hub, radius), circle('equipment', 'cover-hub', hub, radius * 0.55));
    marks.push(circle('equipment', 'cover-tyre', hub, radius * 0.12));
  }
  return marks;
}
