/** Stores from literals, for tests that go through the reader. */
import { loadStore } from '../../src/model/load.js';
import type { LoadedShell, StoreText } from '../../src/model/load-types.js';

/** A store's text from path → YAML. Anything that is not YAML is a photo file of a few bytes. */
export function storeText(files: Readonly<Record<string, string>>): StoreText {
  const entries = Object.entries(files);
  return {
    root: 'literal-store',
    files: new Map(entries.filter(([path]) => /\.ya?ml$/u.test(path))),
    photos: new Map(entries.filter(([path]) => !/\.ya?ml$/u.test(path)).map(([path, bytes]) => [path, bytes.length])),
  };
}

/** Loads one shell. A shop.yaml and a shell.yaml that say no more than they must are added where they are not given. */
export function loadOne(
  files: Readonly<Record<string, string>>,
  shellId = 'T-1',
): LoadedShell & { readonly store: ReturnType<typeof loadStore> } {
  const store = loadStore(
    storeText({
      'shop.yaml': 'shop: {name: Test shop}\nunits: metric\npaper: a4\n',
      [`shells/${shellId}/shell.yaml`]: `shell: ${shellId}\ntitle: Test shell\n`,
      ...files,
    }),
  );
  const shell = store.shells.get(shellId);
  if (!shell) throw new Error(`No shell ${shellId} among the files given`);
  return { ...shell, store };
}
