/**
 * Signatures against two other implementations: OpenSSL where the system has it, and pkijs, which shares no code with the ASN.1 library
 * that writes them here but its author's base types.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash, generateKeyPairSync, type KeyObject, webcrypto } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import * as pkijs from 'pkijs';
import { afterAll, describe, expect, it } from 'vitest';
import { makeCertificate, readCertificate } from '../../src/signing/certificate.js';
import { readDetached, type Signer, signDetached } from '../../src/signing/cms.js';
import { sshPublicKey } from '../../src/signing/ssh.js';

const away = mkdtempSync(path.join(tmpdir(), 'shellbook-cms-'));
afterAll(() => rmSync(away, { recursive: true, force: true }));

const keyOf = (bits: number): KeyObject => generateKeyPairSync('rsa', { modulusLength: bits }).privateKey;
function signerFor(name: string, privateKey = keyOf(2048)): Signer {
  const certificate = readCertificate(makeCertificate(privateKey, name, new Date('2026-01-05'), Buffer.alloc(16, 0x9f)));
  if (!certificate) throw new Error('no certificate');
  return { certificate, privateKey };
}

const SHOP = signerFor('Größe & Söhne');
const CONTENT = Buffer.from('The front axle carries 9,000 lb.');
const digestOf = (bytes: Uint8Array): Buffer => createHash('sha256').update(bytes).digest();
const DIGEST = digestOf(CONTENT);
const DER = signDetached(DIGEST, SHOP);

describe('a certificate', () => {
  it('has the name and the fingerprint that OpenSSL and Node read', () => {
    expect(SHOP.certificate.name).toBe('Größe & Söhne');
    expect(SHOP.certificate.fingerprint).toBe(digestOf(SHOP.certificate.der).toString('hex'));
    if (spawnSync('openssl', ['version']).status !== 0) return;
    const told = execFileSync('openssl', ['x509', '-inform', 'der', '-noout', '-fingerprint', '-sha256'], {
      input: SHOP.certificate.der,
      encoding: 'utf8',
    });
    expect(told.split('=')[1]?.trim().replaceAll(':', '').toLowerCase()).toBe(SHOP.certificate.fingerprint);
  });

  it('is read of no key that others can work out', () => {
    const weak = keyOf(1024);
    expect(readCertificate(makeCertificate(weak, 'Shop', new Date('2026-01-05'), Buffer.alloc(16, 1)))).toBeUndefined();
    expect(readCertificate(Buffer.from('no certificate'))).toBeUndefined();
  });
});

describe('a signature', () => {
  it('is the same bytes from the same key, and others from another', () => {
    expect(signDetached(DIGEST, SHOP)).toEqual(DER);
    expect(signDetached(DIGEST, signerFor('Größe & Söhne'))).not.toEqual(DER);
  });

  it('is good for pkijs, and not for other content', async () => {
    pkijs.setEngine('node', new pkijs.CryptoEngine({ name: 'node', crypto: webcrypto as never }));
    const content = pkijs.ContentInfo.fromBER(Uint8Array.from(DER).buffer);
    const signed = new pkijs.SignedData({ schema: content.content });
    const check = (bytes: Uint8Array) => signed.verify({ signer: 0, data: Uint8Array.from(bytes).buffer, checkChain: false });
    expect(await check(CONTENT)).toBe(true);
    expect(await check(Buffer.from('The front axle carries 19,000 lb.')).catch(() => false)).toBe(false);
  });

  it('is good for OpenSSL with the shop’s certificate, and not for other content (RFC 5652, RFC 5035)', () => {
    if (spawnSync('openssl', ['version']).status !== 0) return;
    const [der, content, trusted] = ['s.der', 'content', 'shop.pem'].map((name) => path.join(away, name)) as [
      string,
      string,
      string,
    ];
    writeFileSync(der, DER);
    const pem = SHOP.certificate.der;
    writeFileSync(trusted, execFileSync('openssl', ['x509', '-inform', 'der'], { input: pem }));
    const check = (bytes: Uint8Array): number | null => {
      writeFileSync(content, bytes);
      const asked = [
        'cms',
        '-verify',
        '-binary',
        '-inform',
        'der',
        '-in',
        der,
        '-content',
        content,
        '-CAfile',
        trusted,
        '-cades',
      ];
      return spawnSync('openssl', [...asked, '-out', path.join(away, 'out')]).status;
    };
    expect(check(CONTENT)).toBe(0);
    expect(check(Buffer.from('The front axle carries 19,000 lb.'))).not.toBe(0);
  });

  it('is read with the shop’s certificate, and a fault where anything in it was changed', () => {
    const read = readDetached(DER, DIGEST);
    expect('signer' in read && read.signer.fingerprint).toBe(SHOP.certificate.fingerprint);
    expect(readDetached(DER, digestOf(Buffer.from('other')))).toEqual({ fault: 'the file has changed since it was signed' });
    const passing: number[] = [];
    for (let at = 0; at < DER.length; at += 29) {
      const changed = Buffer.from(DER);
      changed[at] = (changed[at] as number) ^ 1;
      const told = readDetached(changed, DIGEST);
      if ('signer' in told) passing.push(at);
    }
    expect(passing).toEqual([]);
  });

  it('is not one with the certificate of somebody else in it', () => {
    const thief = signerFor('Größe & Söhne');
    const borrowed = signDetached(DIGEST, { certificate: SHOP.certificate, privateKey: thief.privateKey });
    expect(readDetached(borrowed, DIGEST)).toEqual({ fault: 'it was not made with the key that it names' });
    for (const junk of [Buffer.alloc(0), Buffer.from('30820000', 'hex'), Buffer.alloc(70_000, 0x30)])
      expect(readDetached(junk, DIGEST)).toHaveProperty('fault');
  });
});

describe('the same key for Git', () => {
  it('is written as ssh-keygen writes it (RFC 4253, 6.6)', () => {
    const { certificate } = SHOP;
    const line = sshPublicKey(certificate.key);
    expect(Buffer.from(line.split(' ')[1] as string, 'base64').toString('latin1', 4, 11)).toBe('ssh-rsa');
    if (spawnSync('ssh-keygen', ['-?']).error) return;
    const pem = path.join(away, 'public.pem');
    writeFileSync(pem, certificate.key.export({ type: 'spki', format: 'pem' }));
    expect(execFileSync('ssh-keygen', ['-i', '-m', 'PKCS8', '-f', pem], { encoding: 'utf8' }).trim()).toBe(line);
  });
});
