import { sameLook } from '../../compute/record/same-look.js';
import type { Photo } from '../../records/index.js';
import type { PhotoFacts } from '../../store/photo-facts.js';
import type { Case, Rule, RuleFinding } from '../rule.js';

export const photoTwice: Rule = {
  name: 'record.photo-twice',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'One picture used as evidence twice: the same file, or one that looks the same, under two records of the shell; the same file in another shell.',
  why: 'The second place was not photographed.',
  source: 'SHA-256 of the file; a difference hash of the picture (project default); common practice, no source',
  examples: {
    given: `
# photos/photos.yaml
- {id: P-1, file: a.jpg, of: [X-1], taken: 2026-04-09}
- {id: P-2, file: b.jpg, of: [X-1], taken: 2026-04-10}
# pictures
`,
    fails: `
shells/X-1/photos/a.jpg: {sha256: aa}
shells/X-1/photos/b.jpg: {sha256: aa}
`,
    passes: `
shells/X-1/photos/a.jpg: {sha256: aa}
shells/X-1/photos/b.jpg: {sha256: bb}
`,
  },
  check(given) {
    const facts = given.outside?.photos;
    if (!facts) return [];
    const { shell } = given.model;
    const shots = shell.photos.flatMap((photo) => {
      const fact = facts.get(`shells/${shell.id}/photos/${photo.file}`);
      return fact ? [{ photo, fact }] : [];
    });
    return [...withinShell(shots), ...elsewhere(shots, given)];
  },
};

interface Shot {
  readonly photo: Photo;
  readonly fact: PhotoFacts;
}

/** Each record beside the first that has its picture. */
function withinShell(shots: readonly Shot[]): readonly RuleFinding[] {
  return shots.flatMap(({ photo, fact }, i) => {
    const first = shots.slice(0, i).find((other) => isSame(fact, other.fact));
    if (!first) return [];
    const how = fact.sha256 === first.fact.sha256 ? 'is the same picture as' : 'looks the same as';
    return [
      {
        message: `Photo ${photo.id} (${said(photo)}) ${how} ${first.photo.id} (${said(first.photo)}), expected a picture for each: name both things in one record's \`of\`, or take the second picture`,
        ids: [photo.id, first.photo.id],
        place: photo.source.place('file'),
        related: [{ message: first.photo.id, place: first.photo.source.place('file') }],
      },
    ];
  });
}

const isSame = (a: PhotoFacts, b: PhotoFacts): boolean =>
  a.sha256 === b.sha256 || (a.look !== undefined && b.look !== undefined && sameLook(a.look, b.look));

const said = ({ of, taken }: Photo): string => [of.slice(0, 3).join(', '), taken].filter((text) => text).join(', ');

/** The same file, by the hash that the other shell's record carries. */
function elsewhere(shots: readonly Shot[], { model }: Case): readonly RuleFinding[] {
  const hashes = new Map(shots.map(({ photo, fact }) => [fact.sha256, photo]));
  const others = hashes.size > 0 ? (model.elsewhere?.records('photos', [...hashes.keys()]) ?? []) : [];
  return others.flatMap(({ shell, id, typed }) => {
    const photo = hashes.get(String(typed.sha256).toLowerCase());
    if (!photo) return [];
    return [
      {
        message: `Photo ${photo.id} (${said(photo)}) is the same picture as ${id} of ${shell}, expected one of this shell: take it here`,
        ids: [photo.id],
        place: photo.source.place('file'),
      },
    ];
  });
}
