/** Keeps values on the device, each on disk before it is called kept. Where that is refused (a mail's preview, a private window) `lasts` is false and all is gone with the page. */
export interface Shelf {
  readonly lasts: boolean;
  all(): Promise<readonly (readonly [string, unknown])[]>;
  /** False where it will not outlast the page: refused, or full. */
  put(key: string, value: unknown): Promise<boolean>;
  drop(key: string): Promise<void>;
}

const STORE = 'kept';

/** `open` gives the browser's database; it may throw, as browsers do where they refuse it. */
export async function openShelf(name: string, open: () => IDBFactory = () => window.indexedDB): Promise<Shelf> {
  const here = new Map<string, unknown>();
  const database = await opened(name, open);
  if (!database) {
    return {
      lasts: false,
      all: async () => [...here],
      put: async (key, value) => {
        here.set(key, value);
        return false;
      },
      drop: async (key) => void here.delete(key),
    };
  }
  /** Strict: told only when the disk has it, so that a phone that dies in the next moment has lost nothing. */
  const change = (act: (store: IDBObjectStore) => void): Promise<boolean> =>
    new Promise((done) => {
      try {
        const transaction = database.transaction(STORE, 'readwrite', { durability: 'strict' });
        transaction.oncomplete = () => done(true);
        transaction.onerror = () => done(false);
        transaction.onabort = () => done(false);
        act(transaction.objectStore(STORE));
      } catch {
        done(false);
      }
    });
  return {
    lasts: true,
    async all() {
      const found: (readonly [string, unknown])[] = await rows(database);
      return [...new Map([...found, ...here])];
    },
    async put(key, value) {
      const kept = await change((store) => store.put(value, key));
      if (kept) here.delete(key);
      else here.set(key, value);
      return kept;
    },
    async drop(key) {
      here.delete(key);
      await change((store) => store.delete(key));
    },
  };
}

const rows = (database: IDBDatabase): Promise<(readonly [string, unknown])[]> =>
  new Promise((done) => {
    const found: (readonly [string, unknown])[] = [];
    const asked = database.transaction(STORE, 'readonly').objectStore(STORE).openCursor();
    asked.onerror = () => done(found);
    asked.onsuccess = () => {
      const cursor = asked.result;
      if (!cursor) return done(found);
      found.push([String(cursor.key), cursor.value]);
      cursor.continue();
    };
  });

function opened(name: string, open: () => IDBFactory): Promise<IDBDatabase | undefined> {
  return new Promise((done) => {
    try {
      const asked = open().open(name, 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore(STORE);
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => done(undefined);
      asked.onblocked = () => done(undefined);
    } catch {
      done(undefined);
    }
  });
}
