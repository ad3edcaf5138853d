import type { KeyObject } from 'node:crypto';

/**
 * The public half of an RSA key as SSH writes it (`ssh-rsa AAAA…`, RFC 4253, 6.6), which is how Git takes a key for signing tags
 * (`gpg.format ssh`): the key that signs the books signs the tags.
 */
export function sshPublicKey(key: KeyObject): string {
  const { e = '', n = '' } = key.export({ format: 'jwk' });
  const parts = [Buffer.from('ssh-rsa'), mpint(e), mpint(n)];
  return `ssh-rsa ${Buffer.concat(parts.flatMap((part) => [length(part), part])).toString('base64')}`;
}

/** A number with a zero before it where its first bit is set (RFC 4251, 5). */
function mpint(base64url: string): Buffer {
  const bytes = Buffer.from(base64url, 'base64url');
  return ((bytes[0] ?? 0) & 0x80) === 0 ? bytes : Buffer.concat([Buffer.from([0]), bytes]);
}

function length(part: Buffer): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32BE(part.length);
  return bytes;
}
