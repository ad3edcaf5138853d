import { type TextChange, writing } from '../../src/store/write.js';

/** One change of one file, under the store's lock. */
export const updateFile = (root: string, file: string, change: TextChange): Promise<boolean> =>
  writing(root, (writer) => writer.update(file, change));
