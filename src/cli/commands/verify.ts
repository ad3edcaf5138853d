import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly file: string;
}

export function declareVerify(registry: Registry): void {
  registry
    .add('verify <book.pdf>', 'does this book match its own records, and the store', [
      'shellbook verify QF-007-service.pdf                 as printed, as in the store?',
      'shellbook verify QF-007-shop.pdf --store records    against that store',
    ])
    .action(registry.run(([file]) => ({ file: file as string }), verify));
}

async function verify({ file }: Options, context: Context): Promise<Status> {
  const [{ readBook, sound }, { verifyItself }, { compareWithStore }] = await Promise.all([
    import('../read-book.js'),
    import('../../archive/verify.js'),
    import('../book-and-store.js'),
  ]);
  context.progress(`Reading ${file}`);
  const { shown, book } = await readBook(file, context);
  context.progress('Counting its records, photos and pages again');
  const own = sound(shown, () => verifyItself(book));
  const manifest = 'manifest' in book.manifest ? book.manifest.manifest : undefined;
  const compared = manifest && (await compareWithStore(shown, book, manifest, context));
  const matchesStore = compared?.matches ?? null;
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const differences = [
      ...own.map((one) => ({ with: 'itself', ...one })),
      ...(compared?.differences ?? []).map((one) => ({ with: 'store', ...one })),
    ];
    context.print(
      envelope('verify', manifest?.shell ?? null, manifest?.revision ?? null, {
        edition: manifest?.edition,
        matches_itself: own.length === 0,
        matches_store: matchesStore,
        matches_revision: compared?.matchesRevision,
        fingerprint: manifest?.fingerprint,
        withheld: manifest?.withheld ?? [],
        differences,
      }),
    );
  } else {
    const { verifyText } = await import('../report/verify-text.js');
    context.print(verifyText(shown, manifest, own, compared, context.paint));
  }
  return own.length === 0 && matchesStore !== false ? 0 : 1;
}
