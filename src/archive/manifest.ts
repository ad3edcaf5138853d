import { z } from 'zod';

/** Name of the manifest among the files that a book carries. */
export const MANIFEST = 'shellbook-manifest.json';

const hex = z.string().regex(/^[0-9a-f]{64}$/u);
const bytes = z.number().int().nonnegative();

/**
 * A path within a store, of one of the files that a shell's book may carry. The manifest comes out of a file that anybody may have
 * written: what it names is never a way out of the folder that the records are laid down in.
 */
const storePath = z
  .string()
  .max(400)
  .refine(
    (path) =>
      /^(?:shop\.ya?ml|library\/.+|shells\/[^/]+\/.+)$/u.test(path) &&
      !/[\\:*?"<>|\p{Cc}\p{Cf}]/u.test(path) &&
      path.split('/').every((part) => part !== '' && !/^[.\s-]|[.\s]$/u.test(part)),
    'is not a path within a store',
  );

const manifestSchema = z.object({
  shellbook: z.literal(1),
  kind: z.literal('as-built book'),
  /** How it is sealed. 2: a page's digest counts links, notes and what the page inherits, and the rest of the file has one too. */
  seal: z.literal(2).optional(),
  /** By what it was printed: the same program and browser print the same pages again. */
  printed_by: z.object({ program: z.string(), build: z.string(), platform: z.string(), browser: z.string() }).optional(),
  /** Of bookmarks, named places, labels and all else that belongs to no one page. */
  document_sha256: hex.optional(),
  shell: z.string(),
  title: z.string(),
  edition: z.enum(['owner', 'service', 'shop']),
  shop: z.string(),
  /** The commit that the book was printed from; null where the record was never committed. */
  revision: z.string().nullable(),
  revision_date: z.string().nullable(),
  tag: z.string().nullable(),
  /** Files of the record that differed from that commit. */
  uncommitted: z.array(z.string()),
  /** Of the record as this edition carries it; without `seal`, of the whole record, also of what the edition withholds. */
  fingerprint: hex,
  /** The record files that the book carries, as this edition has them. */
  records: z.array(z.object({ path: storePath, bytes, sha256: hex })),
  /** What this edition leaves out, in words; empty where it carries every byte. */
  withheld: z.array(z.string()),
  photos: z.array(
    z.object({
      path: storePath,
      id: z.string().nullable(),
      bytes,
      sha256: hex,
      /** True where the file itself is in the book. */
      carried: z.boolean(),
    }),
  ),
  /** Pictures as printed: digest of the file within the page → photo. */
  pictures: z.record(hex, z.string()),
  pages: z.array(z.object({ label: z.string(), sha256: hex, text_sha256: hex, pictures: z.array(hex) })),
  /** Anchor of a record's home → page, from 1. */
  homes: z.record(z.string(), z.number().int().positive()),
});

/** What a book says of itself: the record it stands on, the files that it carries, and a digest of each of them and of each page. */
export type Manifest = z.infer<typeof manifestSchema>;

/** Everything that is known before the book is printed. */
export type ManifestHead = Omit<
  Manifest,
  'shellbook' | 'kind' | 'seal' | 'printed_by' | 'document_sha256' | 'pages' | 'pictures' | 'homes'
> & {
  /** Which program prints it. */
  readonly program: { readonly program: string; readonly build: string; readonly platform: string };
};

export type ManifestRead = { readonly manifest: Manifest } | { readonly fault: string };

/** Reads a manifest out of a file that may be damaged or made up. Never throws. */
export function readManifest(text: string): ManifestRead {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { fault: 'its manifest is not JSON' };
  }
  const read = manifestSchema.safeParse(data);
  if (!read.success) {
    const issue = read.error.issues[0];
    return { fault: `its manifest is not of the right form at \`${issue?.path.join('.') ?? ''}\`: ${issue?.message ?? ''}` };
  }
  const paths = [...read.data.records, ...read.data.photos].map(({ path }) => path.toLowerCase());
  if (new Set(paths).size !== paths.length) return { fault: 'its manifest names a file twice' };
  if (paths.some((path) => path.startsWith('shells/') && !path.startsWith(`shells/${read.data.shell.toLowerCase()}/`)))
    return { fault: 'its manifest names files of another shell' };
  return { manifest: read.data };
}
