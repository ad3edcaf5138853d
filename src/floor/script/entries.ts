import type { Shelf } from '../../page/shelf.js';
import type { FloorEntry, FloorFile } from '../hand-over.js';

/** A picture or sound as it is kept. */
type KeptPicture = FloorFile['pictures'][number];
type KeptSound = NonNullable<FloorFile['sounds']>[number];

/** What is entered on this phone, each on its memory before it is called kept. */
export class Entries {
  private readonly entries = new Map<string, FloorEntry>();
  private readonly pictures = new Map<string, KeptPicture>();
  private readonly sounds = new Map<string, KeptSound>();
  /** Keys that were in a file that was saved. */
  private readonly handed = new Set<string>();
  private settings: { tag: string; person: string; last: number } = { tag: '', person: '', last: 0 };

  constructor(
    readonly shelf: Shelf,
    private readonly words: { readonly shell: string; readonly fingerprint: string; readonly name: string },
  ) {}

  /** Reads what was kept before. */
  async open(): Promise<void> {
    for (const [key, value] of await this.shelf.all()) {
      const rest = key.slice(2);
      if (key.startsWith('e ')) this.entries.set(rest, value as FloorEntry);
      else if (key.startsWith('p ')) this.pictures.set(rest, value as KeptPicture);
      else if (key.startsWith('v ')) this.sounds.set(rest, value as KeptSound);
      else if (key.startsWith('h ')) this.handed.add(rest);
      else this.settings = value as typeof this.settings;
    }
    if (this.settings.tag === '') await this.setting({ tag: newTag() });
    const numbers = [...this.entries.keys()].map((key) => Number(key.split('/').at(-1)));
    this.settings.last = Math.max(this.settings.last, ...numbers, 0);
  }

  get all(): readonly FloorEntry[] {
    return [...this.entries.values()].sort((a, b) => (a.key < b.key ? -1 : 1));
  }

  get tag(): string {
    return this.settings.tag;
  }

  get person(): string {
    return this.settings.person;
  }

  async setting(change: Partial<typeof this.settings>): Promise<void> {
    this.settings = { ...this.settings, ...change };
    await this.shelf.put('s', this.settings);
  }

  /** The number of the next entry, and of the record that it makes. */
  next(): number {
    return this.settings.last + 1;
  }

  /** Keeps an entry with its picture and sound; false where one of them will not outlast the page. */
  async add(
    entry: Omit<FloorEntry, 'key' | 'at' | 'person'>,
    { picture, sound }: { readonly picture?: KeptPicture; readonly sound?: KeptSound } = {},
  ): Promise<boolean> {
    const number = this.next();
    const key = `${this.tag}/${String(number).padStart(4, '0')}`;
    const whole: FloorEntry = { key, at: new Date().toISOString(), person: this.person, ...entry };
    // Picture and sound first: an entry that is there has them.
    const hasPicture = picture === undefined || (await this.shelf.put(`p ${picture.sha256}`, picture));
    const hasSound = sound === undefined || (await this.shelf.put(`v ${sound.sha256}`, sound));
    if (picture) this.pictures.set(picture.sha256, picture);
    if (sound) this.sounds.set(sound.sha256, sound);
    this.entries.set(key, whole);
    const kept = await this.shelf.put(`e ${key}`, whole);
    await this.setting({ last: number });
    return kept && hasPicture && hasSound;
  }

  async drop(key: string): Promise<void> {
    const entry = this.entries.get(key);
    this.entries.delete(key);
    await this.shelf.drop(`e ${key}`);
    const { picture, sound } = entry ?? {};
    const others = [...this.entries.values()];
    if (picture !== undefined && !others.some((one) => one.picture === picture)) {
      this.pictures.delete(picture);
      await this.shelf.drop(`p ${picture}`);
    }
    if (sound !== undefined && !others.some((one) => one.sound === sound)) {
      this.sounds.delete(sound);
      await this.shelf.drop(`v ${sound}`);
    }
  }

  isHanded(key: string): boolean {
    return this.handed.has(key);
  }

  /** All that is kept, as the file that goes to the shop. It stays here until it is cleared: a file may get lost on its way. */
  async handOver(): Promise<FloorFile> {
    const entries = this.all;
    const wanted = new Set(entries.flatMap(({ picture, sound }) => [picture, sound]));
    const sounds = [...this.sounds.values()].filter(({ sha256 }) => wanted.has(sha256));
    for (const { key } of entries) {
      this.handed.add(key);
      await this.shelf.put(`h ${key}`, true);
    }
    const { shell, fingerprint, name } = this.words;
    return {
      shellbook: 'floor',
      version: 1,
      shell,
      device: { tag: this.tag, name },
      fingerprint,
      at: new Date().toISOString(),
      entries: [...entries],
      pictures: [...this.pictures.values()].filter(({ sha256 }) => wanted.has(sha256)),
      ...(sounds.length > 0 ? { sounds } : {}),
    };
  }

  async clearHanded(): Promise<void> {
    for (const key of [...this.handed]) {
      await this.drop(key);
      this.handed.delete(key);
      await this.shelf.drop(`h ${key}`);
    }
  }
}

/** Without signs that are read as another: I and 1, O and 0. */
const SIGNS = 'ABCDEFGHJKLMNPQRSTUVWXYZ23456789';
const TAG_SIGNS = 4;

/** What this phone’s numbers have in them, so that two phones never give the same. */
function newTag(): string {
  const bytes = new Uint8Array(TAG_SIGNS);
  crypto.getRandomValues(bytes);
  return [...bytes].map((byte) => SIGNS[byte % SIGNS.length]).join('');
}
