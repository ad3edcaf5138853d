import { LazyMap } from '../model/lazy-map.js';
import type { Model } from '../model/shell.js';
import { clearances } from './access/clearances.js';
import { access } from './access/index.js';
import { photoCoverage } from './access/photos.js';
import type { Figures, KeptFigures } from './figures.js';
import { lazyFields } from './lazy.js';
import { overlay } from './pictures/overlay.js';
import type { SolvedPhoto } from './pictures/solve-photo.js';
import { photoSight, solvedPhotos } from './pictures/solved-photos.js';
import { services } from './services/index.js';
import { bondFigures } from './structure/bonds.js';
import { clampFigures } from './structure/clamps.js';
import { joints, openings, weldTotals } from './structure/index.js';
import { materials } from './structure/materials.js';
import { spacings } from './structure/spacing.js';
import { takeOff } from './takeoff/index.js';
import { weights } from './weights/index.js';
import { inspectionShares } from './welding/inspection.js';
import { heatAffectedZones } from './welding/weld-bands.js';

/** What was read from a picture's file, by the file's name in the record; undefined where nobody looked. */
export type PictureOf = Parameters<typeof solvedPhotos>[1];

/** Everything that is computed of a shell; with `kept`, what is there is taken from it, and what is not goes into it. */
export function figuresOf(model: Model, pictureOf: PictureOf = () => undefined, kept?: KeptFigures): Figures {
  const figures: Figures = lazyFields<Figures>(
    {
      takeOff: () => takeOff(model),
      weights: () => weights(model, figures.takeOff),
      services: () => services(model, figures.takeOff),
      access: () => access(model),
      solvedPhotos: () => solvedPhotos(model, pictureOf),
      overlays: () =>
        new LazyMap(figures.solvedPhotos.keys(), (id) => overlay(model, figures.solvedPhotos.get(id) as SolvedPhoto)),
      photos: () => photoCoverage(model, photoSight(model, figures.solvedPhotos)),
      clearances: () => clearances(model, figures.takeOff),
      joints: () => joints(model),
      openings: () => openings(model),
      weldTotals: () => weldTotals(model),
      materials: () => materials(model, figures.takeOff),
      inspection: () => inspectionShares(model),
      spacings: () => spacings(model),
      clamps: () => clampFigures(model),
      bonds: () => bondFigures(model),
      heatAffectedZones: () => heatAffectedZones(model, figures.joints.joints),
    },
    kept,
  );
  return figures;
}
