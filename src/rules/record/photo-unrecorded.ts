import type { Rule } from '../rule.js';

export const photoUnrecorded: Rule = {
  name: 'record.photo-unrecorded',
  severity: 'warning',
  asks: 'missing',
  duty: 'administrator',
  finds: 'A picture in photos/ that no record names.',
  why: 'It proves nothing and prints nowhere; most often a run of `photos` was broken off before it wrote the records.',
  source: 'common practice, no source',
  examples: {
    given: `
# photos/photos.yaml
- {id: P-1, file: a.jpg, of: [X-1], taken: 2026-04-09}
# pictures
shells/X-1/photos/a.jpg: {sha256: aa}
`,
    fails: `
shells/X-1/photos/b.jpg: {sha256: bb}
`,
    passes: '',
  },
  check({ model: { shell }, outside }) {
    const folder = `shells/${shell.id}/photos/`;
    const named = new Set(shell.photos.map(({ file }) => folder + file));
    return [...(outside?.photos?.keys() ?? [])]
      .filter((file) => !named.has(file))
      .map((file) => ({
        message: `Picture ${file.slice(folder.length)} has no record, expected one in photos/photos.yaml: type it, take the picture away, or take up all of them: shellbook photos ${shell.id} ${folder.slice(0, -1)}`,
        ids: [],
        place: { file, line: 1, column: 1, endLine: 1, endColumn: 1 },
      }));
  },
};
