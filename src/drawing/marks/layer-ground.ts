import type { Surface } from '../../compute/access/surfaces.js';
import type { Model } from '../../model/shell.js';
import type { Facing } from '../../records/index.js';
import type { Extent } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { membersNearFace } from '../near-face.js';
import type { Mark } from '../scene.js';
import type { ServiceLayer } from '../service-layers.js';
import type { Port } from '../sheet.js';
import { panelAnchor, panelMark, panelPlaces, surfaceOf } from './panels.js';
import { memberContext } from './structure.js';

/** The face of the shell that a layer lies behind; what stands on the floor is behind none. */
const FACE_OF_LAYER: Readonly<Record<ServiceLayer, Facing | undefined>> = {
  belly: 'down',
  floor: undefined,
  left: 'left',
  right: 'right',
  front: 'front',
  rear: 'rear',
  ceiling: 'up',
};

const LAYER_OF_SIDE: Readonly<Record<Surface['side'], ServiceLayer>> = {
  underside: 'belly',
  floor: 'floor',
  partition: 'floor',
  left: 'left',
  right: 'right',
  front: 'front',
  rear: 'rear',
  ceiling: 'ceiling',
  roof: 'ceiling',
};

/** The frame that a layer lies in, pale. */
export function layerStructure(model: Model, shell: Extent, layer: ServiceLayer, port: Port): readonly Mark[] {
  const face = FACE_OF_LAYER[layer];
  return face ? memberContext(membersNearFace(model, shell, face), model.library, port) : [];
}

/** The access panels that open a layer, dashed, with their ids. */
export function layerPanels(
  model: Model,
  layer: ServiceLayer,
  port: Port,
): { readonly marks: readonly Mark[]; readonly wishes: readonly LabelWish[] } {
  const panels = model.shell.panels.filter(
    (panel) => panel.panelKind === 'access' && LAYER_OF_SIDE[surfaceOf(panel, model).side] === layer,
  );
  return {
    marks: panels.map((panel) => panelMark(panel, port, 'access-context', true, 'hidden')),
    wishes: panels.map(
      (panel): LabelWish => ({
        text: panel.id,
        anchor: panelAnchor(panel, port),
        also: panelPlaces(panel, port),
        style: 'id-strong',
        priority: 85,
        id: panel.id,
        centred: true,
      }),
    ),
  };
}
