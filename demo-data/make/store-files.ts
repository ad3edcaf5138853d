import path from 'node:path';
import { readDemoPlan } from '../../src/cli/demo/history.js';
import type { Part } from './coach/types.js';
import { SHAPES } from './library.js';
import { libraryFiles } from './library-files.js';
import { filesOf021, services } from './ov021/files.js';
import { partsOn as partsOn021, shots as shots021 } from './ov021/photos.js';
import { filesOf024, spoiltPhotos } from './ov024/files.js';
import { partsOn as partsOn024, shots as shots024 } from './ov024/photos.js';
import { fileOf, photoBytes, photoRecords, type Shot } from './photo-files.js';
import { withDigests } from './signed.js';
import { list, type Rec } from './yaml.js';

type Files = Map<string, string | Buffer>;

/** Every file of the store by its path. Pictures come from `home` where it has them. */
export async function storeFiles(home: string): Promise<ReadonlyMap<string, string | Buffer>> {
  const files: Files = new Map<string, string | Buffer>(libraryFiles());
  for (const [name, text] of filesOf021()) files.set(`shells/OV-021/${name}`, text);
  for (const [name, text] of filesOf024()) files.set(`shells/OV-024/${name}`, text);
  await pictures(files, home, 'OV-021', shots021(services()), partsOn021, (records) => records);
  await pictures(files, home, 'OV-024', shots024(), partsOn024, spoiltPhotos);
  return withDigests(files, await readDemoPlan(home));
}

async function pictures(
  files: Files,
  home: string,
  shell: string,
  shots: readonly Shot[],
  partsOn: (taken: string) => readonly Part[],
  change: (records: readonly Rec[]) => readonly Rec[],
): Promise<void> {
  const folder = `shells/${shell}/photos`;
  const bytes = new Map<string, Buffer>();
  for (const shot of shots) {
    const file = await photoBytes(shot, path.join(home, folder), partsOn(shot.taken), SHAPES);
    bytes.set(shot.id, file);
    files.set(`${folder}/${fileOf(shot)}`, file);
  }
  const head = [`Pictures of ${shell}: card and tape in every one.`, 'sha256 is of the file as it came off the telephone.'];
  files.set(`${folder}/photos.yaml`, list(head, change(photoRecords(shots, bytes))));
}
