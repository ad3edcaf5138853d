import { existsSync } from 'node:fs';
import path from 'node:path';
import { editorFiles, SCHEMA_FOLDER } from '../records/form/files.js';
import { writing } from '../store/write.js';

export interface EditorFiles {
  /** Paths in the store. */
  readonly written: readonly string[];
  /** There already, and not ours to change. */
  readonly kept: readonly string[];
}

/** Lays the schemas of every record file into a store, and settings that tie them to the files where there are none yet. */
export async function writeEditorFiles(root: string): Promise<EditorFiles> {
  const written: string[] = [];
  const kept: string[] = [];
  await writing(root, async (writer) => {
    for (const [file, text] of editorFiles()) {
      const own = file.startsWith(`${SCHEMA_FOLDER}/`);
      if (!own && existsSync(path.join(root, file))) kept.push(file);
      else if (await writer.update(file, () => text)) written.push(file);
    }
  });
  return { written, kept };
}
