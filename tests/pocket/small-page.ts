import type { Assessment } from '../../src/assess.js';
import { pageScript } from '../../src/cli/page-script.js';
import type { PocketEdition, PocketInput } from '../../src/pocket/input.js';
import { pocketPage } from '../../src/pocket/page.js';
import { type Language, readerOf } from '../../src/words/index.js';
import { FINGERPRINT, HISTORY, smallAssessment } from '../book/small-store.js';

/** A page of a small shell. `script`: the real one, or `true` for it to be bundled, which takes a moment. */
export async function smallPage(
  edition: PocketEdition,
  more: Partial<Omit<PocketInput, 'script'>> & { readonly language?: Language; readonly script?: boolean | string } = {},
): Promise<string> {
  const { language = 'en', script = false, ...rest } = more;
  const assessment: Assessment = more.assessment ?? smallAssessment();
  const { html } = await pocketPage({
    edition,
    assessment,
    reader: readerOf({ language, english: 'us' }),
    fingerprint: FINGERPRINT,
    history: HISTORY,
    dirty: false,
    photoFile: async () => undefined,
    ...rest,
    script: typeof script === 'string' ? script : script ? await pageScript('pocket') : '',
  });
  return html;
}

/** The data that the script of a page reads: `data`, or `near` of what is asked of a place. */
export function dataIn(html: string, id: 'data' | 'near' = 'data'): Readonly<Record<string, unknown>> {
  const found = new RegExp(`<script type="application/json" id="${id}">(.*?)</script>`, 'su').exec(html)?.[1];
  if (found === undefined) throw new Error('no data in the page');
  return JSON.parse(found);
}
