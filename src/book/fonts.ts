import { readFileSync } from 'node:fs';
import path from 'node:path';
import { UserError } from '../user-error.js';
import { packageFolder } from './print/packaged.js';

const FACES = [
  {
    package: '@fontsource/atkinson-hyperlegible-next',
    family: 'Atkinson Hyperlegible Next',
    cuts: ['400-normal', '400-italic', '600-normal', '700-normal'],
  },
  {
    package: '@fontsource/atkinson-hyperlegible-mono',
    family: 'Atkinson Hyperlegible Mono',
    cuts: ['400-normal', '600-normal', '700-normal'],
  },
] as const;
const SUBSETS = ['latin-ext', 'latin'] as const;

/** `@font-face` rules with the fonts inside, so that nothing is fetched while printing. */
export function fontFaces(): string {
  return FACES.flatMap((face) => {
    const folder = packageFolder(face.package);
    if (folder === undefined) {
      throw new UserError(
        `The book's typeface is missing: package \`${face.package}\` is not installed. Type \`npm run setup\`.`,
      );
    }
    const ranges = JSON.parse(readFileSync(path.join(folder, 'unicode.json'), 'utf8')) as Record<string, string>;
    const stem = path.basename(face.package);
    return face.cuts.flatMap((cut) =>
      SUBSETS.map((subset) => {
        const [weight, style] = cut.split('-');
        const bytes = readFileSync(path.join(folder, 'files', `${stem}-${subset}-${cut}.woff2`)).toString('base64');
        return `@font-face{font-family:'${face.family}';font-style:${style};font-weight:${weight};src:url(data:font/woff2;base64,${bytes}) format('woff2');unicode-range:${ranges[subset]}}`;
      }),
    );
  }).join('\n');
}
