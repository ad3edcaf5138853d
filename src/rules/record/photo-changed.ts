import type { Rule } from '../rule.js';

export const photoChanged: Rule = {
  name: 'record.photo-changed',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A picture whose file is not the one that was recorded: its SHA-256 differs from the record’s.',
  why: 'A picture that was cut, turned or replaced after it was recorded no longer shows what the record says.',
  source: 'FIPS 180-4 (SHA-256); common practice, no source',
  examples: {
    given: `
# photos/photos.yaml
- {id: P-1, file: a.jpg, of: [X-1], taken: 2026-04-09, sha256: abababababababababababababababababababababababababababababababab}
# pictures
`,
    fails: `
shells/X-1/photos/a.jpg: {sha256: cdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcd}
`,
    passes: `
shells/X-1/photos/a.jpg: {sha256: abababababababababababababababababababababababababababababababab}
`,
  },
  check({ model: { shell }, outside }) {
    return shell.photos.flatMap((photo) => {
      const found = outside?.photos?.get(`shells/${shell.id}/photos/${photo.file}`)?.sha256;
      const recorded = photo.sha256?.trim().toLowerCase();
      if (found === undefined || recorded === undefined || found === recorded) return [];
      return [
        {
          message: `The file of photo ${photo.id} has SHA-256 ${found.slice(0, 12)}…, expected ${recorded.slice(0, 12)}… as recorded: put the original back, or record the new picture under an id of its own`,
          ids: [photo.id],
          place: photo.source.place('sha256'),
        } as const,
      ];
    });
  },
};
