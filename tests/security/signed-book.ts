/** A small signed book: three pages and the records of the small store, printed, sealed and signed by the program itself. */
import { generateKeyPairSync } from 'node:crypto';
import sharp from 'sharp';
import { fingerprint, sha256 } from '../../src/archive/fingerprint.js';
import { carriedIn } from '../../src/book/edition-records.js';
import { openChromium } from '../../src/book/print/chromium.js';
import { sheetsOf } from '../../src/book/print/document.js';
import { printDocument } from '../../src/book/print/print.js';
import { loadStore } from '../../src/model/load.js';
import { makeCertificate, readCertificate } from '../../src/signing/certificate.js';
import { type Signer, signDetached } from '../../src/signing/cms.js';
import { FILES } from '../cli/small-store.js';
import { storeText } from '../support/store.js';

/** 2,048 bits are enough for a test, and made in a moment. */
export function signerFor(name: string): Signer {
  const { privateKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
  const certificate = readCertificate(makeCertificate(privateKey, name, new Date('2026-01-05'), Buffer.alloc(16, 0x2f)));
  if (!certificate) throw new Error('no certificate');
  return { certificate, privateKey };
}

const HTML = `<!doctype html><html lang="en"><head><title>Shell T-1: as-built book, Service edition</title></head><body>
<section class="chapter" data-chapter="a"><h1 id="c-a">Weights</h1><p>Front axle: rated 6,000 lb. <a href="#c-b">Services</a></p><img alt="The front axle" src="/photo/1.jpg" width="90"></section>
<section class="chapter" data-chapter="b"><h1 id="c-b">Services</h1><h2 id="h-b">Fuses</h2><p>DC-1: fuse 10 A. <a href="#c-c">Drilling</a></p></section>
<section class="chapter" data-chapter="c"><h1 id="c-c">Drilling</h1><p>Do not drill in the left wall. <a href="#c-a">Weights</a></p></section>
</body></html>`;

export const REVISION = '12'.repeat(20);

export async function printSigned(signer: Signer, html = HTML): Promise<Uint8Array> {
  const text = storeText(FILES);
  const loaded = loadStore(text).shells.get('T-1');
  if (!loaded) throw new Error('the small store has no shell');
  const seen = carriedIn(text, loaded.model, new Map(), 'service');
  const records = new Map([...seen.files].map(([path, file]) => [path, Buffer.from(file)]));
  const photo = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#446688' } })
    .jpeg()
    .toBuffer();
  const head = {
    program: { program: 'shellbook', build: '0', platform: 'any' },
    shell: 'T-1',
    title: 'Small test shell',
    edition: 'service' as const,
    shop: 'Test shop',
    revision: REVISION,
    revision_date: '2026-06-30T10:00:00Z',
    tag: null,
    uncommitted: [],
    fingerprint: fingerprint(seen.model, seen.photoHashes),
    records: [...records].map(([path, bytes]) => ({ path, bytes: bytes.length, sha256: sha256(bytes) })),
    withheld: [],
    photos: [],
  };
  const { name, fingerprint: print } = signer.certificate;
  const browser = await openChromium();
  try {
    const { pdf } = await printDocument(browser, {
      html,
      sheets: sheetsOf('a4'),
      chapters: ['a', 'b', 'c'].map((key) => ({ key, title: key })),
      pictures: new Map([['/photo/1.jpg', { bytes: photo, type: 'image/jpeg', photo: 'P-1' }]]),
      runningLeft: '',
      runningFoot: '',
      date: '2026-06-30',
      warnings: [],
      carry: async () => ({ head, records, photo: async () => photo }),
      signer: { name, fingerprint: print, date: '2026-06-30T10:00:00Z', sign: (digest) => signDetached(digest, signer) },
    });
    return pdf;
  } finally {
    await browser.close();
  }
}
