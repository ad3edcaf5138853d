/**
 * Keeps texts on the device under one prefix. Where storage is refused (a mail's preview, a private window) `lasts` is false and all is
 * kept only while the page is open.
 */
export interface Keep {
  readonly lasts: boolean;
  get(key: string): string | undefined;
  /** False where it will not outlast the page. */
  put(key: string, text: string): boolean;
  drop(key: string): void;
}

/** `open` gives the storage; it may throw, as browsers do where they refuse it. */
export function openKeep(prefix: string, open: () => Storage = () => window.localStorage): Keep {
  const here = new Map<string, string>();
  const storage = tried(open, prefix);
  return {
    lasts: storage !== undefined,
    get: (key) => here.get(key) ?? storage?.getItem(`${prefix}${key}`) ?? undefined,
    put(key, text) {
      here.set(key, text);
      try {
        storage?.setItem(`${prefix}${key}`, text);
        return storage !== undefined;
      } catch {
        // Full: it stays while the page is open.
        return false;
      }
    },
    drop(key) {
      here.delete(key);
      storage?.removeItem(`${prefix}${key}`);
    },
  };
}

/** The storage, if a text that is written there can be read again. */
function tried(open: () => Storage, prefix: string): Storage | undefined {
  try {
    const storage = open();
    const key = `${prefix}?`;
    storage.setItem(key, '1');
    const works = storage.getItem(key) === '1';
    storage.removeItem(key);
    return works ? storage : undefined;
  } catch {
    return undefined;
  }
}
