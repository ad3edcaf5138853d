import path from 'node:path';
import { SHAPES } from './library.js';
import { libraryFiles } from './library-files.js';
import { filesOf021, services } from './ov021/files.js';
import { partsOn, shots } from './ov021/photos.js';
import { fileOf, photoBytes, photosYaml } from './photo-files.js';

/** Every file of the store by its path. Pictures come from `home` where it has them. */
export async function storeFiles(home: string): Promise<ReadonlyMap<string, string | Buffer>> {
  const files = new Map<string, string | Buffer>(libraryFiles());
  for (const [name, text] of filesOf021()) files.set(`shells/OV-021/${name}`, text);
  const all = shots(services());
  const bytes = new Map<string, Buffer>();
  for (const shot of all) {
    const file = await photoBytes(shot, path.join(home, 'shells/OV-021/photos'), partsOn(shot.taken), SHAPES);
    bytes.set(shot.id, file);
    files.set(`shells/OV-021/photos/${fileOf(shot)}`, file);
  }
  files.set('shells/OV-021/photos/photos.yaml', photosYaml('Pictures of OV-021: card and tape in every one.', all, bytes));
  return files;
}
