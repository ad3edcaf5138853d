import type { Registry } from '../registry.js';
import { declareAdd } from './add.js';
import { declareBackup } from './backup.js';
import { declareBehind } from './behind.js';
import { declareBook } from './book.js';
import { declareCheck } from './check.js';
import { declareClose } from './close.js';
import { declareCompare } from './compare.js';
import { declareCompletion } from './completion.js';
import { declareDecide } from './decide.js';
import { declareDemo } from './demo.js';
import { declareExport } from './export.js';
import { declareFloor } from './floor.js';
import { declareHistory } from './history.js';
import { declareImport } from './import.js';
import { declareIsolate } from './isolate.js';
import { declareKey } from './key.js';
import { declareLabels } from './labels.js';
import { declareList } from './list.js';
import { declareLoad } from './load.js';
import { declareLocate } from './locate.js';
import { declareMend } from './mend.js';
import { declareMerge } from './merge.js';
import { declareNear } from './near.js';
import { declareNewShell } from './new-shell.js';
import { declareNewStore } from './new-store.js';
import { declareOverlay } from './overlay.js';
import { declarePhotos } from './photos.js';
import { declarePocket } from './pocket.js';
import { declareProgress } from './progress.js';
import { declareRecover } from './recover.js';
import { declareRelease } from './release.js';
import { declareSchema } from './schema.js';
import { declareSignoff } from './signoff.js';
import { declareTakeoff } from './takeoff.js';
import { declareTrace } from './trace.js';
import { declareUndo } from './undo.js';
import { declareVerify } from './verify.js';
import { declareWeights } from './weights.js';
import { declareWhere } from './where.js';

/** Every command, in the order of the help. */
export const COMMANDS: readonly ((registry: Registry) => void)[] = [
  declareDemo,
  declareNewStore,
  declareNewShell,
  declareAdd,
  declareUndo,
  declareMerge,
  declareImport,
  declareExport,
  declarePhotos,
  declareCheck,
  declareMend,
  declareDecide,
  declareWeights,
  declareTakeoff,
  declareWhere,
  declareBehind,
  declareNear,
  declareOverlay,
  declareLocate,
  declareIsolate,
  declareLoad,
  declareRelease,
  declareProgress,
  declareSignoff,
  declareClose,
  declareBook,
  declareLabels,
  declarePocket,
  declareFloor,
  declareVerify,
  declareBackup,
  declareRecover,
  declareKey,
  declareList,
  declareTrace,
  declareHistory,
  declareCompare,
  declareSchema,
  declareCompletion,
];
